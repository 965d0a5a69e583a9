import { vapourPressureFromDewPointOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { CLEAR_SKY_FORMULAS } from '../longwave/clear-sky-formulas.js';
import { CLEAR_SKY_TOLERANCE, clearSkyRows } from '../longwave/clear-sky-rows.js';
import type { PublishedTable } from '../published-table.js';

/** Clark and Allen 1978, the clear sky of EnergyPlus; rows evaluated apart from this code, and the worked example of its engineering reference. High in cold air: a rival of the engine's sky. */
export const source = 'ClarkAllen1978';

const EXAMPLE_AIR_K = 293;
const exampleEmissivity = (): number => CLEAR_SKY_FORMULAS['Clark-Allen78']({ airTempK: EXAMPLE_AIR_K, vapourPressurePa: vapourPressureFromDewPointOverWaterPa(283), pressurePa: 101_325 });

export const tables: readonly PublishedTable[] = [
  { source, title: 'clear sky: downwelling longwave', ...CLEAR_SKY_TOLERANCE, rows: clearSkyRows(CLEAR_SKY_FORMULAS['Clark-Allen78'], [341.25, 292.05, 267.26, 244.1, 222.5, 202.37, 166.29]) },
  {
    source, title: 'example of the EnergyPlus reference: air 293 K, dew point 283 K', unit: 'as named', tolerance: 1e-3, relative: true, toleranceReason: 'emissivity printed to three digits; the example multiplies the rounded one', origin: 'published',
    rows: [
      { name: 'emissivity', expected: 0.815, model: exampleEmissivity },
      { name: 'downwelling longwave, W/m2', expected: 340.6, model: () => exampleEmissivity() * STEFAN_BOLTZMANN_W_PER_M2K4 * EXAMPLE_AIR_K ** 4 },
    ],
  },
];
