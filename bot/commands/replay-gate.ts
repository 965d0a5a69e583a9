import { judgeReading, mixtureQuantileK, nightSpan, toHouse, type AcceptedReading, type ExpectedTemp, type GateVerdict, type Greenhouse, type PlaceLow, type ThermometerPast } from '../../engine/index.js';
import type { Cells } from './season-folder.js';

/** A reading of the log, judged as a message would be; nobody is there to answer a question. */
export interface JudgedCells {
  readonly cells: Cells;
  readonly outcome: GateVerdict['outcome'];
  /** What is learned from it; null where it is asked about. */
  readonly accepted: AcceptedReading | null;
}

/** Half of the 80 % range of Student-t with four degrees of freedom, in scales. */
const TENTH_OF_T4 = 1.533;
/** A garden thermometer (project estimate, as the learning has it). */
const THERMOMETER_K = 0.4;
/** In the night it is so much warmer than its low when somebody looks, give or take as much (project estimate). */
const ABOVE_THE_LOW_K = 3;
const MORNING_S = 2 * 3600;
/** Older than this no thermometer still shows a low that was not reset (project estimate). */
const STILL_SHOWN_S = 4 * 86_400;
const HALF_DAY_S = 43_200;

/** Readings go in, in the order of their time; what was settled before is what the next is judged by. */
export function replayGate(greenhouse: Greenhouse): (cells: Cells, issued: readonly PlaceLow[]) => JudgedCells {
  const settled: { readonly place: string; readonly statistic: string; readonly timeS: number; readonly tempK: number; readonly isBound: boolean }[] = [];
  const house = toHouse(greenhouse);
  return (cells, issued) => {
    const timeS = Number(cells['unix']);
    const place = cells['place']!;
    const statistic = cells['statistic'] === 'low' ? 'low' : 'now';
    const running = nightSpan(timeS, house.place);
    const night = statistic === 'low' ? nightSpan(timeS - HALF_DAY_S, house.place) : running;
    const typed = { value: Number(cells['value']), unit: cells['unit'] === 'F' ? 'F' : 'C', statistic, sunIsUp: !running.isRunning } as const;
    const own = settled.filter((one) => one.place === place);
    const lows = own.filter((one) => one.statistic === 'low');
    const checked = lows.filter(({ isBound }) => !isBound).map(({ tempK }) => tempK);
    const past: ThermometerPast = {
      lowsK: lows.filter((one) => one.timeS <= night.sunsetS && one.timeS > night.sunsetS - STILL_SHOWN_S).map(({ tempK }) => tempK).reverse(),
      coldestK: checked.length === 0 ? null : Math.min(...checked),
      shownThatNightK: own.filter((one) => one.statistic === 'now' && one.timeS >= night.sunsetS && one.timeS <= night.sunriseS).map(({ tempK }) => tempK),
    };
    const isNight = statistic === 'low' || (timeS >= running.sunsetS && timeS <= running.sunriseS + MORNING_S);
    const verdict = judgeReading(typed, isNight ? expectedOf(issued, place, statistic) : null, past);
    if (verdict.outcome === 'ask') return { cells, outcome: 'ask', accepted: null };
    const isBound = verdict.outcome === 'bound';
    settled.push({ place, statistic, timeS, tempK: verdict.tempK, isBound });
    return { cells, outcome: verdict.outcome, accepted: { timeS, place: place as AcceptedReading['place'], statistic, valueK: verdict.tempK, ...(isBound ? { notReset: true } : {}) } };
  };
}

/** As the evening before said it of the place; null where it said nothing. */
function expectedOf(issued: readonly PlaceLow[], place: string, statistic: 'low' | 'now'): ExpectedTemp | null {
  const found = issued.find(({ key }) => key.place === place);
  if (found === undefined) return null;
  const [q10, q50, q90] = [0.1, 0.5, 0.9].map((share) => mixtureQuantileK(found.low, share)) as [number, number, number];
  const scaleK = Math.hypot((q90 - q10) / 2 / TENTH_OF_T4, THERMOMETER_K);
  return statistic === 'low' ? { meanK: q50, scaleK } : { meanK: q50 + ABOVE_THE_LOW_K, scaleK: Math.hypot(scaleK, ABOVE_THE_LOW_K) };
}
