import type { HouseGeometry } from '../cover/shape.js';
import type { House } from '../greenhouse/house.js';
import type { WeatherHours } from '../night/weather.js';
import { CLOUD_LONGWAVE_WEIGHT } from '../sky/downwelling-longwave.js';

/** What kind of reading can tell a parameter: the level of dawn lows, clear beside overcast nights, evenings beside dawns, a thermometer outside; null where none can. */
export type ToldBy = 'dawn-level' | 'clear-against-overcast' | 'evening-against-dawn' | 'outside-reading';

/** One thing about a house that no description fixes. Its value is `centre + spread x z`, or `centre x exp(spread x z)` for a factor, with z standard normal before any reading. */
export interface HouseParameter {
  readonly id: ParameterId;
  readonly meaning: string;
  readonly scale: 'factor' | 'offset';
  readonly centre: number;
  readonly spread: number;
  /** Null: readings cannot tell it, it keeps its prior and is not fitted. */
  readonly toldBy: ToldBy | null;
  readonly source: string;
}

export const PARAMETER_IDS = ['outside-offset', 'clear-calm-offset', 'envelope', 'soil-conductivity', 'open-sky', 'cloud-weight', 'sun-kept', 'soil-start', 'leakage', 'heat-capacity'] as const;
export type ParameterId = (typeof PARAMETER_IDS)[number];

/** Every learnable parameter with its prior, those that are fitted first. */
export const HOUSE_PARAMETERS: readonly HouseParameter[] = [
  { id: 'outside-offset', meaning: 'air at the house against the forecast cell, at all times (K)', scale: 'offset', centre: 0, spread: 1.2, toldBy: 'outside-reading', source: 'project estimate; station biases have sd 1.8 K over 969 mountain stations, of which 1.3 K are the 200 m that grid and station lie apart, and the service takes those out' },
  { id: 'clear-calm-offset', meaning: 'pool of cold air, in full on clear calm nights (K)', scale: 'offset', centre: -0.8, spread: 1.2, toldBy: 'outside-reading', source: 'project estimate; ECMWF-UserGuide: 1 to 2 K too warm in stable nights' },
  { id: 'envelope', meaning: 'effective area of the cover that loses heat', scale: 'factor', centre: 1, spread: 0.16, toldBy: 'dawn-level', source: 'prior of this project: stands for film exchange, film, soil exchange, soil moisture and leakage, together 0.66 K at the dawn low by their priors, where a tenth more cover is 0.4 K' },
  { id: 'soil-conductivity', meaning: 'conductivity of the soil under the house', scale: 'factor', centre: 1, spread: 0.4, toldBy: 'evening-against-dawn', source: 'prior of this project (0.5 to 2 W/mK about 1.2)' },
  { id: 'open-sky', meaning: 'open sky over the house', scale: 'factor', centre: 1, spread: 0.12, toldBy: 'clear-against-overcast', source: 'prior of this project (0.6 to 0.9 about 0.75)' },
  { id: 'cloud-weight', meaning: 'weight of cloud in longwave from above, against the engine\'s own', scale: 'factor', centre: 0.92, spread: 0.08, toldBy: 'clear-against-overcast', source: 'prior of this project (0.84 to 1 measured, 0.6 to 1 assumed)' },
  { id: 'sun-kept', meaning: 'sun that is kept in the house', scale: 'factor', centre: 1, spread: 0.2, toldBy: 'evening-against-dawn', source: 'prior of this project (0.3 to 0.6 of transmitted light)' },
  { id: 'soil-start', meaning: 'soil and deep ground against what the start assumes (K)', scale: 'offset', centre: 0, spread: 1.8, toldBy: 'evening-against-dawn', source: 'prior of this project (within 3 K, nine in ten)' },
  { id: 'leakage', meaning: 'air that leaks', scale: 'factor', centre: 1, spread: 0.6, toldBy: null, source: 'prior of this project (0.1 to 1.5 changes an hour); winds differ too little to tell it' },
  { id: 'heat-capacity', meaning: 'heat capacity of the soil', scale: 'factor', centre: 1, spread: 0.35, toldBy: null, source: 'prior of this project; never told apart from conductivity' },
];

