import { diffuseFractionErbs1982 } from '../../../engine/sun/diffuse-fraction-erbs.js';
import type { PublishedTable } from '../published-table.js';

/** Erbs, Klein and Duffie 1982 as evaluated by pvlib (6382338a); global and diffuse light in W/m2, clearness printed to four digits. */
export const source = 'Erbs1982';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'eq. 1: diffuse light', unit: 'W/m2', tolerance: 1e-3, relative: true, toleranceReason: 'clearness index printed to four digits', origin: 'library run',
    rows: ([[0.1424, 100, 98.72], [0.4273, 300, 239.09], [0.6409, 450, 158.4], [0.6116, 700, 289.86]] as const).map(([clearness, globalWPerM2, expected]) => ({
      name: `clearness ${clearness}, global ${globalWPerM2}`,
      expected,
      model: () => diffuseFractionErbs1982(clearness) * globalWPerM2,
    })),
  },
];
