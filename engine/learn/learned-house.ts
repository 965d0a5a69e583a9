import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { ControlPlan } from '../night/controls.js';
import { STEP_S } from '../night/forcing.js';
import { nightSpan } from '../night/night-span.js';
import type { PlaceKey } from '../night/places.js';
import type { GroundOutside, WeatherHours } from '../night/weather.js';
import { SECONDS_PER_DAY, SECONDS_PER_HOUR } from '../units.js';
import { calibrate, type Calibration, type CalibrationRow } from './calibrate.js';
import { forecastError, type ForecastError, type ForecastMiss } from './forecast-error.js';
import { firstState, groundShifted, POINTS, runPoint, seriesValueK, slopesOf, type PointSeries, type StoredState } from './house-points.js';
import { FITTED, PRIOR_POINT } from './parameters.js';

/** Raised when a stored LearnedHouse no longer means the same. */
export const LEARNED_VERSION = 4;

/** A reading that was judged and accepted. */
export interface AcceptedReading {
  readonly timeS: number;
  readonly place: 'inside' | 'outside' | 'cover' | 'soil' | 'water' | 'stones';
  readonly statistic: 'low' | 'now';
  readonly valueK: number;
  /** Which thermometer, where a place has several; the place itself when left out. */
  readonly thermometer?: string;
  /** A low that was not reset: the night was no colder than this. */
  readonly notReset?: boolean;
}

/** A lasting change of the house: what was learned of it is trusted less from then on. */
export interface MarkedChange {
  readonly timeS: number;
  readonly greenhouse?: Greenhouse;
}

/** All that a house is learned from. Weather is what came (analysis), not what was forecast, from where the last learning stopped or before. */
export interface LearningHistory {
  readonly greenhouse: Greenhouse;
  readonly weather: WeatherHours;
  readonly ground: GroundOutside;
  readonly controls: ControlPlan;
  /** All that stand, also those that were learned from before: one that was corrected or taken back counts so. */
  readonly readings: readonly AcceptedReading[];
  readonly forecastMisses: readonly ForecastMiss[];
  readonly changes: readonly MarkedChange[];
  readonly untilS: number;
}

/** What is known of one house: plain data. */
export interface LearnedHouse {
  readonly version: typeof LEARNED_VERSION;
  readonly calibration: Calibration;
  readonly forecastError: ForecastError;
  /** Where the continuous run stands, at every point of POINTS. */
  readonly states: readonly StoredState[];
  readonly stateAtS: number;
  /** Air at the plants of each column, hourly, the past fortnight. */
  readonly plantAirTempK: readonly (readonly number[])[];
  readonly rows: readonly CalibrationRow[];
  /** Lows of the last nights behind the run at every point, for readings that come late. */
  readonly recentLows: readonly NightLow[];
  readonly warmUpHours: number;
}

/** Low of one place and night at every point of POINTS. */
interface NightLow {
  readonly sunsetS: number;
  readonly place: PlaceKey['place'];
  readonly pointsK: readonly number[];
}

const FORTNIGHT_HOURS = 15 * 24;
/** A change that was told loosens every parameter to this share of its prior variance; the rows before it count this much (project estimate). */
const OLD_ROWS_AFTER_CHANGE = 0.3;
/** A reading that is told or settled later than this after its night is not learned from (project estimate). */
const LATE_NIGHTS = 3;
/**
 * A run that begins anew takes the prior point through all the past, the points beside it from so many days before the first reading on: what
 * a parameter does to stores over longer is learned as the run goes on (project estimate; a full past of every point would take several evenings' time).
 */
const BESIDE_DAYS = 3;
const MORNING_IN_LOWS_S = 2 * SECONDS_PER_HOUR;

/**
 * The house after its readings: goes on from what was learned before, so that a day costs a day's runs. Where that run and the weather
 * at hand do not touch, it begins anew and keeps what its readings taught.
 * Units: SI, whitened parameters.
 * Valid: weather that reaches `untilS`; readings in any order.
 * Outside: throws RangeError where the weather does not reach.
 * Source: one continuous run at each point of POINTS, calibrate, forecastError.
 */
