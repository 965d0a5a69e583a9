import { CURTAINS } from '../../../engine/data/curtains.js';
import { FILMS } from '../../../engine/data/films.js';
import { coverUValue, curtainGapWPerM2K, saving } from '../cover-u-value.js';
import type { PublishedTable } from '../published-table.js';

/** Geoola and others: loss saved by a thermal screen under film, 30 % for a plain one (2009), 50 to 60 % for a sealed aluminised one (2011). Assumed: single film, wet inside; the leak of the engine's curtains; the night of cover-u-value.ts. */
export const source = 'Geoola2011';

const film = FILMS.standard.wet;
const screened = (screen: keyof typeof CURTAINS): number => saving(coverUValue([film]), coverUValue([CURTAINS[screen].dry, film], { gapWPerM2K: curtainGapWPerM2K(CURTAINS[screen]) }));

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'thermal screen under film', unit: 'share saved', tolerance: 0.12, toleranceReason: 'screens are not described closely enough to copy; the second is printed as 0.5 to 0.6', origin: 'published',
    rows: [{ name: 'plain film screen', expected: 0.3, model: () => screened('film') }, { name: 'aluminised, sealed', expected: 0.55, model: () => screened('foil') }],
  },
];
