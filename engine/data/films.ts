import type { LongwaveOptics } from '../cover/film-optics.js';
import { POLYETHYLENE_SHEET, type Sheet } from '../cover/shortwave-transmittance.js';

/** A greenhouse film, pane or panel: longwave behaviour dry and with condensation or frost on it, and how it passes sunlight. */
export interface FilmRow {
  readonly dry: LongwaveOptics;
  readonly wet: LongwaveOptics;
  /** One of its sheets; a twin-wall panel has two. */
  readonly sheet: Sheet;
  /** Conductance between its own two sheets by air and webs, without radiation; null for a single sheet. */
  readonly webWPerM2K: number | null;
  readonly grade: 'published' | 'secondary' | 'from memory';
  readonly source: string;
}

export const FILMS = {
  standard: {
    dry: { transmittance: 0.65, emissivity: 0.25 },
    wet: { transmittance: 0.3, emissivity: 0.6 },
    sheet: POLYETHYLENE_SHEET,
    webWPerM2K: null,
    grade: 'secondary',
    source: 'Bartok-GreenhouseManagement (up to 74 % passes) and Godbey1979, Nijskens1984 (0.7-0.8, from memory); wet: Wisconsin-GreenhouseEnergy (condensation cuts radiation loss by up to half)',
  },
  thermal: {
    dry: { transmittance: 0.3, emissivity: 0.6 },
    wet: { transmittance: 0.2, emissivity: 0.7 },
    sheet: POLYETHYLENE_SHEET,
    webWPerM2K: null,
    grade: 'published',
    source: 'Geoola2011 (8-35 %) and Kalfas1988 (under 20 % for 40 % EVA blends); wet from memory',
  },
  'ir-barrier': {
    dry: { transmittance: 0.25, emissivity: 0.65 },
    wet: { transmittance: 0.15, emissivity: 0.75 },
    sheet: POLYETHYLENE_SHEET,
    webWPerM2K: null,
    grade: 'from memory',
    source: 'EN-13206 class thermal, at most 25 % (from memory)',
  },
  glass: {
    dry: { transmittance: 0, emissivity: 0.9 },
    wet: { transmittance: 0, emissivity: 0.95 },
    // Duffie2013 table 5.1.1: glass 1.526; 4 mm with extinction 13-16 /m absorbs 5-6 % (from memory).
    sheet: { refractiveIndex: 1.526, absorbedShare: 0.05 },
    webWPerM2K: null,
    grade: 'from memory',
    source: 'longwave 0.00-0.05 passed, emissivity 0.88-0.94 (from memory)',
  },
  'twin-wall': {
    dry: { transmittance: 0, emissivity: 0.9 },
    wet: { transmittance: 0, emissivity: 0.95 },
    // Duffie2013 table 5.1.1: polycarbonate 1.60; 0.4 mm walls and their webs absorb a few percent (from memory); whole panel 0.72-0.82.
    sheet: { refractiveIndex: 1.6, absorbedShare: 0.03 },
    webWPerM2K: 3.8,
    grade: 'published',
    source: 'Bartok-GreenhouseManagement and data sheets: U 3.4-4.0 W/(m2 K) for 6 to 8 mm; less surface films and the radiation between the walls leaves 3.8 for air and webs',
  },
} as const satisfies Record<string, FilmRow>;

export type FilmKind = keyof typeof FILMS;
export const FILM_KINDS = Object.keys(FILMS) as readonly FilmKind[];