export function learnHouse(history: LearningHistory, stored: LearnedHouse | null = null): LearnedHouse {
  const { greenhouse, weather, untilS } = history;
  const previous = stored?.version === LEARNED_VERSION ? stored : null;
  const stopS = stopBefore(greenhouse, weather, untilS);
  const start = previous !== null && previous.stateAtS >= weather.timeS[0]! ? { ...previous, fromS: previous.stateAtS } : beginning(history, stopS);
  const { fromS } = start;
  const toStop = stopS > fromS ? runAll(history, start.states, { fromS, toS: stopS }) : null;
  const states = toStop?.map(({ state }) => state) ?? start.states;
  const recentLows = [...(previous?.recentLows ?? []), ...(toStop === null ? [] : lowsOf(toStop, { fromS, toS: stopS }, greenhouse))].filter(({ sunsetS }) => sunsetS > stopS - LATE_NIGHTS * SECONDS_PER_DAY - SECONDS_PER_DAY / 2);
  const readings = history.readings.filter(({ timeS }) => timeS <= untilS).map((reading) => ({ reading, key: keyOf(reading, greenhouse) }));
  const standing = new Map(readings.map(({ reading, key }) => [key, reading]));
  const old = (previous?.rows ?? []).flatMap((row) => correctedRow(row, standing.get(row.key), Math.max(fromS, previous!.stateAtS)));
  const known = new Set(old.map(({ key }) => key));
  const fresh = readings.filter(({ key }) => !known.has(key));
  const tail = fresh.some(({ reading: { timeS } }) => timeS > stopS) ? runAll(history, states, { fromS: stopS, toS: onStep(weather, untilS) }) : null;
  const rows = [...old, ...fresh.flatMap((one) => (one.reading.timeS > fromS ? freshRow(one, one.reading.timeS <= stopS ? toStop : tail, greenhouse) : lateRow(one, recentLows, greenhouse)))].sort((a, b) => a.timeS - b.timeS);
  const hours = toStop?.[0]!.plantAirTempK ?? [];
  return {
    version: LEARNED_VERSION,
    calibration: calibrate(rows, untilS, agesOf(rows, history.changes)),
    forecastError: forecastError(history.forecastMisses.filter(({ nightS }) => nightS < untilS)),
    states,
    stateAtS: stopS,
    plantAirTempK: (start.plantAirTempK.length > 0 ? start.plantAirTempK : hours.map(() => [])).map((past, c) => [...past, ...(hours[c] ?? [])].slice(-FORTNIGHT_HOURS)),
    rows,
    recentLows,
    warmUpHours: start.warmUpHours + (stopS - fromS) / SECONDS_PER_HOUR,
  };
}

/** How many nights have a reading that was learned from. Units: none. Valid: any. Outside: not applicable. Source: definition. */
export const nightsLearnedFrom = ({ rows }: Pick<LearnedHouse, 'rows'>, place: Greenhouse['place']): number =>
  new Set(rows.filter(({ censored }) => !censored).map(({ timeS }) => Math.round(nightOf(timeS, place) / SAME_SUNSET_S))).size;

/** The prior point through all the past but the last days; every other point begins beside it. */
function beginning(history: LearningHistory, stopS: number): Pick<LearnedHouse, 'states' | 'plantAirTempK' | 'warmUpHours'> & { readonly fromS: number } {
  const { greenhouse, weather, controls } = history;
  const firstS = weather.timeS[0]!;
  const toLearnS = Math.min(stopS, ...history.readings.flatMap(({ timeS }) => (timeS > firstS ? [onStep(weather, timeS)] : [])));
  const fromS = Math.max(firstS, toLearnS - BESIDE_DAYS * SECONDS_PER_DAY);
  const first = firstState(greenhouse, history);
  const run = fromS > firstS ? runPoint({ greenhouse, weather, controls, fromS: firstS, toS: fromS }, PRIOR_POINT, first) : null;
  return { fromS, states: POINTS.map((z) => groundShifted(greenhouse, z, run?.state ?? first)), plantAirTempK: run?.plantAirTempK ?? [], warmUpHours: (fromS - firstS) / SECONDS_PER_HOUR };
}

function agesOf(rows: readonly CalibrationRow[], changes: readonly MarkedChange[]): readonly number[] {
  return rows.map(({ timeS }) => (changes.some((change) => change.timeS > timeS) ? OLD_ROWS_AFTER_CHANGE : 1));
}

const onStep = (weather: WeatherHours, timeS: number): number => weather.timeS[0]! + Math.floor((timeS - weather.timeS[0]!) / STEP_S) * STEP_S;

