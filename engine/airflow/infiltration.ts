import { assertInRange } from '../errors.js';
import { SECONDS_PER_HOUR } from '../units.js';

/** Uncontrolled leakage: air changes an hour in still air, and more for each m/s of wind at the cover. */
export interface Leakage {
  readonly stillAirChangesPerHour: number;
  readonly perWindAirChangesPerHour: number;
}

/**
 * Leakage airflow.
 * Units: volumeM3 in m3, wind at the cover in m/s; result in m3/s.
 * Valid: wind 0 to 40 m/s.
 * Outside: throws OutOfRangeError.
 * Source: linear form as in EnergyPlusEngRef (infiltration design flow rate); coefficients come with the house.
 */
export function leakageM3PerS(leakage: Leakage, volumeM3: number, windSpeedMPerS: number): number {
  assertInRange('windSpeedMPerS', windSpeedMPerS, { lowest: 0, highest: 40, unit: 'm/s' });
  return ((leakage.stillAirChangesPerHour + leakage.perWindAirChangesPerHour * windSpeedMPerS) * volumeM3) / SECONDS_PER_HOUR;
}
