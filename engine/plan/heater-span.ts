import type { House } from '../greenhouse/house.js';
import type { Span } from './action.js';

const AFTER_SUNRISE_S = 3600;
/** A thermostat may be set while it is still warm: it burns only when it gets cold, and then in time. */
const BEFORE_SUNSET_S = 2 * 3600;

/**
 * When the heater runs: the whole night by its thermostat or at full power; what burns down is lit at bedtime, as late as somebody is awake.
 * Units: epoch seconds.
 * Valid: a house with a heater.
 * Outside: throws without one.
 * Source: decision rule of this project.
 */
export function heaterSpan(house: House, times: { nowS: number; sunsetS: number; sunriseS: number; bedtimeS: number }): Span {
  const endS = times.sunriseS + AFTER_SUNRISE_S;
  const { burnS, thermostat } = house.heater!;
  if (burnS === null) return { fromS: Math.max(times.nowS, thermostat ? times.sunsetS - BEFORE_SUNSET_S : times.sunsetS), untilS: endS };
  const fromS = Math.max(times.nowS, times.sunsetS, Math.min(times.bedtimeS, endS - burnS));
  return { fromS, untilS: Math.min(endS, fromS + burnS) };
}
