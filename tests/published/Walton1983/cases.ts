import { naturalConvectionWPerM2K, STABLE_W_PER_M2K43, UNSTABLE_W_PER_M2K43 } from '../../../engine/cover/convection.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Walton 1983 as given in the EnergyPlus engineering reference: h = c |dT|^(1/3); c 1.31 vertical, 9.482/(7.283 - |cos|) enhanced,
 * 1.810/(1.382 + |cos|) reduced. The house uses the same form with coefficients of its own, which must stay near these bands.
 */
export const source = 'Walton1983';

const VERTICAL = 1.31;
const enhanced = (cosine: number): number => 9.482 / (7.283 - cosine);
const reduced = (cosine: number): number => 1.81 / (1.382 + cosine);
const COSINE_45 = Math.SQRT1_2;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'natural convection', unit: 'W/(m2 K)', tolerance: 0.001, toleranceReason: 'rounded to 0.001', origin: 'closed form',
    rows: [
      ...([[1, 1.31], [5, 2.24], [10, 2.822]] as const).map(([dT, expected]) => ({ name: `vertical, ${dT} K`, expected, model: () => naturalConvectionWPerM2K(dT, VERTICAL) })),
      ...([[1, 1.509], [5, 2.581], [10, 3.251]] as const).map(([dT, expected]) => ({ name: `enhanced, flat, ${dT} K`, expected, model: () => naturalConvectionWPerM2K(dT, enhanced(1)) })),
      ...([[1, 0.76], [5, 1.299], [10, 1.637]] as const).map(([dT, expected]) => ({ name: `reduced, flat, ${dT} K`, expected, model: () => naturalConvectionWPerM2K(dT, reduced(1)) })),
      { name: 'enhanced, 45 degrees, 5 K', expected: 2.466, model: () => naturalConvectionWPerM2K(5, enhanced(COSINE_45)) },
      { name: 'reduced, 45 degrees, 5 K', expected: 1.482, model: () => naturalConvectionWPerM2K(5, reduced(COSINE_45)) },
    ],
  },
  {
    source, title: "coefficients of the house against the printed ones (Papadakis1992 reads 1.95 dT^0.30)", unit: 'W/(m2 K^(4/3))', tolerance: 0.35, toleranceReason: 'priors: printed correlations of film houses differ by up to a third', origin: 'from memory',
    rows: [
      { name: 'film colder than air, 45 degrees', expected: enhanced(COSINE_45), model: () => UNSTABLE_W_PER_M2K43 },
      { name: 'film warmer than air, 45 degrees', expected: reduced(COSINE_45), model: () => STABLE_W_PER_M2K43 },
    ],
  },
];
