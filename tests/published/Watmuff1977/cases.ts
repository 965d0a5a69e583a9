import { outsideConvectionWPerM2K } from '../../../engine/cover/convection.js';
import type { PublishedTable } from '../published-table.js';

/** Watmuff, Charters and Proctor 1977 (from memory): 2.8 + 3.0 v, convection only. */
export const source = 'Watmuff1977';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'convection at a plate in wind', unit: 'W/(m2 K)', tolerance: 1e-9, toleranceReason: 'exact arithmetic', origin: 'from memory',
    rows: ([[0, 2.8], [1, 5.8], [2, 8.8], [4, 14.8]] as const).map(([windMPerS, expected]) => ({ name: `${windMPerS} m/s`, expected, model: () => outsideConvectionWPerM2K(windMPerS) })),
  },
];
