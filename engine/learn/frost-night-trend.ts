import { assertInRange } from '../errors.js';

/** The trend is drawn from here on: by then the fast fall after sunset is over. */
const STARTS_HOURS_AFTER_SUNSET = 2;

/**
 * Temperature through a radiation-frost night: the fall goes with the square root of time, as ground cools that loses heat evenly.
 * Units: hours after sunset; K.
 * Valid: from two hours after sunset to the end of the night.
 * Outside: throws OutOfRangeError.
 * Source: Snyder2005 ch. 5, trend of a frost night.
 */
export function frostNightTrendK(night: { startTempK: number; lowK: number; nightHours: number }, hoursAfterSunset: number): number {
  assertInRange('nightHours', night.nightHours, { lowest: STARTS_HOURS_AFTER_SUNSET + 1, highest: 24, unit: 'h' });
  assertInRange('hoursAfterSunset', hoursAfterSunset, { lowest: STARTS_HOURS_AFTER_SUNSET, highest: night.nightHours, unit: 'h' });
  const share = (hoursAfterSunset - STARTS_HOURS_AFTER_SUNSET) / (night.nightHours - STARTS_HOURS_AFTER_SUNSET);
  return night.startTempK + (night.lowK - night.startTempK) * Math.sqrt(share);
}
