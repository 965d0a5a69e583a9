import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { ControlPlan } from '../night/controls.js';
import { STEP_S } from '../night/forcing.js';
import { nightSpan } from '../night/night-span.js';
import type { GroundOutside, WeatherHours } from '../night/weather.js';
import { SECONDS_PER_DAY, SECONDS_PER_HOUR } from '../units.js';
import { calibrate, type Calibration, type CalibrationRow } from './calibrate.js';
import { forecastError, type ForecastError, type ForecastMiss } from './forecast-error.js';
import { firstState, POINTS, runPoint, seriesValueK, slopesOf, type PointSeries, type StoredState } from './house-points.js';

/** Raised when a stored LearnedHouse no longer means the same. */
export const LEARNED_VERSION = 1;

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
  readonly warmUpHours: number;
}

const FORTNIGHT_HOURS = 15 * 24;
/** A change that was told loosens every parameter to this share of its prior variance; the rows before it count this much (project estimate). */
const OLD_ROWS_AFTER_CHANGE = 0.3;

/**
 * The house after its readings: goes on from what was learned before, so that a day costs a day's runs.
 * Units: SI, whitened parameters.
 * Valid: weather from the last stop to `untilS`.
 * Outside: throws RangeError where the weather does not reach.
 * Source: one continuous run at each point of POINTS, calibrate, forecastError.
 */
export function learnHouse(history: LearningHistory, previous: LearnedHouse | null = null): LearnedHouse {
  const { greenhouse, weather, readings, untilS } = history;
  const fromS = previous?.stateAtS ?? weather.timeS[0]!;
  const stopS = stopBefore(greenhouse, fromS, untilS);
  const begin = previous?.states ?? POINTS.map((z) => firstState(greenhouse, z, history));
  const toStop = stopS > fromS ? runAll(history, begin, { fromS, toS: stopS }) : null;
  const states = toStop?.map(({ state }) => state) ?? begin;
  const fresh = readings.filter(({ timeS }) => timeS > fromS && timeS <= untilS);
  const tail = fresh.some(({ timeS }) => timeS > stopS) ? runAll(history, states, { fromS: stopS, toS: onStep(weather, untilS) }) : null;
  const old = previous?.rows.filter(({ timeS }) => timeS <= fromS) ?? [];
  const rows = [...old, ...fresh.flatMap((reading) => rowOf(reading, reading.timeS <= stopS ? toStop : tail, greenhouse))];
  const hours = toStop?.[0]!.plantAirTempK ?? [];
  return {
    version: LEARNED_VERSION,
    calibration: calibrate(rows, untilS, agesOf(rows, history.changes)),
    forecastError: forecastError(history.forecastMisses.filter(({ nightS }) => nightS < untilS)),
    states,
    stateAtS: stopS,
    plantAirTempK: (previous?.plantAirTempK ?? hours.map(() => [])).map((past, c) => [...past, ...(hours[c] ?? [])].slice(-FORTNIGHT_HOURS)),
    rows,
    warmUpHours: (previous?.warmUpHours ?? 0) + (stopS - fromS) / SECONDS_PER_HOUR,
  };
}

function agesOf(rows: readonly CalibrationRow[], changes: readonly MarkedChange[]): readonly number[] {
  return rows.map(({ timeS }) => (changes.some((change) => change.timeS > timeS) ? OLD_ROWS_AFTER_CHANGE : 1));
}

const onStep = (weather: WeatherHours, timeS: number): number => weather.timeS[0]! + Math.floor((timeS - weather.timeS[0]!) / STEP_S) * STEP_S;

/** The last noon by the sun: no night is cut in two, and a reading that comes late still finds its whole night. */
function stopBefore({ place }: Greenhouse, fromS: number, untilS: number): number {
  const shiftS = Math.round(((place.longitude / 15) * SECONDS_PER_HOUR) / SECONDS_PER_HOUR) * SECONDS_PER_HOUR;
  const noon = Math.floor((untilS + shiftS) / SECONDS_PER_DAY - 0.5) * SECONDS_PER_DAY + SECONDS_PER_DAY / 2 - shiftS;
  return Math.max(fromS, noon);
}

const runAll = ({ greenhouse, weather, controls }: LearningHistory, from: readonly StoredState[], span: { fromS: number; toS: number }): readonly PointSeries[] =>
  POINTS.map((z, p) => runPoint({ greenhouse, weather, controls, ...span }, z, from[p]!));

function rowOf(reading: AcceptedReading, points: readonly PointSeries[] | null, { place }: Greenhouse): readonly CalibrationRow[] {
  if (!points) return [];
  const at = points[0]!.places.findIndex((key) => key.place === reading.place);
  if (at < 0) return [];
  const { sunsetS } = nightSpan(reading.timeS - SECONDS_PER_DAY / 2, place);
  const span = { fromS: Math.min(sunsetS, reading.timeS), toS: reading.timeS, statistic: reading.statistic };
  const values = points.map((series) => seriesValueK(series, at, span));
  if (values.some(Number.isNaN)) return [];
  const { at0, slopes } = slopesOf(values);
  return [{ timeS: reading.timeS, thermometer: reading.thermometer ?? reading.place, readingK: reading.valueK, atPriorK: at0, slopes, censored: reading.notReset === true }];
}
