import { saturationVapourPressureOverWaterPa } from '../air/saturation-magnus.js';
import type { House } from '../greenhouse/house.js';
import { CLOUD_LONGWAVE_WEIGHT, surroundingsRadiantTempK } from '../sky/downwelling-longwave.js';
import { sunIntoHouse, type HouseSun } from '../sun/house-gain.js';
import { sunPosition, type SunPosition } from '../sun/position.js';
import { SECONDS_PER_HOUR } from '../units.js';
import type { WeatherHours } from './weather.js';

/** Length of a step of the night model (s). */
export const STEP_S = 600;

/** Weather at the house, one value for the end of each step. */
export interface Forcing {
  readonly startS: number;
  readonly stepS: number;
  readonly outsideAirTempK: Float64Array;
  readonly surroundingsTempK: Float64Array;
  readonly vapourPressurePa: Float64Array;
  readonly windAtCoverMPerS: Float64Array;
  readonly cloudFraction: Float64Array;
  readonly pressurePa: Float64Array;
  /** Sunlight on the flat outside, W/m2. */
  readonly globalShortwaveWPerM2: Float64Array;
  /** Sunlight kept in the house, W, and of it what falls on the solid wall. */
  readonly sunW: Float64Array;
  readonly sunOnWallW: Float64Array;
}

/** How the weather of a scenario departs from the forecast, and when that begins. */
export interface WeatherDeparture {
  readonly airTempK: number;
  readonly cloudFraction: number;
  readonly cloudWeight: number;
  readonly fromS: number;
}

export const AS_FORECAST: WeatherDeparture = { airTempK: 0, cloudFraction: 0, cloudWeight: CLOUD_LONGWAVE_WEIGHT, fromS: 0 };

/** A departure grows to its full size over this long, so that no jump enters the house. */
const RAMP_S = 3 * SECONDS_PER_HOUR;
/** Below this sum of sines the sun is down for the whole hour: what light there is stays even over it. */
const LOWEST_SINE = 1e-3;
/** Bare ground or grass around the house (from memory: 0.2; fresh snow would be 0.7 to 0.9 and is not known here). */
const GROUND_ALBEDO = 0.2;

/**
 * Weather of every step between two instants, for one house.
 * Units: epoch seconds; SI.
 * Valid: the span must lie inside the weather's hours.
 * Outside: throws RangeError that names both spans.
 * Source: linear between hours; sunlight of an hour is spread over it by the sine of the sun's height, so that its sum is kept.
 */
export function forcingFor(house: House, weather: WeatherHours, span: { fromS: number; toS: number; stepS?: number }, departure: WeatherDeparture = AS_FORECAST): Forcing {
  const stepS = span.stepS ?? STEP_S;
  const steps = Math.round((span.toS - span.fromS) / stepS);
  const [first, last] = [weather.timeS[0]!, weather.timeS.at(-1)!];
  if (!(span.fromS >= first && span.fromS + steps * stepS <= last)) throw new RangeError(`weather covers ${first} to ${last}, asked for ${span.fromS} to ${span.toS} (epoch s)`);
  const make = (): Float64Array => new Float64Array(steps);
  const forcing = { startS: span.fromS, stepS, outsideAirTempK: make(), surroundingsTempK: make(), vapourPressurePa: make(), windAtCoverMPerS: make(), cloudFraction: make(), pressurePa: make(), globalShortwaveWPerM2: make(), sunW: make(), sunOnWallW: make() };
  const houseSun: HouseSun = { geometry: house.geometry, sheets: house.films.map(({ sheet }) => sheet), cleanShare: house.cleanShare, groundAlbedo: GROUND_ALBEDO };
  for (let i = 0; i < steps; i += 1) {
    const timeS = span.fromS + (i + 1) * stepS;
    const position = (timeS - first) / SECONDS_PER_HOUR;
    const hour = Math.min(Math.floor(position), weather.timeS.length - 2);
    const share = position - hour;
    const at = (values: readonly number[]): number => values[hour]! + share * (values[hour + 1]! - values[hour]!);
    const ramp = Math.min(1, Math.max(0, (timeS - departure.fromS) / RAMP_S));
    const airTempK = at(weather.airTempK) + ramp * departure.airTempK;
    const cloudFraction = Math.min(1, Math.max(0, at(weather.cloudFraction) + ramp * departure.cloudFraction));
    const vapourPressurePa = Math.min(at(weather.vapourPressurePa), saturationVapourPressureOverWaterPa(airTempK));
    forcing.outsideAirTempK[i] = airTempK;
    forcing.cloudFraction[i] = cloudFraction;
    forcing.vapourPressurePa[i] = vapourPressurePa;
    forcing.windAtCoverMPerS[i] = Math.min(40, at(weather.windSpeed10mMPerS) * house.windShare);
    forcing.pressurePa[i] = at(weather.surfacePressurePa);
    forcing.surroundingsTempK[i] = surroundingsRadiantTempK({ airTempK, vapourPressurePa, cloudFraction, cloudWeight: departure.cloudWeight, skyViewFraction: house.skyViewFraction });
    const light = lightOfStep(house, weather, timeS - stepS / 2);
    if (light === null) continue;
    const inside = sunIntoHouse(houseSun, light.sun, light);
    forcing.globalShortwaveWPerM2[i] = light.globalWPerM2;
    forcing.sunW[i] = inside.totalW;
    forcing.sunOnWallW[i] = inside.onWallW;
  }
  return forcing;
}

/** The hour's mean light belongs to the hour that ends at its stamp; inside it follows the sun's height. Null in the dark. */
function lightOfStep(house: House, weather: WeatherHours, middleS: number): { sun: SunPosition; globalWPerM2: number; diffuseWPerM2: number } | null {
  const hourEnd = Math.ceil((middleS - weather.timeS[0]!) / SECONDS_PER_HOUR);
  const meanGlobal = weather.globalShortwaveWPerM2[hourEnd] ?? 0;
  if (meanGlobal <= 0) return null;
  const sun = sunPosition(middleS, house.place);
  const startS = weather.timeS[hourEnd]! - SECONDS_PER_HOUR;
  let sineSum = 0;
  const samples = 6;
  for (let k = 0; k < samples; k += 1) sineSum += Math.max(0, Math.sin(sunPosition(startS + ((k + 0.5) * SECONDS_PER_HOUR) / samples, house.place).altitudeRad));
  const shape = sineSum < LOWEST_SINE ? 1 : (Math.max(0, Math.sin(sun.altitudeRad)) * samples) / sineSum;
  return { sun, globalWPerM2: meanGlobal * shape, diffuseWPerM2: Math.min(meanGlobal, weather.diffuseShortwaveWPerM2[hourEnd] ?? meanGlobal) * shape };
}
