import { CLOUD_LONGWAVE_WEIGHT } from '../sky/downwelling-longwave.js';
import { SECONDS_PER_HOUR } from '../units.js';
import type { WeatherDeparture } from './forcing.js';
import type { ForecastError } from '../learn/forecast-error.js';
import type { NightSpan } from './night-span.js';
import type { WeatherHours } from './weather.js';

/** One way in which the forecast may be wrong, and how likely. */
export interface WeatherScenario {
  readonly departure: WeatherDeparture;
  readonly weight: number;
}

/** How sure the forecast is, before any reading of this house. */
export interface ForecastDoubt {
  /** Mean error expected: forecasts are too warm on clear calm nights. */
  readonly shiftK: number;
  readonly airTempSdK: number;
  readonly cloudSd: number;
  /** How the error of temperature goes with that of cloud, -1 to 1. */
  readonly correlation: number;
  /** 0 overcast or windy, 1 clear and calm. */
  readonly clearCalm: number;
  readonly spreadK: number | null;
  readonly leadHours: number;
}

// Priors of this project, from open data of 3700 nights at a mountain airport and 970 stations (day-to-day sd 2-2.5 K; forecasts 1-2 K
// too warm below freezing; raw ensemble spread three to four times too small) and the ECMWF-UserGuide (1-2 K too warm in stable nights).
const AIR_TEMP_SD_K = 1.9;
const CLEAR_CALM_EXTRA_SD_K = 0.6;
const CLEAR_CALM_SHIFT_K = -1;
const CLOUD_SD = 0.25;
const TYPICAL_SPREAD_K = 0.65;
/** Spread of a night's mean cloud over the members of an ensemble, half a day to a day ahead (project estimate; hour by hour 0.2 to 0.25, from memory). */
const TYPICAL_CLOUD_SPREAD = 0.15;
/** As of learned errors: more would leave the scenarios on a line. */
const MOST_CORRELATION = 0.9;
const SPREAD_WEIGHT = 0.25;
/** Weight of the spread once forecasts have been verified: half after many nights, half of that after twenty (prior of this project). */
const MOST_SPREAD_WEIGHT = 0.5;
const NIGHTS_FOR_SPREAD = 20;
const SPREAD_RATIO2 = [0.25, 4] as const;
const GROWTH_PER_DAY = 0.1;
const AGE_SD_K_PER_HOUR = 0.05;
const CALM_BELOW_M_PER_S = 4;

/** Seven points of two independent standard normal errors, exact to the fifth degree in both: the middle, and a hexagon of radius 2 (Stroud1971 E2r2 5-1). */
const CENTRE_WEIGHT = 1 / 2;
const CORNER_WEIGHT = 1 / 12;
const CUBATURE = [
  { temp: 0, cloud: 0, weight: CENTRE_WEIGHT },
  ...[2, 1, -1, -2].flatMap((temp) => (Math.abs(temp) === 2 ? [0] : [Math.sqrt(3), -Math.sqrt(3)]).map((cloud) => ({ temp, cloud, weight: CORNER_WEIGHT }))),
];

/**
 * How far the forecast may be off for the coming night.
 * Units: K, fractions, hours.
 * Valid: weather that covers the night.
 * Outside: missing spread counts as typical; a correlation that no members tell is that of past errors, or none.
 * Source: priors named above; spread-skill form of Gneiting2005 with little weight until readings come. Members' own correlation is taken as it
 * is: that they stray too little says nothing against how their strayings go together.
 */
export function forecastDoubt(weather: WeatherHours, night: NightSpan, when: { nowS: number; weatherAgeS: number }, learned: ForecastError | null = null): ForecastDoubt {
  const hours = weather.timeS.map((timeS, i) => ({ timeS, i })).filter(({ timeS }) => timeS >= Math.max(when.nowS, night.sunsetS) && timeS <= night.sunriseS);
  const mean = (values: readonly number[]): number => (values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length);
  const clearCalm = mean(hours.map(({ i }) => (1 - weather.cloudFraction[i]!) * Math.max(0, 1 - weather.windSpeed10mMPerS[i]! / CALM_BELOW_M_PER_S)));
  const known = (values: readonly (number | null)[]): number[] => hours.map(({ i }) => values[i] ?? null).filter((value): value is number => value !== null);
  const spreads = known(weather.airTempSpreadK);
  const spreadK = spreads.length === 0 ? null : mean(spreads);
  const differences = known(weather.modelDifferenceK);
  const halfDifferenceK = mean(differences) / 2;
  const leadHours = Math.max(0, (night.sunriseS - when.nowS) / SECONDS_PER_HOUR);
  const growth = 1 + GROWTH_PER_DAY * Math.max(0, leadHours / 24 - 0.75);
  // A learned house has its pool of cold air among its own parameters, and what its forecasts were worth in figures.
  const usualSdK = learned ? learned.airTempSdK : AIR_TEMP_SD_K + CLEAR_CALM_EXTRA_SD_K * clearCalm;
  const spreadWeight = learned ? (MOST_SPREAD_WEIGHT * learned.nights) / (learned.nights + NIGHTS_FOR_SPREAD) : SPREAD_WEIGHT;
  const prior = usualSdK * growth * widening(spreadK, learned?.meanSpreadK ?? TYPICAL_SPREAD_K, spreadWeight);
  const ageK = (AGE_SD_K_PER_HOUR * when.weatherAgeS) / SECONDS_PER_HOUR;
  return {
    shiftK: learned ? learned.shiftK : CLEAR_CALM_SHIFT_K * clearCalm,
    airTempSdK: Math.hypot(prior, ageK, halfDifferenceK),
    // Of the hours up to dawn, when the night is coldest. Learned misses hold what the members' spread of cloud is usually worth at this place: what
    // is usual of it is not learned, and beside a guess a steady spread would count twice.
    cloudSd: learned ? learned.cloudSd : CLOUD_SD * widening(known(weather.cloudSpread).at(-1) ?? null, TYPICAL_CLOUD_SPREAD, SPREAD_WEIGHT),
    correlation: Math.max(-MOST_CORRELATION, Math.min(MOST_CORRELATION, known(weather.airTempCloudCorrelation).at(-1) ?? learned?.correlation ?? 0)),
    clearCalm,
    spreadK,
    leadHours,
  };
}

/** By how much an unusual spread widens or narrows what is usual: raw spread is too small, but its changes tell something. */
function widening(spread: number | null, typical: number, weight: number): number {
  const ratio2 = spread === null ? 1 : Math.min(SPREAD_RATIO2[1], Math.max(SPREAD_RATIO2[0], (spread / typical) ** 2));
  return Math.sqrt(1 + weight * (ratio2 - 1));
}

/**
 * Seven weather scenarios of temperature and cloud, with weights; the middle one first. Errors of both may go together.
 * Units: K, fractions.
 * Valid: any doubt.
 * Outside: not applicable.
 * Source: cubature for a normal weight in two dimensions (Stroud1971 E2r2 5-1).
 */
export function weatherScenarios(doubt: ForecastDoubt, fromS: number, cloudWeight = CLOUD_LONGWAVE_WEIGHT): readonly WeatherScenario[] {
  const { shiftK, airTempSdK, cloudSd, correlation } = doubt;
  return CUBATURE.map(({ temp, cloud, weight }) => ({
    departure: { airTempK: shiftK + airTempSdK * (correlation * cloud + Math.sqrt(1 - correlation ** 2) * temp), cloudFraction: cloud * cloudSd, cloudWeight, fromS },
    weight,
  }));
}
