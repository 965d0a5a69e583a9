import { FILMS, type FilmRow } from '../../../engine/data/films.js';
import { coverUValue } from '../cover-u-value.js';
import type { PublishedTable } from '../published-table.js';

/**
 * J. W. Bartok's columns: heat-loss coefficients for the design of small houses, 1.25, 0.8 and 0.7 Btu/(h ft2 °F); and data sheets of twin-wall
 * panels of 6 to 10 mm as he and retailers give them. Assumed: dry films (he speaks of little-heated houses), the night of cover-u-value.ts.
 */
export const source = 'Bartok-GreenhouseManagement';

const { standard } = FILMS;
const twinWall: FilmRow = FILMS['twin-wall'];

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'heat-loss coefficient', unit: 'W/(m2 K)', tolerance: 0.4, toleranceReason: 'printed to 0.05 Btu, 0.3 W/(m2 K); no conditions given', origin: 'published',
    rows: [{ name: 'single film, little-heated houses', expected: 7.1, model: () => coverUValue([standard.dry]) }, { name: 'double film', expected: 4.5, model: () => coverUValue([standard.dry, standard.dry]) }],
  },
  {
    source, title: 'twin-wall polycarbonate of 6 to 10 mm', unit: 'W/(m2 K)', tolerance: 0.6, toleranceReason: 'data sheets read 3.0 (10 mm) to 3.7 (6 mm), he 4.0; the engine has one panel', origin: 'published',
    rows: [{ name: 'panel', expected: 3.5, model: () => coverUValue([twinWall.dry, twinWall.dry], { gapWPerM2K: twinWall.webWPerM2K! }) }],
  },
];
