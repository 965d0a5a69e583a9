import { celsiusToKelvin, SECONDS_PER_HOUR } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';
import { once } from '../rc-network.js';
import { runSoil } from './soil-run.js';

/** Brunt's and Reuter's cooling of bare ground by a steady net loss, 2 R sqrt(t) / (sqrt(pi) admittance), evaluated apart from this code: 70 W/m2 through 12 h. All loss comes from the soil: an upper bound for a night. */
export const source = 'Carslaw1959';

const START_K = celsiusToKelvin(10);
const surfaceDropK = (conductivityWPerMK: number, heatCapacityJPerM3K: number): (() => number) =>
  once(() => START_K - runSoil({ conductivityWPerMK, heatCapacityJPerM3K, startK: START_K, surface: { kind: 'flux', outOfSoilWPerM2: 70 } }, 12 * SECONDS_PER_HOUR).atDepthK(0));

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'Brunt and Reuter: ground under a net loss of 70 W/m2, 12 h', unit: 'K', tolerance: 0.05, relative: true, toleranceReason: 'acceptance of the soil grid at steps of 600 s: 5 %', origin: 'closed form',
    rows: [
      { name: 'dry sand', expected: 29.6, model: surfaceDropK(0.24, 1.28e6) },
      { name: 'clay, water 0.2', expected: 11.5, model: surfaceDropK(0.9, 2.27e6) },
      { name: 'clay, water 0.4', expected: 7.9, model: surfaceDropK(1.4, 3.1e6) },
    ],
  },
];
