import { FILMS } from '../../../engine/data/films.js';
import { coverUValue } from '../cover-u-value.js';
import type { PublishedTable } from '../published-table.js';

/** ASHRAE Handbook HVAC Applications, environmental control for animals and plants, with ASAE EP406 and NRAES-33 (all from memory): heat-loss coefficients. Assumed: wet inner film, the night of cover-u-value.ts. */
export const source = 'ASHRAE-HVACApps';

const { standard, glass } = FILMS;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'heat-loss coefficient', unit: 'W/(m2 K)', tolerance: 0.85, toleranceReason: 'recalled; design wind and sky are not given, and the tables disagree by 0.5', origin: 'from memory',
    rows: [
      { name: 'glass, single', expected: 6.4, model: () => coverUValue([glass.dry]) },
      { name: 'polyethylene, single', expected: 6.8, model: () => coverUValue([standard.wet]) },
      { name: 'polyethylene, double, inflated', expected: 4, model: () => coverUValue([standard.wet, standard.dry]) },
      { name: 'double, inner film infrared-absorbing', expected: 3.1, model: () => coverUValue([FILMS['ir-barrier'].wet, standard.dry]) },
      { name: 'double film over glass', expected: 3.4, model: () => coverUValue([glass.wet, standard.dry]) },
    ],
  },
];
