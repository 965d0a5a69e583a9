import { degreesToRadians, SECONDS_PER_HOUR } from '../units.js';
import { sunPosition } from './position.js';

/** Centre of the sun at apparent rise or set: refraction 34' and semi-diameter 16' (Meeus1998 ch. 15). */
const HORIZON_ALTITUDE_RAD = degreesToRadians(-0.833);
const CIVIL_DUSK_ALTITUDE_RAD = degreesToRadians(-6);

const SCAN_STEP_S = 600;
const BISECTIONS = 24;

interface Window {
  readonly fromS: number;
  readonly toS: number;
  readonly place: { latitude: number; longitude: number };
}

/** First instant in the window at which the sun crosses the altitude in the wanted direction; null when it does not. */
function crossing(window: Window, altitudeRad: number, direction: 'rising' | 'setting'): number | null {
  const sign = direction === 'rising' ? 1 : -1;
  const above = (timeS: number): number => sign * (sunPosition(timeS, window.place).altitudeRad - altitudeRad);
  for (let timeS = window.fromS; timeS < window.toS; timeS += SCAN_STEP_S) {
    let low = timeS;
    let high = Math.min(timeS + SCAN_STEP_S, window.toS);
    if (above(low) > 0 || above(high) <= 0) continue;
    for (let i = 0; i < BISECTIONS; i += 1) {
      const middle = (low + high) / 2;
      if (above(middle) > 0) high = middle;
      else low = middle;
    }
    return (low + high) / 2;
  }
  return null;
}

/**
 * First sunset after an instant, looking one day ahead.
 * Units: epoch seconds in and out, degrees.
 * Valid: any place; null where the sun does not set within a day (polar day or night).
 * Outside: throws OutOfRangeError for impossible coordinates.
 * Source: Meeus1998 ch. 15, altitude -0.833 degrees.
 */
export function nextSunsetS(afterS: number, place: { latitude: number; longitude: number }): number | null {
  return crossing({ fromS: afterS, toS: afterS + 24 * SECONDS_PER_HOUR, place }, HORIZON_ALTITUDE_RAD, 'setting');
}

/**
 * First sunrise after an instant, looking one day ahead.
 * Units: epoch seconds in and out, degrees.
 * Valid: any place; null where the sun does not rise within a day.
 * Outside: throws OutOfRangeError for impossible coordinates.
 * Source: Meeus1998 ch. 15, altitude -0.833 degrees.
 */
export function nextSunriseS(afterS: number, place: { latitude: number; longitude: number }): number | null {
  return crossing({ fromS: afterS, toS: afterS + 24 * SECONDS_PER_HOUR, place }, HORIZON_ALTITUDE_RAD, 'rising');
}

/**
 * First end of civil dusk after an instant: too dark to work outside without a lamp.
 * Units: epoch seconds in and out, degrees.
 * Valid: any place; null where the sun does not sink that low within a day.
 * Outside: throws OutOfRangeError for impossible coordinates.
 * Source: Meeus1998 ch. 15, altitude -6 degrees.
 */
export function nextCivilDuskS(afterS: number, place: { latitude: number; longitude: number }): number | null {
  return crossing({ fromS: afterS, toS: afterS + 24 * SECONDS_PER_HOUR, place }, CIVIL_DUSK_ALTITUDE_RAD, 'setting');
}
