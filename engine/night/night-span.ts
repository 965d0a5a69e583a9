import { SECONDS_PER_DAY, SECONDS_PER_HOUR } from '../units.js';
import { nextSunriseS, nextSunsetS } from '../sun/rise-and-set.js';

/** The night that a decision is about. */
export interface NightSpan {
  readonly sunsetS: number;
  readonly sunriseS: number;
  /** True when the night is running already. */
  readonly isRunning: boolean;
  /** False in polar day or night, where a night is taken from 16 h to 8 h by the sun's own clock. */
  readonly hasSunset: boolean;
}

const POLAR_NIGHT_FROM_H = 16;
const POLAR_NIGHT_HOURS = 16;

/**
 * The night that begins next, or the one that is running.
 * Units: epoch seconds, degrees.
 * Valid: any place and instant of this century.
 * Outside: throws OutOfRangeError for impossible coordinates.
 * Source: Meeus1998 ch. 15 for rise and set; polar rule of this project.
 */
export function nightSpan(nowS: number, place: { latitude: number; longitude: number }): NightSpan {
  const sunset = nextSunsetS(nowS, place);
  const sunrise = nextSunriseS(nowS, place);
  if (sunset === null && sunrise === null) return polarNight(nowS, place.longitude);
  if (sunrise !== null && (sunset === null || sunrise < sunset)) {
    return { sunsetS: nextSunsetS(sunrise - SECONDS_PER_DAY, place) ?? nowS, sunriseS: sunrise, isRunning: true, hasSunset: true };
  }
  return { sunsetS: sunset!, sunriseS: nextSunriseS(sunset!, place) ?? sunset! + POLAR_NIGHT_HOURS * SECONDS_PER_HOUR, isRunning: false, hasSunset: true };
}

/**
 * The night that a time belongs to: the one that is running, else the one that ended last.
 * Units: epoch seconds, degrees.
 * Valid: any place and instant of this century.
 * Outside: throws OutOfRangeError for impossible coordinates.
 * Source: as nightSpan.
 */
export function nightBehind(timeS: number, place: { latitude: number; longitude: number }): NightSpan {
  const next = nightSpan(timeS, place);
  return next.isRunning ? next : nightSpan(next.sunsetS - SECONDS_PER_DAY + SECONDS_PER_HOUR, place);
}

function polarNight(nowS: number, longitude: number): NightSpan {
  const shiftS = (longitude / 15) * SECONDS_PER_HOUR;
  const startOfDay = Math.floor((nowS + shiftS) / SECONDS_PER_DAY) * SECONDS_PER_DAY - shiftS;
  const sunsetToday = startOfDay + POLAR_NIGHT_FROM_H * SECONDS_PER_HOUR;
  const running = nowS < startOfDay + (POLAR_NIGHT_FROM_H + POLAR_NIGHT_HOURS - 24) * SECONDS_PER_HOUR;
  const sunsetS = running ? sunsetToday - SECONDS_PER_DAY : sunsetToday;
  return { sunsetS, sunriseS: sunsetS + POLAR_NIGHT_HOURS * SECONDS_PER_HOUR, isRunning: nowS >= sunsetS, hasSunset: false };
}
