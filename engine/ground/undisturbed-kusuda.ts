import { assertInRange } from '../errors.js';
import { SECONDS_PER_DAY } from '../units.js';

export interface UndisturbedGround {
  readonly yearlyMeanK: number;
  readonly surfaceAmplitudeK: number;
  /** Day of the year with the lowest surface temperature. */
  readonly coldestDay: number;
  readonly diffusivityM2PerS: number;
}

const DAYS_PER_YEAR = 365;

/**
 * Temperature of undisturbed ground at a depth on a day of the year.
 * Units: m, day of year; result in K.
 * Valid: 0 to 20 m.
 * Outside: throws OutOfRangeError.
 * Source: Kusuda1965 (Kusuda and Achenbach), yearly harmonic in a semi-infinite solid.
 */
export function undisturbedGroundTempK(ground: UndisturbedGround, depthM: number, dayOfYear: number): number {
  assertInRange('depthM', depthM, { lowest: 0, highest: 20, unit: 'm' });
  const diffusivityM2PerDay = ground.diffusivityM2PerS * SECONDS_PER_DAY;
  const damping = depthM * Math.sqrt(Math.PI / (DAYS_PER_YEAR * diffusivityM2PerDay));
  const lagDays = (depthM / 2) * Math.sqrt(DAYS_PER_YEAR / (Math.PI * diffusivityM2PerDay));
  const phase = ((2 * Math.PI) / DAYS_PER_YEAR) * (dayOfYear - ground.coldestDay - lagDays);
  return ground.yearlyMeanK - ground.surfaceAmplitudeK * Math.exp(-damping) * Math.cos(phase);
}
