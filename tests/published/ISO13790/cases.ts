import type { PublishedTable } from '../published-table.js';
import { once, runRc, type RcNetwork } from '../rc-network.js';

/**
 * ISO 13790 annex C, five resistances and one capacity (eqs C.1-C.11 from memory), one hour from 6 °C at -8 °C outside, no gains:
 * A_f 32, A_m 2.5 A_f, A_t 4.5 A_f, C_m 110 kJ/K A_f, H_ve 10, H_w 280, H_em 5, h_ms 9.1, h_is 3.45; evaluated apart from this code.
 * The standard steps by Crank-Nicolson and prints the mean of the hour: for a linear network that mean is one implicit half step, so
 * the engine's network gives all four figures from one step of 1800 s.
 */
export const source = 'ISO13790';

const FLOOR_M2 = 32;
const HALF_HOUR_S = 1800;
const MASS_START_C = 6;
const conductance = { ventilation: 10, window: 280, outerMass: 5, massToSurface: 9.1 * 2.5 * FLOOR_M2, surfaceToAir: 3.45 * 4.5 * FLOOR_M2 };
// Lumps: mass, surface, air; boundary 3 is outside.
const network: RcNetwork = {
  capacitiesJPerK: [110_000 * FLOOR_M2, 0, 0],
  startC: [MASS_START_C, MASS_START_C, MASS_START_C],
  links: [[0, 3, conductance.outerMass], [0, 1, conductance.massToSurface], [1, 3, conductance.window], [1, 2, conductance.surfaceToAir], [2, 3, conductance.ventilation]],
  boundariesC: [() => -8],
};
const halfStep = once(() => {
  let result: readonly number[] = [];
  runRc(network, { durationS: HALF_HOUR_S, stepS: HALF_HOUR_S }, (_, tempsC) => (result = tempsC));
  return result;
});

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'annex C: 5R1C hour step', unit: '°C', tolerance: 0.01, toleranceReason: 'acceptance of the reduced network', origin: 'from memory',
    rows: [
      { name: 'mass at the end of the hour', expected: 3.2581, model: () => 2 * halfStep()[0]! - MASS_START_C },
      { name: 'mass, mean', expected: 4.629, model: () => halfStep()[0]! },
      { name: 'surface', expected: 1.0331, model: () => halfStep()[1]! },
      { name: 'air', expected: 0.8549, model: () => halfStep()[2]! },
    ],
  },
];
