import { edgeLossWPerMK } from '../../../engine/cover/edge-loss.js';
import type { PublishedTable } from '../published-table.js';

/** ASHRAE 90.1 table A6.3, unheated slabs (from memory): F-factors 0.73, 0.58, 0.54, 0.52, 0.48 Btu/(h ft °F). Foam of 25 mm stands for R-5, 50 mm for R-10. The engine begins at 1.2, not 1.26: a house without a slab loses part of this through its beds. */
export const source = 'ASHRAE-90-1';

const foam = (thicknessM: number, depthM: number): number => edgeLossWPerMK({ thicknessM, depthM });

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'table A6.3: slab edge', unit: 'W/(m K)', tolerance: 0.08, toleranceReason: 'the engine takes straight lines between bare, 0.6 m and 1.2 m of foam', origin: 'from memory',
    rows: [
      { name: 'bare', expected: 1.26, model: () => edgeLossWPerMK(null) },
      { name: 'R-5, 24 in', expected: 1, model: () => foam(0.025, 0.6) },
      { name: 'R-10, 24 in', expected: 0.93, model: () => foam(0.05, 0.6) },
      { name: 'R-15, 24 in', expected: 0.9, model: () => foam(0.075, 0.6) },
      { name: 'R-10, 48 in', expected: 0.83, model: () => foam(0.05, 1.2) },
    ],
  },
];
