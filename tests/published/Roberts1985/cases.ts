import { FILMS } from '../../../engine/data/films.js';
import { METRES_PER_FOOT, SECONDS_PER_HOUR, WATTS_PER_BTU_PER_HOUR } from '../../../engine/units.js';
import { coverUValue } from '../cover-u-value.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/**
 * Heat-loss coefficient by wind speed, as commonly reproduced from Roberts and others 1985 in geothermal handbooks (from memory), Btu/(h ft2 °F) at
 * 0 to 30 mph. Assumed: their wind blew at the cover; wet inner film; the night of cover-u-value.ts.
 */
export const source = 'Roberts1985';

const FEET_PER_MILE = 5280;
const WINDS_MPH = [0, 5, 10, 20, 25, 30] as const;
const mPerS = (mph: number): number => (mph * FEET_PER_MILE * METRES_PER_FOOT) / SECONDS_PER_HOUR;
const wattsPerM2K = (btu: number): number => (btu * WATTS_PER_BTU_PER_HOUR * 1.8) / METRES_PER_FOOT ** 2;

const rows = (name: string, printed: readonly number[], films: Parameters<typeof coverUValue>[0]): PublishedRow[] =>
  WINDS_MPH.map((mph, i) => ({ name: `${name}, ${mph} mph`, expected: wattsPerM2K(printed[i]!), model: () => coverUValue(films, { windMPerS: mPerS(mph) }) }));

const { standard, glass } = FILMS;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'heat-loss coefficient by wind speed', unit: 'W/(m2 K)', tolerance: 0.6, toleranceReason: 'recalled; the handbook gives no sky, inside or surface', origin: 'from memory',
    rows: [
      ...rows('glass', [0.765, 0.951, 1.04, 1.14, 1.16, 1.18], [glass.dry]),
      ...rows('single polyethylene', [0.81, 1, 1.09, 1.19, 1.21, 1.23], [standard.wet]),
      ...rows('double polyethylene', [0.535, 0.631, 0.675, 0.716, 0.728, 0.736], [standard.wet, standard.dry]),
    ],
  },
];
