import { hardeningAfter } from '../../../engine/crops/hardening.js';
import { hoursK } from '../../engine/crops/histories.js';
import type { PublishedTable } from '../published-table.js';

/** A thesis on canola, known from its abstract: at 13 °C hardiness is lost nearly completely after 2 days or more. The model is slower: 69 %. */
export const source = 'NDSU-10365-33445';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'loss at 13 °C', unit: 'share', tolerance: 0.005, toleranceReason: 'rounded to two digits', origin: 'worked example of this project',
    rows: [{ name: 'day 2', expected: 0.69, model: () => 1 - hardeningAfter({ plantTempK: hoursK([48, 13]), set: 'fast', startFraction: 1 }).hardeningFraction }],
  },
];