/** The parameters that readings can tell, in the order of every vector of this folder. */
export const FITTED: readonly HouseParameter[] = HOUSE_PARAMETERS.filter(({ toldBy }) => toldBy !== null);

/** Whitened values of the fitted parameters: 0 is the prior, 1 its spread. */
export type Whitened = readonly number[];
export const PRIOR_POINT: Whitened = FITTED.map(() => 0);

/** Value of a fitted parameter. Units: those of the parameter. Valid: ids of FITTED. Outside: the centre for a parameter that is not fitted. Source: definition. */
export function parameterValue(z: Whitened, id: ParameterId): number {
  const { scale, centre, spread } = HOUSE_PARAMETERS.find((parameter) => parameter.id === id)!;
  const at = z[FITTED.findIndex((parameter) => parameter.id === id)] ?? 0;
  return scale === 'factor' ? centre * Math.exp(spread * at) : centre + spread * at;
}

/** A cover cannot be smaller than the floor that it spans. */
const LEAST_COVER_TO_FLOOR = 1.05;
const MOST_SKY = 1;

/**
 * The house as a point of the parameters makes it.
 * Units: whitened in, SI out.
 * Valid: any house of toHouse.
 * Outside: sky and cover stay within what is possible.
 * Source: table HOUSE_PARAMETERS.
 */
export function houseAt(house: House, z: Whitened): House {
  const { geometry } = house;
  const conductivity = parameterValue(z, 'soil-conductivity');
  const coverAreaM2 = Math.max(LEAST_COVER_TO_FLOOR * geometry.floorAreaM2, geometry.coverAreaM2 * parameterValue(z, 'envelope'));
  const changed: HouseGeometry = { ...geometry, coverAreaM2 };
  return {
    ...house,
    geometry: changed,
    skyViewFraction: Math.min(MOST_SKY, house.skyViewFraction * parameterValue(z, 'open-sky')),
    cleanShare: house.cleanShare * parameterValue(z, 'sun-kept'),
    columns: house.columns.map((column) => ({ ...column, soil: { ...column.soil, thermalConductivityWPerMK: column.soil.thermalConductivityWPerMK * conductivity } })),
  };
}

/** Weight of cloud in longwave at a point. Units: 0-1. Valid: any. Outside: never above 1. Source: table HOUSE_PARAMETERS. */
export const cloudWeightAt = (z: Whitened): number => Math.min(1, CLOUD_LONGWAVE_WEIGHT * parameterValue(z, 'cloud-weight'));

/** Wind at the house that stirs a pool of cold air away (prior of this project). */
const POOL_WIND_M_PER_S = 2.5;

/**
 * Weather at the house from the weather of the forecast cell.
 * Units: whitened in, K; share of the 10 m wind that reaches the house, 0-1.
 * Valid: any weather.
 * Outside: not applicable.
 * Source: table HOUSE_PARAMETERS; the pool forms in the dark, with the open share of the sky, and goes with exp(-wind/2.5 m/s) of the wind where the house stands.
 */
export function weatherAt(weather: WeatherHours, z: Whitened, windShare: number): WeatherHours {
  const [always, pool] = [parameterValue(z, 'outside-offset'), parameterValue(z, 'clear-calm-offset')];
  return { ...weather, airTempK: weather.airTempK.map((tempK, i) => tempK + always + pool * poolShare(weather, i, windShare)) };
}

const poolShare = (weather: WeatherHours, i: number, windShare: number): number => (weather.globalShortwaveWPerM2[i]! > 0 ? 0 : (1 - weather.cloudFraction[i]!) * Math.exp((-windShare * weather.windSpeed10mMPerS[i]!) / POOL_WIND_M_PER_S));
