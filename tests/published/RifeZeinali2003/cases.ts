import { hardeningAfter } from '../../../engine/crops/hardening.js';
import { hoursK } from '../../engine/crops/histories.js';
import type { PublishedTable } from '../published-table.js';

/** Rife and Zeinali 2003 on winter oilseed rape at 5 °C, known from the abstract: the most hardiness after 6 to 9 days. */
export const source = 'RifeZeinali2003';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'hardening at 5 °C', unit: 'share of the gain', tolerance: 0.005, toleranceReason: 'rounded to two digits', origin: 'worked example of this project',
    rows: ([[6, 0.94], [9, 0.99]] as const).map(([count, expected]) => ({ name: `day ${count}`, expected, model: () => hardeningAfter({ plantTempK: hoursK([24 * count, 5]), set: 'fast', startFraction: 0 }).hardeningFraction })),
  },
];
