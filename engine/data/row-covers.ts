import type { LongwaveOptics } from '../cover/film-optics.js';

/** A row cover over a bed: how it passes longwave, how much air passes it, how much sun. */
export interface RowCoverRow {
  readonly dry: LongwaveOptics;
  readonly wet: LongwaveOptics;
  /** Air exchange through fabric and edges, as a conductance. */
  readonly leakWPerM2K: number;
  readonly sunTransmittance: number;
  readonly grade: 'published' | 'secondary' | 'from memory';
  readonly source: string;
}

const PRIOR = 'prior of this project (no published longwave values found); light: trade figures as quoted by PennState-RowCovers';

/** Spun-bonded fabric by areal mass in g/m2, as printed on the roll. */
export const FABRIC_ROWS: readonly (RowCoverRow & { readonly arealMassGPerM2: number })[] = [
  { arealMassGPerM2: 17, dry: { transmittance: 0.6, emissivity: 0.3 }, wet: { transmittance: 0.35, emissivity: 0.55 }, leakWPerM2K: 3, sunTransmittance: 0.85, grade: 'from memory', source: PRIOR },
  { arealMassGPerM2: 30, dry: { transmittance: 0.45, emissivity: 0.45 }, wet: { transmittance: 0.25, emissivity: 0.65 }, leakWPerM2K: 2, sunTransmittance: 0.75, grade: 'from memory', source: PRIOR },
  { arealMassGPerM2: 50, dry: { transmittance: 0.3, emissivity: 0.6 }, wet: { transmittance: 0.15, emissivity: 0.75 }, leakWPerM2K: 1, sunTransmittance: 0.5, grade: 'from memory', source: PRIOR },
];

/** Film on low hoops over a bed. */
export const FILM_TUNNEL: RowCoverRow = {
  dry: { transmittance: 0.65, emissivity: 0.25 },
  wet: { transmittance: 0.3, emissivity: 0.6 },
  leakWPerM2K: 0.3,
  sunTransmittance: 0.85,
  grade: 'from memory',
  source: 'standard film (data/films) with the leak of a closed tunnel; prior of this project',
};

/**
 * Properties of a fabric of any usual weight, linear between the rows and level beyond them.
 * Units: g/m2 as printed on the roll; W/(m2 K).
 * Valid: 10 to 120 g/m2.
 * Outside: the nearest row is used; the greenhouse schema refuses impossible weights before.
 * Source: rows of this table.
 */
export function fabricCover(arealMassGPerM2: number): RowCoverRow {
  const upper = FABRIC_ROWS.findIndex((row) => row.arealMassGPerM2 >= arealMassGPerM2);
  if (upper === 0) return FABRIC_ROWS[0]!;
  if (upper < 0) return FABRIC_ROWS.at(-1)!;
  const [low, high] = [FABRIC_ROWS[upper - 1]!, FABRIC_ROWS[upper]!];
  const share = (arealMassGPerM2 - low.arealMassGPerM2) / (high.arealMassGPerM2 - low.arealMassGPerM2);
  const mix = (a: number, b: number): number => a + share * (b - a);
  const optics = (a: LongwaveOptics, b: LongwaveOptics): LongwaveOptics => ({ transmittance: mix(a.transmittance, b.transmittance), emissivity: mix(a.emissivity, b.emissivity) });
  return {
    dry: optics(low.dry, high.dry),
    wet: optics(low.wet, high.wet),
    leakWPerM2K: mix(low.leakWPerM2K, high.leakWPerM2K),
    sunTransmittance: mix(low.sunTransmittance, high.sunTransmittance),
    grade: high.grade,
    source: high.source,
  };
}
