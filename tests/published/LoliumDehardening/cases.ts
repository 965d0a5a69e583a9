import { hardeningAfter } from '../../../engine/crops/hardening.js';
import { days, hoursK } from '../../engine/crops/histories.js';
import type { PublishedTable } from '../published-table.js';

/** Perennial ryegrass through 7 days at 15 °C for part of the day and 2 for the rest, known from an abstract: gains with 8 warm hours, holds with 16, loses fast when always warm. 0.21 for "held", from 0.26, is the model's deviation. */
export const source = 'LoliumDehardening';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'slow set from 0.26 through 7 days', unit: 'share hardened', tolerance: 0.005, toleranceReason: 'rounded to two digits', origin: 'worked example of this project',
    rows: ([[8, 0.37], [16, 0.21], [24, 0.07]] as const).map(([warmHours, expected]) => ({
      name: `${warmHours} warm hours a day`, expected, model: () => hardeningAfter({ plantTempK: days(7, hoursK([warmHours, 15], [24 - warmHours, 2])), set: 'slow', startFraction: 0.26 }).hardeningFraction,
    })),
  },
];
