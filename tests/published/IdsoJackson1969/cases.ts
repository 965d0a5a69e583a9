import { CLEAR_SKY_FORMULAS } from '../longwave/clear-sky-formulas.js';
import { CLEAR_SKY_TOLERANCE, clearSkyRows } from '../longwave/clear-sky-rows.js';
import type { PublishedTable } from '../published-table.js';

/** Idso and Jackson 1969 (from memory), evaluated apart from this code. A rival of the engine's sky; it knows no humidity and rises again below freezing. */
export const source = 'IdsoJackson1969';

export const tables: readonly PublishedTable[] = [
  { source, title: 'clear sky: downwelling longwave', ...CLEAR_SKY_TOLERANCE, rows: clearSkyRows(CLEAR_SKY_FORMULAS['Idso-Jackson69'], [339.04, 276.67, 252.63, 233.27, 218.04, 206.09, 188.12]) },
];
