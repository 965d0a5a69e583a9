import { hardeningAfter } from '../../../engine/crops/hardening.js';
import { days, hoursK } from '../../engine/crops/histories.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Growth-chamber results on spinach, as known from an abstract: at 5/2 °C 2 to 4 K of the whole gain after 1 day, most of it in 3, flat after 14; at
 * 20/17 °C 3 to 5 K lost in 1 day, none after day 3. Day and night are taken as 12 h each. The shares are the model's, inside what the authors report.
 */
export const source = 'SpinachAcclimation-JASHS';

const after = (count: number, dayC: number, nightC: number, startFraction: number): number => hardeningAfter({ plantTempK: days(count, hoursK([12, dayC], [12, nightC])), set: 'fast', startFraction }).hardeningFraction;
const COMMON = { source, unit: 'share of the gain', tolerance: 0.005, toleranceReason: 'rounded to two digits; cultivars differ by far more', origin: 'worked example of this project' } as const;

export const tables: readonly PublishedTable[] = [
  { ...COMMON, title: 'hardening at 5/2 °C', rows: ([[1, 0.46], [3, 0.84], [14, 1]] as const).map(([count, expected]) => ({ name: `day ${count}`, expected, model: () => after(count, 5, 2, 0) })) },
  { ...COMMON, title: 'loss at 20/17 °C after hardening', rows: ([[1, 0.75], [3, 0.98]] as const).map(([count, expected]) => ({ name: `day ${count}`, expected, model: () => 1 - after(count, 20, 17, 1) })) },
];
