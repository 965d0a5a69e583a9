import { SECONDS_PER_HOUR } from '../../../engine/index.js';
import type { StepHours } from './hourly.js';
import { COARSE_HOURS } from './six-hours.js';

/**
 * Precipitation (mm) of the hour that ENDS at each time. The service tells the hour or the six hours that FOLLOW a step:
 * what follows 21:00 ends at 22:00. Six hours are spread evenly. Null where it is not told, as for the first hour.
 */
export function precipitationMm(series: StepHours): readonly (number | null)[] {
  const byEndS = new Map<number, number>();
  series.steps.forEach((step, i) => {
    const hours = ((series.steps[i + 1]?.timeS ?? step.timeS) - step.timeS) / SECONDS_PER_HOUR;
    const oneHour = step.nextHour.precipitation_amount;
    const sixHours = step.nextSixHours.precipitation_amount;
    for (let hour = 1; hour <= hours; hour += 1) {
      const amountMm = hour === 1 && oneHour !== null ? oneHour : sixHours === null ? null : sixHours / COARSE_HOURS;
      if (amountMm !== null) byEndS.set(step.timeS + hour * SECONDS_PER_HOUR, amountMm);
    }
  });
  return series.timeS.map((timeS) => byEndS.get(timeS) ?? null);
}
