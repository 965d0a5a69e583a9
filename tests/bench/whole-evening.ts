import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { planEvening, type EveningPlan } from '../../engine/plan/plan-evening.js';
import { checkedGreenhouse, CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, houseOf, inventedWeather, REFERENCE_FILE } from '../fixtures/houses.js';
import { timed, type Timing } from './timing.js';

const PAST_DAYS = 15;
const ASKED_AT_HOUR = -9;
const BED_AT_HOUR = -2.5;

export interface EveningTiming extends Timing {
  readonly plans: number;
  readonly warmUpHours: number;
}

const COVER = { kind: 'fabric', weight: 30 } as const;
/** Beds that can be covered, a heater and vents: the evening has all of its choices. */
const fileWith = (beds: number): GreenhouseFile => ({
  ...REFERENCE_FILE,
  beds: Array.from({ length: beds }, (_, b) => ({ name: `bed ${b + 1}`, area: 20 / beds, crops: ['lettuce'], cover: COVER })),
  heater: { kind: 'electric', power: 1500 },
  vents: { area: 2 },
});

/** The whole evening as the assistant asks for it: fifteen days of warm-up, every plan through every scenario. */
export function timeEvening(beds: number): EveningTiming {
  const file = fileWith(beds);
  const invented = { ...CLEAR_COLD_NIGHT, sunnyDays: PAST_DAYS };
  const weather = inventedWeather(houseOf(file), invented);
  const input = { greenhouse: checkedGreenhouse(file), weather, ground: GROUND, nowS: hourOfLastNightS(invented, ASKED_AT_HOUR), bedtimeS: hourOfLastNightS(invented, BED_AT_HOUR), weatherAgeS: 3600 };
  let plan: EveningPlan = planEvening(input);
  const timing = timed(() => (plan = planEvening(input)), { warmUp: 0, measured: 3 });
  return { ...timing, plans: plan.plans.length, warmUpHours: plan.evening.warmUpHours };
}