/** The last noon by the sun: no night is cut in two, and a reading of the morning finds its whole night. */
function stopBefore({ place }: Greenhouse, weather: WeatherHours, untilS: number): number {
  const shiftS = Math.round(((place.longitude / 15) * SECONDS_PER_HOUR) / SECONDS_PER_HOUR) * SECONDS_PER_HOUR;
  const noon = Math.floor((untilS + shiftS) / SECONDS_PER_DAY - 0.5) * SECONDS_PER_DAY + SECONDS_PER_DAY / 2 - shiftS;
  return Math.max(weather.timeS[0]!, noon);
}

const runAll = ({ greenhouse, weather, controls }: LearningHistory, from: readonly StoredState[], span: { fromS: number; toS: number }): readonly PointSeries[] =>
  POINTS.map((z, p) => runPoint({ greenhouse, weather, controls, ...span }, z, from[p]!));

/** Sunset of the night that a reading of the low is of: it is read in it or in the morning after. */
const nightOf = (timeS: number, place: Greenhouse['place']): number => nightSpan(timeS - SECONDS_PER_DAY / 2, place).sunsetS;
/** Two instants of one night find its sunset within seconds of each other. */
const SAME_SUNSET_S = 600;

const thermometerOf = (reading: AcceptedReading): string => reading.thermometer ?? reading.place;

/** What a reading is of: a low of a thermometer and a night, whenever it was told, or what it showed at an instant. */
const keyOf = (reading: AcceptedReading, { place }: Greenhouse): string =>
  `${thermometerOf(reading)} ${reading.statistic} ${reading.statistic === 'low' ? Math.round(nightOf(reading.timeS, place) / SAME_SUNSET_S) : reading.timeS}`;

/** A row of before with the reading as it now stands; none when it was taken back, or lies where the run has yet to pass. */
function correctedRow(row: CalibrationRow, reading: AcceptedReading | undefined, settledUntilS: number): readonly CalibrationRow[] {
  if (reading === undefined || row.timeS > settledUntilS || row.slopes.length !== FITTED.length) return [];
  return [{ ...row, readingK: reading.valueK, censored: reading.notReset === true }];
}

interface KeyedReading {
  readonly reading: AcceptedReading;
  readonly key: string;
}

function freshRow(one: KeyedReading, points: readonly PointSeries[] | null, { place }: Greenhouse): readonly CalibrationRow[] {
  const { reading } = one;
  if (!points) return [];
  const at = points[0]!.places.findIndex((key) => key.place === reading.place);
  if (at < 0) return [];
  const span = { fromS: Math.min(nightOf(reading.timeS, place), reading.timeS), toS: reading.timeS, statistic: reading.statistic };
  return rowFrom(one, points.map((series) => seriesValueK(series, at, span)));
}

/** The run has passed the night already: its low stands in what was kept. */
function lateRow(one: KeyedReading, recentLows: readonly NightLow[], { place }: Greenhouse): readonly CalibrationRow[] {
  const { reading } = one;
  if (reading.statistic !== 'low') return [];
  const sunsetS = nightOf(reading.timeS, place);
  const low = recentLows.find((night) => night.place === reading.place && Math.abs(night.sunsetS - sunsetS) < SAME_SUNSET_S);
  return low === undefined ? [] : rowFrom(one, low.pointsK);
}

function rowFrom({ reading, key }: KeyedReading, values: readonly number[]): readonly CalibrationRow[] {
  if (values.some(Number.isNaN)) return [];
  const { at0, slopes } = slopesOf(values);
  return [{ key, timeS: reading.timeS, thermometer: thermometerOf(reading), readingK: reading.valueK, atPriorK: at0, slopes, isOutside: reading.place === 'outside', censored: reading.notReset === true }];
}

/** Lows of every place in the nights that a run has passed from sunset to morning. */
function lowsOf(points: readonly PointSeries[], run: { fromS: number; toS: number }, { place }: Greenhouse): readonly NightLow[] {
  const keys = points[0]!.places;
  const lows: NightLow[] = [];
  for (let night = nightSpan(run.fromS, place); night.sunriseS + MORNING_IN_LOWS_S <= run.toS; night = nightSpan(night.sunriseS + SECONDS_PER_HOUR, place)) {
    if (night.sunsetS < run.fromS) continue;
    const span = { fromS: night.sunsetS, toS: night.sunriseS + MORNING_IN_LOWS_S, statistic: 'low' } as const;
    keys.forEach((key, at) => {
      if (keys.findIndex((other) => other.place === key.place) === at) lows.push({ sunsetS: night.sunsetS, place: key.place, pointsK: points.map((series) => seriesValueK(series, at, span)) });
    });
  }
  return lows;
}
