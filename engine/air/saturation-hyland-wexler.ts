import { assertInRange } from '../errors.js';
import { ZERO_CELSIUS_K } from '../units.js';

// ASHRAE-F17 ch. 1 eq. 5 (ice) and eq. 6 (water), after Hyland and Wexler 1983.
const ICE = [-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019] as const;
const WATER = [-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673] as const;

/**
 * Saturation vapour pressure of the handbook: over ice up to 0 degrees C, over water above it.
 * Units: tempK in K; result in Pa.
 * Valid: 173.15 to 473.15 K.
 * Outside: throws OutOfRangeError.
 * Source: ASHRAE-F17 ch. 1 eq. 5 and 6. The yardstick in tests; the night model uses the faster Magnus form.
 */
export function saturationVapourPressureHylandWexlerPa(tempK: number): number {
  assertInRange('tempK', tempK, { lowest: 173.15, highest: 473.15, unit: 'K' });
  if (tempK <= ZERO_CELSIUS_K) {
    const [c1, c2, c3, c4, c5, c6, c7] = ICE;
    return Math.exp(c1 / tempK + c2 + c3 * tempK + c4 * tempK ** 2 + c5 * tempK ** 3 + c6 * tempK ** 4 + c7 * Math.log(tempK));
  }
  const [c8, c9, c10, c11, c12, c13] = WATER;
  return Math.exp(c8 / tempK + c9 + c10 * tempK + c11 * tempK ** 2 + c12 * tempK ** 3 + c13 * Math.log(tempK));
}
