import { naturalConvectionWPerM2K, VERTICAL_W_PER_M2K43 } from '../../../engine/cover/convection.js';
import { drumConductanceWPerK } from '../../../engine/mass/water-drum.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Churchill and Chu 1975, natural convection at an upright plate, as evaluated by the ht library (1.0.6): air near 3 °C at a height of 0.88 m
 * (a drum), and water inside a drum. The engine has the simpler c dT^(1/3) for walls, and one constant for a drum that these values give.
 */
export const source = 'Churchill1975';

const DRUM_M2 = 1.83;
/** Radiation of a drum near 275 K, emissivity 0.95 (from memory: 4.6). */
const RADIATION_W_PER_M2K = 4.6;
const drumWPerK = (airSideWPerM2K: number, waterSideWPerM2K: number): number => DRUM_M2 / (1 / (airSideWPerM2K + RADIATION_W_PER_M2K) + 1 / waterSideWPerM2K);

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'air at an upright wall of 0.88 m', unit: 'W/(m2 K)', tolerance: 0.2, relative: true, toleranceReason: 'the cube-root law is for tall walls; a low one is up to a fifth better', origin: 'library run',
    rows: ([[2, 2.03], [5, 2.68], [10, 3.31]] as const).map(([differenceK, expected]) => ({ name: `${differenceK} K`, expected, model: () => naturalConvectionWPerM2K(differenceK, VERTICAL_W_PER_M2K43) })),
  },
  {
    source, title: 'drum of 208 L: air and water films in series', unit: 'W/K', tolerance: 0.12, relative: true, toleranceReason: 'the engine has one constant for differences of 2 to 10 K, right at 5', origin: 'library run',
    rows: ([[2, 2.03, 95], [5, 2.68, 118], [10, 3.31, 147]] as const).map(([differenceK, air, water]) => ({ name: `air ${differenceK} K colder`, expected: drumWPerK(air, water), model: () => drumConductanceWPerK(208) })),
  },
];
