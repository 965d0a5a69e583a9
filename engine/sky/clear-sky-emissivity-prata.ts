import { assertInRange } from '../errors.js';

const PASCAL_PER_HECTOPASCAL = 100;

/**
 * Broadband emissivity of the cloudless sky, seen from screen height.
 * Units: airTempK in K, vapourPressurePa in Pa; result 0-1.
 * Valid: 213.15 to 323.15 K, 0 to 6000 Pa.
 * Outside: throws OutOfRangeError.
 * Source: Prata1996 eq. 10 and 12 (from memory): w = 46.5 e/T with e in hPa, 1 - (1 + w) exp(-sqrt(1.2 + 3 w)).
 * Accuracy: night RMSE 23 W/m2 against measured longwave when the cloud is known from daylight.
 */
export function clearSkyEmissivityPrata1996(airTempK: number, vapourPressurePa: number): number {
  assertInRange('airTempK', airTempK, { lowest: 213.15, highest: 323.15, unit: 'K' });
  assertInRange('vapourPressurePa', vapourPressurePa, { lowest: 0, highest: 6000, unit: 'Pa' });
  const precipitableWaterCm = (46.5 * (vapourPressurePa / PASCAL_PER_HECTOPASCAL)) / airTempK;
  return 1 - (1 + precipitableWaterCm) * Math.exp(-Math.sqrt(1.2 + 3 * precipitableWaterCm));
}
