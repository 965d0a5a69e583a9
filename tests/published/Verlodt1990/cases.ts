import { drumConductanceWPerK } from '../../../engine/mass/water-drum.js';
import type { PublishedTable } from '../published-table.js';

/** Verlodt and Mougou 1990: heat that water in polyethylene sleeves of 32 cm gives to an unheated house, 7 to 8 W/(m2 K) of each, 6 of two that touch. Assumed: the free surface of a 208 L drum, 1.83 m2. */
export const source = 'Verlodt1990';

const DRUM_LITRES = 208;
const DRUM_M2 = 1.83;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'heat from water that stands free', unit: 'W/(m2 K)', tolerance: 1, toleranceReason: 'printed as 7 to 8 for sleeves that lie; a drum stands', origin: 'published',
    rows: [{ name: 'one sleeve, one drum', expected: 7.5, model: () => drumConductanceWPerK(DRUM_LITRES) / DRUM_M2 }],
  },
];
