import type { NightSpan } from '../night/night-span.js';
import type { WeatherHours } from '../night/weather.js';
import { SECONDS_PER_HOUR } from '../units.js';

/** What a forecast cell says of a night, before it or after. */
export interface CellNight {
  readonly sunsetS: number;
  readonly sunriseS: number;
  readonly lowK: number;
  readonly meanCloud: number;
  readonly spreadK: number | null;
}

const MORNING_IN_LOWS_S = 2 * SECONDS_PER_HOUR;

/** A night as hours of weather have it; null where they do not cover it. Units: K, fractions. Valid: any weather. Outside: null. Source: definition. */
export function cellNight(weather: WeatherHours, { sunsetS, sunriseS }: Pick<NightSpan, 'sunsetS' | 'sunriseS'>): CellNight | null {
  const toS = sunriseS + MORNING_IN_LOWS_S;
  if (!(weather.timeS[0]! <= sunsetS && weather.timeS.at(-1)! >= toS)) return null;
  const at = weather.timeS.flatMap((timeS, i) => (timeS >= sunsetS && timeS <= toS ? [i] : []));
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const spreads = at.map((i) => weather.airTempSpreadK[i]).filter((value): value is number => typeof value === 'number');
  return { sunsetS, sunriseS, lowK: Math.min(...at.map((i) => weather.airTempK[i]!)), meanCloud: mean(at.map((i) => weather.cloudFraction[i]!)), spreadK: spreads.length === 0 ? null : mean(spreads) };
}

/** How a forecast night compared with the same night as it came; null where the weather does not cover it yet. Units: K, fractions. Valid: weather of what came. Outside: null. Source: definition. */
export function forecastMiss(issued: CellNight, came: WeatherHours): ForecastMiss | null {
  const night = cellNight(came, issued);
  return night === null ? null : { nightS: issued.sunsetS, airTempK: night.lowK - issued.lowK, cloudFraction: night.meanCloud - issued.meanCloud, spreadK: issued.spreadK };
}

/** How a night's forecast compared with what the same cell had: known the next day without any thermometer. */
export interface ForecastMiss {
  readonly nightS: number;
  /** Low outside that came, less the one that was forecast. */
  readonly airTempK: number;
  /** Mean cloud of the night that came, less the one that was forecast. */
  readonly cloudFraction: number;
  readonly spreadK: number | null;
}

/** What the forecasts of this place have been worth. */
export interface ForecastError {
  readonly shiftK: number;
  readonly airTempSdK: number;
  readonly cloudSd: number;
  /** How the error of temperature goes with that of cloud. */
  readonly correlation: number;
  readonly meanSpreadK: number;
  readonly nights: number;
}

/** Priors of this project: error of a forecast cell 12 to 18 h ahead, as strong as ten nights; more cloud than forecast is warmer. */
const PRIOR = { airTempSdK: 1.6, cloudSd: 0.25, correlation: 0.3, spreadK: 0.65, nights: 10 } as const;

/**
 * Error of the forecasts at one place, from those that were issued.
 * Units: K, fractions.
 * Valid: any number of nights; none gives the prior.
 * Outside: not applicable.
 * Source: conjugate update of a mean and variances (Gelman2013 ch. 3, from memory).
 */
export function forecastError(misses: readonly ForecastMiss[]): ForecastError {
  const n = misses.length;
  const total = (of: (miss: ForecastMiss) => number): number => misses.reduce((sum, miss) => sum + of(miss), 0);
  const shiftK = total(({ airTempK }) => airTempK) / (n + PRIOR.nights);
  const weighted = (prior: number, sum: number): number => (PRIOR.nights * prior + sum) / (PRIOR.nights + n);
  const airTempSdK = Math.sqrt(weighted(PRIOR.airTempSdK ** 2, total(({ airTempK }) => (airTempK - shiftK) ** 2)));
  const cloudSd = Math.sqrt(weighted(PRIOR.cloudSd ** 2, total(({ cloudFraction }) => cloudFraction ** 2)));
  const covariance = weighted(PRIOR.correlation * PRIOR.airTempSdK * PRIOR.cloudSd, total(({ airTempK, cloudFraction }) => (airTempK - shiftK) * cloudFraction));
  return { shiftK, airTempSdK, cloudSd, correlation: Math.max(-0.9, Math.min(0.9, covariance / (airTempSdK * cloudSd))), meanSpreadK: weighted(PRIOR.spreadK, total(({ spreadK }) => spreadK ?? PRIOR.spreadK)), nights: n };
}
