import { judgeReading, mixtureQuantileK, nightSpan, type AcceptedReading, type ExpectedTemp, type GateVerdict, type Greenhouse, type PlaceLow, type ThermometerPast } from '../../engine/index.js';
import type { Cells } from './season-folder.js';

/** A reading of the log, judged as a message would be; nobody is there to answer a question. */
export interface JudgedCells {
  readonly cells: Cells;
  readonly verdict: GateVerdict;
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
export function replayGate({ place }: Greenhouse): (cells: Cells, issued: readonly PlaceLow[]) => JudgedCells {
  const settled: AcceptedReading[] = [];
  return (cells, issued) => {
    const verdict = verdictOn(cells, { issued, settled, place });
    const accepted = verdict.outcome === 'ask' ? null : acceptedFrom(cells, verdict);
    if (accepted !== null) settled.push(accepted);
    return { cells, verdict, accepted };
  };
}

/** What is known when a reading of the log comes in. */
export interface KnownOfPlace {
  /** As the evening before said the night. */
  readonly issued: readonly PlaceLow[];
  /** In the order of their time. */
  readonly settled: readonly AcceptedReading[];
  readonly place: Greenhouse['place'];
}

/** What the gate makes of one reading of the log. Nothing is kept. */
export function verdictOn(cells: Cells, { issued, settled, place }: KnownOfPlace): GateVerdict {
  const { timeS, statistic, value, unit } = typedIn(cells);
  const running = nightSpan(timeS, place);
  const night = statistic === 'low' ? nightSpan(timeS - HALF_DAY_S, place) : running;
  const own = settled.filter((one) => one.place === cells['place']);
  const lows = own.filter((one) => one.statistic === 'low');
  const checked = lows.filter(({ notReset }) => notReset !== true).map(({ valueK }) => valueK);
  const past: ThermometerPast = {
    lowsK: lows.filter((one) => one.timeS <= night.sunsetS && one.timeS > night.sunsetS - STILL_SHOWN_S).map(({ valueK }) => valueK).reverse(),
    coldestK: checked.length === 0 ? null : Math.min(...checked),
    shownThatNightK: own.filter((one) => one.statistic === 'now' && one.timeS >= night.sunsetS && one.timeS <= night.sunriseS).map(({ valueK }) => valueK),
  };
  const isNight = statistic === 'low' || (timeS >= running.sunsetS && timeS <= running.sunriseS + MORNING_S);
  return judgeReading({ value, unit, statistic, sunIsUp: !running.isRunning }, isNight ? expectedOf(issued, cells['place']!, statistic) : null, past);
}

const typedIn = (cells: Cells): { timeS: number; statistic: 'low' | 'now'; value: number; unit: 'C' | 'F' } => ({ timeS: Number(cells['unix']), statistic: cells['statistic'] === 'low' ? 'low' : 'now', value: Number(cells['value']), unit: cells['unit'] === 'F' ? 'F' : 'C' });

function acceptedFrom(cells: Cells, { outcome, tempK }: GateVerdict): AcceptedReading {
  const { timeS, statistic } = typedIn(cells);
  return { timeS, place: cells['place'] as AcceptedReading['place'], statistic, valueK: tempK, ...(outcome === 'bound' ? { notReset: true } : {}) };
}

/** As the evening before said it of the place; null where it said nothing. */
function expectedOf(issued: readonly PlaceLow[], place: string, statistic: 'low' | 'now'): ExpectedTemp | null {
  const found = issued.find(({ key }) => key.place === place);
  if (found === undefined) return null;
  const [q10, q50, q90] = [0.1, 0.5, 0.9].map((share) => mixtureQuantileK(found.low, share)) as [number, number, number];
  const scaleK = Math.hypot((q90 - q10) / 2 / TENTH_OF_T4, THERMOMETER_K);
  return statistic === 'low' ? { meanK: q50, scaleK } : { meanK: q50 + ABOVE_THE_LOW_K, scaleK: Math.hypot(scaleK, ABOVE_THE_LOW_K) };
}
