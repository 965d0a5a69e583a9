import { CLEAR_SKY_FORMULAS } from '../longwave/clear-sky-formulas.js';
import { CLEAR_SKY_TOLERANCE, clearSkyRows } from '../longwave/clear-sky-rows.js';
import type { PublishedTable } from '../published-table.js';

/** Brutsaert 1975 (from memory), evaluated apart from this code. A rival of the engine's sky, low in cold dry air. */
export const source = 'Brutsaert1975';

export const tables: readonly PublishedTable[] = [
  { source, title: 'clear sky: downwelling longwave', ...CLEAR_SKY_TOLERANCE, rows: clearSkyRows(CLEAR_SKY_FORMULAS.Brutsaert75, [329.95, 274.89, 243.94, 215.74, 190.13, 166.93, 127.12]) },
];
