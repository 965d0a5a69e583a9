import { cropById } from '../../../engine/crops/catalogue.js';
import { damageCurve, STEEPEST_SLOPE_K } from '../../../engine/crops/damage.js';
import { thresholdsAt } from '../../../engine/crops/thresholds.js';
import type { PublishedTable } from '../published-table.js';

/** WSU EB0913, EB0914, EB1128: 10 and 90 % kill of buds after 30 minutes, printed in whole °F; slope = (T10 - T90) / (2 ln 9) from those. Where the slope is below the engine's floor the floor is expected. */
export const source = 'WSU-EB0913';

const SLOPES_K = [
  ['apple_silver_tip', 1.64], ['apple_green_tip', 1.01], ['apple_half_inch_green', 1.01], ['apple_tight_cluster', 0.76],
  ['apple_first_pink', 0.51], ['apple_full_pink', 0.38], ['peach_first_swelling', 2.15], ['peach_calyx_green', 2.02],
  ['peach_calyx_red', 1.77], ['peach_first_pink', 1.26], ['peach_first_bloom', 0.63], ['peach_full_bloom', 0.38],
  ['cherry_first_swelling', 1.52], ['cherry_side_green', 1.64], ['cherry_green_tip', 1.39], ['cherry_tight_cluster', 1.14],
  ['cherry_open_cluster', 0.76], ['cherry_first_white', 0.38], ['cherry_post_bloom', 0.38],
] as const;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'tables of buds: slope of the damage curve', unit: 'K', tolerance: 0.03, toleranceReason: 'the table in °C is rounded to 0.1', origin: 'published',
    rows: SLOPES_K.map(([id, slopeK]) => ({ name: id, expected: Math.max(STEEPEST_SLOPE_K, slopeK), model: () => damageCurve(thresholdsAt({ row: cropById(id)!, effectiveFraction: 0 })).slopeK })),
  },
];
