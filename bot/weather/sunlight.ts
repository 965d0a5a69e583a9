import { getPosition } from 'suncalc';
import { SECONDS_PER_DAY, SECONDS_PER_HOUR, degreesToRadians } from '../../engine/index.js';

/**
 * Sunlight where a weather answer has none, and in the invented demo weather.
 * All are means of the hour that ends at hourEndS, on a horizontal plane, W/m².
 */

export interface SunPlace {
  readonly latitude: number;
  readonly longitude: number;
}

const SAMPLES_AN_HOUR = 6;
// Total solar irradiance (Kopp and Lean 2011); 3.3 % more and less over the year with the distance of the sun.
const SOLAR_CONSTANT_W_PER_M2 = 1361;
const DISTANCE_SWING = 0.033;
const YEAR_DAYS = 365.25;
// The sun is nearest about 3 January.
const PERIHELION_DAY = 3;

/** Sines of the sun's height in the middles of six equal parts of the hour, zero below the horizon. */
function sunHeightSines(place: SunPlace, hourEndS: number): readonly number[] {
  return Array.from({ length: SAMPLES_AN_HOUR }, (_, k) => {
    const timeS = hourEndS - SECONDS_PER_HOUR + ((k + 0.5) * SECONDS_PER_HOUR) / SAMPLES_AN_HOUR;
    return Math.max(0, Math.sin(degreesToRadians(getPosition(new Date(timeS * 1000), place.latitude, place.longitude).altitude)));
  });
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Haurwitz 1945: sunlight under a clear sky from the sun's height alone. Coefficients from memory. */
export function clearSkyWPerM2(place: SunPlace, hourEndS: number): number {
  return mean(sunHeightSines(place, hourEndS).map((sine) => (sine > 0 ? 1098 * sine * Math.exp(-0.059 / sine) : 0)));
}

/** Kasten and Czeplak 1980: what clouds leave of it. Coefficients from memory. */
export function throughClouds(cloudFraction: number): number {
  return 1 - 0.75 * cloudFraction ** 3.4;
}

/** Erbs, Klein and Duffie 1982: the diffuse part of global sunlight from how much of the sun's light comes through. */
export function diffuseWPerM2(place: SunPlace, hourEndS: number, globalWPerM2: number): number {
  const aboveAir = outsideTheAirWPerM2(place, hourEndS);
  if (globalWPerM2 <= 0 || aboveAir <= 0) return Math.max(0, globalWPerM2);
  const k = globalWPerM2 / aboveAir;
  if (k <= 0.22) return globalWPerM2 * (1 - 0.09 * k);
  if (k <= 0.8) return globalWPerM2 * (0.9511 - 0.1604 * k + 4.388 * k ** 2 - 16.638 * k ** 3 + 12.336 * k ** 4);
  return globalWPerM2 * 0.165;
}

function outsideTheAirWPerM2(place: SunPlace, hourEndS: number): number {
  const yearStartS = Date.UTC(new Date(hourEndS * 1000).getUTCFullYear(), 0, 1) / 1000;
  const turn = (2 * Math.PI * ((hourEndS - yearStartS) / SECONDS_PER_DAY - PERIHELION_DAY)) / YEAR_DAYS;
  return SOLAR_CONSTANT_W_PER_M2 * (1 + DISTANCE_SWING * Math.cos(turn)) * mean(sunHeightSines(place, hourEndS));
}
