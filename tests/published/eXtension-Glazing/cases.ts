import { FILMS } from '../../../engine/data/films.js';
import { coverUValue, saving } from '../cover-u-value.js';
import type { PublishedTable } from '../published-table.js';

/** eXtension module on glazing (S. Sanford): heat-loss coefficients of heated houses, 1.0-1.2 and 0.6-0.7 Btu/(h ft2 °F), "35 % less". Assumed: wet inner film, as over moist soil; the night of cover-u-value.ts. */
export const source = 'eXtension-Glazing';

const single = (): number => coverUValue([FILMS.standard.wet]);
const double = (): number => coverUValue([FILMS.standard.wet, FILMS.standard.dry]);

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'heat-loss coefficient of any single and double glazing', unit: 'W/(m2 K)', tolerance: 0.55, toleranceReason: 'half of the printed range for single glazing', origin: 'published',
    rows: [{ name: 'single, 5.7-6.8', expected: 6.25, model: single }, { name: 'double, 3.4-4.0', expected: 3.7, tolerance: 0.3, model: double }],
  },
  { source, title: 'double against single', unit: 'share saved', tolerance: 0.05, toleranceReason: 'printed as 35 %; neighbours say up to 40', origin: 'published', rows: [{ name: 'saved', expected: 0.35, model: () => saving(single(), double()) }] },
];
