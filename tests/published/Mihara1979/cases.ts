import { CURTAINS } from '../../../engine/data/curtains.js';
import { FILMS } from '../../../engine/data/films.js';
import { coverUValue, curtainGapWPerM2K, saving } from '../cover-u-value.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Mihara and Hayashi 1979, J. Agric. Met. 35: heat-loss coefficients measured by night in a house of PVC and one of glass, with and without
 * an inner curtain, as lines in the wind speed w (m/s). Assumed: PVC film passes as little longwave as the engine's infrared film; their
 * wind blew at the cover; dry films; the night of cover-u-value.ts.
 */
export const source = 'Mihara1979';

const pvc = FILMS['ir-barrier'].dry;
const bare = (windMPerS: number): number => coverUValue([pvc], { windMPerS });
const curtained = (windMPerS: number): number => coverUValue([CURTAINS.film.dry, pvc], { windMPerS, gapWPerM2K: curtainGapWPerM2K(CURTAINS.film) });
const MEASURED_REASON = 'one house of each kind on unknown nights; their line rises by 0.54 for each m/s, the engine flattens as the outer film nears the air';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'measured house of PVC: 4.87 + 0.54 w', unit: 'W/(m2 K)', tolerance: 1, toleranceReason: MEASURED_REASON, origin: 'published',
    rows: ([[0, 4.87], [2, 5.95], [4, 7.03]] as const).map(([wind, expected]) => ({ name: `${wind} m/s`, expected, model: () => bare(wind) })),
  },
  {
    source, title: 'the same with an inner curtain of polyethylene: 3.15 + 0.17 w', unit: 'W/(m2 K)', tolerance: 0.5, toleranceReason: MEASURED_REASON, origin: 'published',
    rows: ([[0, 3.15], [2, 3.49], [4, 3.83]] as const).map(([wind, expected]) => ({ name: `${wind} m/s`, expected, model: () => curtained(wind) })),
  },
  {
    source, title: 'measured house of glass: 4.41 + 0.40 w', unit: 'W/(m2 K)', tolerance: 1, toleranceReason: MEASURED_REASON, origin: 'published',
    rows: ([[0, 4.41], [2, 5.21], [4, 6.01]] as const).map(([wind, expected]) => ({ name: `${wind} m/s`, expected, model: () => coverUValue([FILMS.glass.dry], { windMPerS: wind }) })),
  },
  {
    source, title: 'saved by the curtain at 1 m/s', unit: 'share', tolerance: 0.12, toleranceReason: 'lines of two houses; for glass with curtains they report 0.33 to 0.37', origin: 'published',
    rows: [{ name: 'PVC house', expected: 0.386, model: () => saving(bare(1), curtained(1)) }],
  },
];
