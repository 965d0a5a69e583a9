import { saturationVapourPressureOverWaterPa } from '../air/saturation-magnus.js';
import type { House } from '../greenhouse/house.js';
import { CLOUD_LONGWAVE_WEIGHT, surroundingsRadiantTempK } from '../sky/downwelling-longwave.js';
import { sunIntoHouse, type HouseSun } from '../sun/house-gain.js';
import { sunPosition } from '../sun/position.js';
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

export interface StepSpan {
  readonly fromS: number;
  readonly toS: number;
  readonly stepS?: number;
}

/**
 * Weather of every step between two instants, for one house.
 * Units: epoch seconds; SI.
 * Valid: the span must lie inside the weather's hours.
 * Outside: throws RangeError that names both spans.
 * Source: linear between hours; sunlight of an hour is spread over it by the sine of the sun's height, so that its sum is kept.
 */
export const forcingFor = (house: House, weather: WeatherHours, span: StepSpan, departure: WeatherDeparture = AS_FORECAST): Forcing => forcingsFor(house, weather, span, [departure])[0]!;

/** As forcingFor, for several departures of one weather: they share its sun, which none of them moves. Units: epoch seconds; SI. Valid: as forcingFor. Outside: throws RangeError that names both spans. Source: as forcingFor. */
export function forcingsFor(house: House, weather: WeatherHours, span: StepSpan, departures: readonly WeatherDeparture[]): readonly Forcing[] {
  const stepS = span.stepS ?? STEP_S;
  const steps = Math.round((span.toS - span.fromS) / stepS);
  const [first, last] = [weather.timeS[0]!, weather.timeS.at(-1)!];
  if (!(span.fromS >= first && span.fromS + steps * stepS <= last)) throw new RangeError(`weather covers ${first} to ${last}, asked for ${span.fromS} to ${span.toS} (epoch s)`);
  const grid: Grid = { startS: span.fromS, stepS, steps };
  const sun = sunOfSteps(house, weather, grid);
  return departures.map((departure) => ({ ...airOfSteps(house, weather, grid, departure), ...sun }));
}

interface Grid {
  readonly startS: number;
  readonly stepS: number;
  readonly steps: number;
}

type SunOfSteps = Pick<Forcing, 'globalShortwaveWPerM2' | 'sunW' | 'sunOnWallW'>;

function airOfSteps(house: House, weather: WeatherHours, grid: Grid, departure: WeatherDeparture): Omit<Forcing, keyof SunOfSteps> {
  const make = (): Float64Array => new Float64Array(grid.steps);
  const forcing = { startS: grid.startS, stepS: grid.stepS, outsideAirTempK: make(), surroundingsTempK: make(), vapourPressurePa: make(), windAtCoverMPerS: make(), cloudFraction: make(), pressurePa: make() };
  for (let i = 0; i < grid.steps; i += 1) {
    const timeS = grid.startS + (i + 1) * grid.stepS;
    const position = (timeS - weather.timeS[0]!) / SECONDS_PER_HOUR;
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
  }
  return forcing;
}

function sunOfSteps(house: House, weather: WeatherHours, { startS, stepS, steps }: Grid): SunOfSteps {
  const make = (): Float64Array => new Float64Array(steps);
  const ofSteps = { globalShortwaveWPerM2: make(), sunW: make(), sunOnWallW: make() };
  const houseSun: HouseSun = { geometry: house.geometry, sheets: house.films.map(({ sheet }) => sheet), cleanShare: house.cleanShare, groundAlbedo: GROUND_ALBEDO };
  let hour: SunnyHour = { hourEnd: -1, sineSum: 0 };
  for (let i = 0; i < steps; i += 1) {
    const middleS = startS + (i + 1 / 2) * stepS;
    const hourEnd = Math.ceil((middleS - weather.timeS[0]!) / SECONDS_PER_HOUR);
    const meanGlobal = weather.globalShortwaveWPerM2[hourEnd] ?? 0;
    if (meanGlobal <= 0) continue;
    if (hour.hourEnd !== hourEnd) hour = { hourEnd, sineSum: sineSumOf(weather.timeS[hourEnd]! - SECONDS_PER_HOUR, house.place) };
    const sun = sunPosition(middleS, house.place);
    const shape = hour.sineSum < LOWEST_SINE ? 1 : (Math.max(0, Math.sin(sun.altitudeRad)) * SINES_AN_HOUR) / hour.sineSum;
    const light = { globalWPerM2: meanGlobal * shape, diffuseWPerM2: Math.min(meanGlobal, weather.diffuseShortwaveWPerM2[hourEnd] ?? meanGlobal) * shape };
    const inside = sunIntoHouse(houseSun, sun, light);
    ofSteps.globalShortwaveWPerM2[i] = light.globalWPerM2;
    ofSteps.sunW[i] = inside.totalW;
    ofSteps.sunOnWallW[i] = inside.onWallW;
  }
  return ofSteps;
}

/** The hour's mean light belongs to the hour that ends at its stamp; inside it follows the sun's height. */
interface SunnyHour {
  readonly hourEnd: number;
  readonly sineSum: number;
}

const SINES_AN_HOUR = 6;

function sineSumOf(startS: number, place: House['place']): number {
  let sum = 0;
  for (let k = 0; k < SINES_AN_HOUR; k += 1) sum += Math.max(0, Math.sin(sunPosition(startS + ((k + 0.5) * SECONDS_PER_HOUR) / SINES_AN_HOUR, place).altitudeRad));
  return sum;
}
