import { cellNight, forecastMiss, LEARNED_VERSION, learnHouse, nightSpan, toHouse, type CellNight, type ControlPlan, type ForecastMiss, type Greenhouse, type LearnedHouse, type MarkedChange } from '../../../engine/index.js';
import type { LearningSoFar, WeatherAnswer } from '../../ports.js';
import { readingsToLearn } from './readings-to-learn.js';

/** What is kept from one evening to the next. Its text is only read again where its version is ours. */
export interface KeptLearning {
  readonly version: typeof LEARNED_VERSION;
  readonly house: LearnedHouse;
  /** The house as it was described: when it differs, what was learned before counts for less. */
  readonly described: string;
  readonly changes: readonly MarkedChange[];
  /** The coming night as it was forecast, and how wrong such forecasts were. */
  readonly issued: CellNight | null;
  readonly misses: readonly ForecastMiss[];
}

/** A season's forecasts: older ones say little of the weather services of today (project estimate). */
const MOST_MISSES = 120;
const MORNING_S = 2 * 3600;

/**
 * The house after all its readings; null while there is none to learn from. The run goes on from the last evening: of nights whose
 * weather has never been at hand nothing is learned.
 */
export function learnEvening(from: { greenhouse: Greenhouse; answer: WeatherAnswer; nowS: number; controls: ControlPlan }, { readings, learned }: LearningSoFar): KeptLearning | null {
  const { greenhouse, answer, nowS, controls } = from;
  const before = learned === null ? null : readKept(learned);
  const toLearn = readingsToLearn(readings, greenhouse);
  if (toLearn.length === 0) return null;
  const described = JSON.stringify(toHouse(greenhouse));
  const changes = [...(before?.changes ?? []), ...(before !== null && before.described !== described ? [{ timeS: before.house.stateAtS }] : [])];
  const misses = [...(before?.misses ?? []), ...missOf(before, answer, nowS)].slice(-MOST_MISSES);
  const house = learnHouse({ greenhouse, weather: answer.hours, ground: answer.ground, controls, readings: toLearn, forecastMisses: misses, changes, untilS: nowS }, before?.house ?? null);
  const isNewDay = house.stateAtS !== before?.house.stateAtS;
  return { version: LEARNED_VERSION, house, described, changes, misses, issued: isNewDay ? cellNight(answer.hours, nightSpan(nowS, greenhouse.place)) : before.issued };
}

/** What an evening leaves to be kept: a new day that was run through weather that came, not through an old forecast. */
export function textToKeep(kept: KeptLearning | null, learned: string | null, { stale }: WeatherAnswer): string | null {
  if (kept === null || stale) return null;
  const before = learned === null ? null : readKept(learned);
  return before?.house.stateAtS === kept.house.stateAtS && before.described === kept.described ? null : JSON.stringify(kept);
}

function readKept(text: string): KeptLearning | null {
  const kept = JSON.parse(text) as KeptLearning;
  return kept.version === LEARNED_VERSION ? kept : null;
}

/** The last forecast night, once it is over. */
function missOf(before: KeptLearning | null, { hours, stale }: WeatherAnswer, nowS: number): readonly ForecastMiss[] {
  const issued = before?.issued ?? null;
  if (issued === null || stale || issued.sunriseS + MORNING_S > nowS || before!.misses.some(({ nightS }) => nightS === issued.sunsetS)) return [];
  const miss = forecastMiss(issued, hours);
  return miss === null ? [] : [miss];
}
