import { describe, expect, it } from 'vitest';
import { cropById } from '../../../engine/crops/catalogue.js';
import { damageCurve, STEEPEST_SLOPE_K } from '../../../engine/crops/damage.js';
import { thresholdsAt } from '../../../engine/crops/thresholds.js';

/**
 * WSU-EB0913: 10 and 90 % kill of buds after 30 minutes, printed in whole °F; slope = (T10 - T90) / (2 ln 9) from those. Tolerance
 * 0.03 K: the table in °C is rounded to 0.1. Where the slope is below the floor the floor stands.
 */
export const source = 'WSU-EB0913';

describe('WSU-EB0913 tables: slope of the bud curve', () => {
  it.each([
    ['apple_silver_tip', 1.64], ['apple_green_tip', 1.01], ['apple_half_inch_green', 1.01], ['apple_tight_cluster', 0.76],
    ['apple_first_pink', 0.51], ['apple_full_pink', 0.38], ['peach_first_swelling', 2.15], ['peach_calyx_green', 2.02],
    ['peach_calyx_red', 1.77], ['peach_first_pink', 1.26], ['peach_first_bloom', 0.63], ['peach_full_bloom', 0.38],
    ['cherry_first_swelling', 1.52], ['cherry_side_green', 1.64], ['cherry_green_tip', 1.39], ['cherry_tight_cluster', 1.14],
    ['cherry_open_cluster', 0.76], ['cherry_first_white', 0.38], ['cherry_post_bloom', 0.38],
  ])('%s: %f K', (id, slopeK) => {
    const curve = damageCurve(thresholdsAt({ row: cropById(id)!, effectiveFraction: 0 }));
    expect(Math.abs(curve.slopeK - Math.max(STEEPEST_SLOPE_K, slopeK))).toBeLessThan(0.03);
  });
});
