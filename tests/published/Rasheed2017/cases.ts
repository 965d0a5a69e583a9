import { FILMS } from '../../../engine/data/films.js';
import { coverUValue, saving } from '../cover-u-value.js';
import type { PublishedTable } from '../published-table.js';

/** Rasheed, Lee and Lee 2017, Span. J. Agric. Res.: loss through double against single polyethylene, from a house model calibrated on measurements and a hot box. Assumed: the night of cover-u-value.ts, films dry or inner film wet. */
export const source = 'Rasheed2017';

const { standard } = FILMS;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'double against single polyethylene', unit: 'share saved', tolerance: 0.05, toleranceReason: 'another house and climate', origin: 'published',
    rows: [
      { name: 'dry', expected: 0.34, model: () => saving(coverUValue([standard.dry]), coverUValue([standard.dry, standard.dry])) },
      { name: 'inner film wet', expected: 0.34, model: () => saving(coverUValue([standard.wet]), coverUValue([standard.wet, standard.dry])) },
    ],
  },
];
