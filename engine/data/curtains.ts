import type { LongwaveOptics } from '../cover/film-optics.js';

/** A curtain drawn flat over the beds for the night. */
export interface CurtainRow {
  readonly dry: LongwaveOptics;
  readonly wet: LongwaveOptics;
  /** Air exchange past its edges and through it, for each m2 of floor. */
  readonly leakWPerM2K: number;
  /** Share of the light that still reaches the beds while it is drawn. */
  readonly sunTransmittance: number;
  readonly grade: 'published' | 'secondary' | 'from memory';
  readonly source: string;
}

export const CURTAINS = {
  film: { dry: { transmittance: 0.65, emissivity: 0.25 }, wet: { transmittance: 0.3, emissivity: 0.6 }, leakWPerM2K: 0.5, sunTransmittance: 0.85, grade: 'secondary', source: 'standard film (data/films); leak: prior of this project' },
  fabric: { dry: { transmittance: 0.3, emissivity: 0.6 }, wet: { transmittance: 0.15, emissivity: 0.75 }, leakWPerM2K: 1, sunTransmittance: 0.5, grade: 'from memory', source: 'as 50 g/m2 fabric (data/row-covers); leak: prior of this project' },
  foil: { dry: { transmittance: 0.03, emissivity: 0.3 }, wet: { transmittance: 0.03, emissivity: 0.5 }, leakWPerM2K: 1, sunTransmittance: 0.3, grade: 'from memory', source: 'aluminised screen 0-0.05 passed, emissivity 0.1-0.4 as mean of both sides, a third of the light between its strips (from memory); leak: prior of this project' },
} as const satisfies Record<string, CurtainRow>;

export type CurtainKind = keyof typeof CURTAINS;
export const CURTAIN_KINDS = Object.keys(CURTAINS) as readonly CurtainKind[];
