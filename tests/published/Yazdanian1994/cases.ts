import { outsideConvectionWPerM2K } from '../../../engine/cover/convection.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/**
 * Yazdanian and Klems 1994, MoWiTT: convection measured at windows in real wind, as printed in the EnergyPlus reference; here at a difference
 * of 5 K. The engine uses the simpler Watmuff1977; this table says how far the two are apart. Assumed: half the cover is windward.
 */
export const source = 'Yazdanian1994';

const DIFFERENCE_K = 5;
const natural = 0.84 * Math.cbrt(DIFFERENCE_K);
const SIDES = { windward: { a: 3.26, b: 0.89 }, leeward: { a: 3.55, b: 0.617 } } as const;
const mowitt = (side: keyof typeof SIDES, windMPerS: number): number => Math.hypot(natural, SIDES[side].a * windMPerS ** SIDES[side].b);

const PRINTED = { windward: [1.436, 3.562, 6.21, 11.287], leeward: [1.436, 3.83, 5.631, 8.473] } as const;
const WINDS = [0, 1, 2, 4] as const;
const rows = (side: keyof typeof SIDES): PublishedRow[] => WINDS.map((wind, i) => ({ name: `${side}, ${wind} m/s`, expected: PRINTED[side][i]!, model: () => mowitt(side, wind) }));

export const tables: readonly PublishedTable[] = [
  { source, title: 'MoWiTT at 5 K: the equation as written down here', unit: 'W/(m2 K)', tolerance: 1e-3, toleranceReason: 'rounded to 0.001', origin: 'closed form', rows: [...rows('windward'), ...rows('leeward')] },
  {
    source, title: "the engine's outside convection beside the mean of both sides", unit: 'W/(m2 K)', tolerance: 5.5, toleranceReason: 'correlations of film and glass houses differ by a factor of two at 3 m/s (Papadakis1992 7.7 to 14.3, from memory); 5 W/(m2 K) move a dawn low by 0.2 K', origin: 'published',
    rows: WINDS.map((wind, i) => ({ name: `${wind} m/s`, expected: (PRINTED.windward[i]! + PRINTED.leeward[i]!) / 2, model: () => outsideConvectionWPerM2K(wind) })),
  },
];
