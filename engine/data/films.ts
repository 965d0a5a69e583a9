import type { LongwaveOptics } from '../cover/film-optics.js';

/** A greenhouse film: longwave behaviour dry and with condensation or frost on it. */
export interface FilmRow {
  readonly dry: LongwaveOptics;
  readonly wet: LongwaveOptics;
  readonly grade: 'published' | 'secondary' | 'from memory';
  readonly source: string;
}

export const FILMS = {
  standard: {
    dry: { transmittance: 0.65, emissivity: 0.25 },
    wet: { transmittance: 0.3, emissivity: 0.6 },
    grade: 'secondary',
    source: 'Bartok-GreenhouseManagement (up to 74 % passes) and Godbey1979, Nijskens1984 (0.7-0.8, from memory); wet: Wisconsin-GreenhouseEnergy (condensation cuts radiation loss by up to half)',
  },
  thermal: {
    dry: { transmittance: 0.3, emissivity: 0.6 },
    wet: { transmittance: 0.2, emissivity: 0.7 },
    grade: 'published',
    source: 'Geoola2011 (8-35 %) and Kalfas1988 (under 20 % for 40 % EVA blends); wet from memory',
  },
  'ir-barrier': {
    dry: { transmittance: 0.25, emissivity: 0.65 },
    wet: { transmittance: 0.15, emissivity: 0.75 },
    grade: 'from memory',
    source: 'EN-13206 class thermal, at most 25 % (from memory)',
  },
} as const satisfies Record<string, FilmRow>;

export type FilmKind = keyof typeof FILMS;
export const FILM_KINDS = Object.keys(FILMS) as readonly FilmKind[];
