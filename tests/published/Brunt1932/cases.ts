import { CLEAR_SKY_FORMULAS } from '../longwave/clear-sky-formulas.js';
import { CLEAR_SKY_TOLERANCE, clearSkyRows } from '../longwave/clear-sky-rows.js';
import type { PublishedTable } from '../published-table.js';

/** Brunt 1932, with the usual pair of coefficients (from memory; they depend on the site), evaluated apart from this code. A rival of the engine's sky. */
export const source = 'Brunt1932';

export const tables: readonly PublishedTable[] = [
  { source, title: 'clear sky: downwelling longwave', ...CLEAR_SKY_TOLERANCE, rows: clearSkyRows(CLEAR_SKY_FORMULAS['Brunt(0.52,0.065)'], [313.07, 259.48, 231.04, 206.3, 184.73, 165.88, 134.73]) },
];
