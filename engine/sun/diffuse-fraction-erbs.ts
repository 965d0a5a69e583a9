import { assertInRange } from '../errors.js';

/**
 * Diffuse share of global horizontal sunlight from the clearness index.
 * Units: clearnessIndex 0-1 (global over extraterrestrial horizontal); result 0-1.
 * Valid: 0 to 1.2 (cloud-edge bursts above 1 are measured).
 * Outside: throws OutOfRangeError.
 * Source: Erbs1982 eq. 1.
 */
export function diffuseFractionErbs1982(clearnessIndex: number): number {
  assertInRange('clearnessIndex', clearnessIndex, { lowest: 0, highest: 1.2, unit: '' });
  const k = clearnessIndex;
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k <= 0.8) return 0.9511 - 0.1604 * k + 4.388 * k ** 2 - 16.638 * k ** 3 + 12.336 * k ** 4;
  return 0.165;
}
