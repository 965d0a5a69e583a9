import { SECONDS_PER_HOUR } from '../../../engine/index.js';
import { withShortGapsClosed } from '../open-meteo/columns.js';
import type { SunPlace } from '../sunlight.js';
import { COARSE_HOURS, hoursBetween } from './six-hours.js';
import type { MetStep } from './wire.js';

/** The full hours that the steps span. Where steps lie more than six hours apart, the series ends. */
export interface StepHours {
  readonly steps: readonly MetStep[];
  readonly timeS: readonly number[];
  /** Steps no farther apart than an hour reach to here. */
  readonly hourlyUntilS: number;
}

/** A variable hour by hour; hours (indices) that were bridged because a step lacks the value. */
export interface HourlyColumn {
  readonly values: readonly (number | null)[];
  readonly bridged: readonly number[];
}

export function stepHours(all: readonly MetStep[]): StepHours {
  const gapAfter = (i: number): number => ((all[i + 1]?.timeS ?? Number.POSITIVE_INFINITY) - (all[i]?.timeS ?? 0)) / SECONDS_PER_HOUR;
  const steps = all.slice(0, all.findIndex((_, i) => gapAfter(i) > COARSE_HOURS) + 1);
  const startS = steps[0]?.timeS ?? 0;
  const hours = ((steps.at(-1)?.timeS ?? startS) - startS) / SECONDS_PER_HOUR + 1;
  return {
    steps,
    timeS: Array.from({ length: hours }, (_, i) => startS + i * SECONDS_PER_HOUR),
    hourlyUntilS: all[all.findIndex((_, i) => gapAfter(i) > 1)]?.timeS ?? startS,
  };
}

/** Values at the steps, and on straight lines between them; a value that a step lacks is bridged over at most two hours. */
export function hourly(series: StepHours, valueOf: (step: MetStep) => number | null): HourlyColumn {
  return column(series, valueOf, (from, to, hours) => onLine(valueOf(from), valueOf(to), hours));
}

/** As hourly, but between coarse steps through the low and the high that the service tells. */
export function hourlyTemperatureC(series: StepHours, place: SunPlace): HourlyColumn {
  const tempC = (step: MetStep): number | null => step.instant.air_temperature;
  return column(series, tempC, (from, to, hours) => (hours === COARSE_HOURS ? hoursBetween(from, to, place) : onLine(tempC(from), tempC(to), hours)));
}

type Between = (from: MetStep, to: MetStep, hours: number) => readonly (number | null)[];

const onLine = (from: number | null, to: number | null, hours: number): readonly (number | null)[] =>
  Array.from({ length: hours - 1 }, (_, k) => (from === null || to === null ? null : from + ((to - from) * (k + 1)) / hours));

function column(series: StepHours, valueOf: (step: MetStep) => number | null, between: Between): HourlyColumn {
  const values = series.steps.flatMap((step, i): readonly (number | null)[] => {
    const next = series.steps[i + 1];
    return [valueOf(step), ...(next === undefined ? [] : between(step, next, (next.timeS - step.timeS) / SECONDS_PER_HOUR))];
  });
  const { values: whole, interpolated } = withShortGapsClosed({ values, fromSecond: [], interpolated: [] });
  return { values: whole, bridged: interpolated };
}
