import type { EveningPlan } from '../../../engine/index.js';
import type { AdvisoryHeat } from './advisory.js';

/** Half of the 80 % range of a normal error, in standard deviations. */
const TENTH_OF_NORMAL = 1.28;
const tenth = (value: number): number => Math.round(value * 10) / 10;
const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** The heat account of the night under the plan; a film that is colder than the air outside takes heat from it. */
export function heatReason({ heat, doubt }: Pick<EveningPlan, 'heat' | 'doubt'>): AdvisoryHeat {
  const { lost, given } = heat;
  const [skyW, airW, gapsW] = [lost.skyW, lost.airW, lost.gapsW].map((flow) => Math.max(0, flow)) as [number, number, number];
  const lostW = skyW + airW + gapsW;
  const share = (flow: number): number => (lostW > 0 ? hundredth(Math.max(0, flow) / lostW) : 0);
  return {
    code: 'heat',
    lostW: Math.round(lostW),
    to: { sky: share(skyW), outside: share(airW), gaps: share(gapsW) },
    from: { ground: share(given.groundW), water: share(given.waterW), stones: share(given.stonesW), heater: share(given.heaterW), compost: share(given.compostW), outside: share(-Math.min(0, lost.airW) - Math.min(0, lost.gapsW) - Math.min(0, lost.skyW)) },
    cloud: hundredth(heat.cloudFraction),
    windMPerS: tenth(heat.windMPerS),
    forecastOffC: tenth(TENTH_OF_NORMAL * doubt.airTempSdK),
  };
}
