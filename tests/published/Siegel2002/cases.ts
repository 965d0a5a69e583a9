import { kelvinToCelsius } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { solveSteadyCover, type SteadyCover } from './film-network.js';

/**
 * Net-radiation method for semi-transparent grey planes (Siegel and Howell 2002 ch. 5 and 17, from memory), solved apart from this
 * code for steady covers. The overcast column agrees with printed heat-loss coefficients of heated houses: single film 1.1-1.2,
 * double 0.7-0.8, double with infrared-absorbing film near 0.6 Btu/(h ft2 °F) (eXtension glazing module, Bartok).
 */
export const source = 'Siegel2002';

const dry = { transmittance: 0.7, emissivity: 0.22 };
const wet = { transmittance: 0.3, emissivity: 0.6 };
const infraredFilm = { transmittance: 0.25, emissivity: 0.65 };
const opaque = { transmittance: 0, emissivity: 0.9 };

/** Inside and ground 10, outside -10 °C; h 3.5 inside, 2.5 in the gap, 12 outside; sky -30 clear, -10 overcast. */
const heated = (films: SteadyCover['films'], skyTempC: number): SteadyCover => ({ films, groundTempC: 10, insideTempC: 10, outsideTempC: -10, skyTempC, hInsideWPerM2K: 3.5, hGapWPerM2K: 2.5, hOutsideWPerM2K: 12 });
const unheated = (films: SteadyCover['films']): SteadyCover => ({ films, groundTempC: 6, insideTempC: 1, outsideTempC: -5, skyTempC: -25, hInsideWPerM2K: 3, hGapWPerM2K: 2.5, hOutsideWPerM2K: 8 });

interface Printed {
  readonly name: string;
  readonly cover: SteadyCover;
  readonly filmsC: readonly number[];
  readonly radiation: number;
  readonly convection: number;
  readonly uValue?: number;
}

const both = (name: string, films: SteadyCover['films'], clear: Omit<Printed, 'name' | 'cover'>, overcast: Omit<Printed, 'name' | 'cover'>): Printed[] => [
  { name: `${name}, clear`, cover: heated(films, -30), ...clear },
  { name: `${name}, overcast`, cover: heated(films, -10), ...overcast },
];

export const PRINTED: readonly Printed[] = [
  ...both('single dry', [dry], { filmsC: [-5.814], radiation: 126.73, convection: 55.35, uValue: 9.104 }, { filmsC: [-4.849], radiation: 76.63, convection: 51.97, uValue: 6.43 }),
  ...both('single wet', [wet], { filmsC: [-6.187], radiation: 91.43, convection: 56.65, uValue: 7.404 }, { filmsC: [-4.014], radiation: 64.88, convection: 49.05, uValue: 5.697 }),
  ...both('single infrared-absorbing', [infraredFilm], { filmsC: [-6.223], radiation: 87.24, convection: 56.78, uValue: 7.201 }, { filmsC: [-3.923], radiation: 63.41, convection: 48.73, uValue: 5.607 }),
  ...both('single opaque', [opaque], { filmsC: [-6.37], radiation: 66.39, convection: 57.3, uValue: 6.184 }, { filmsC: [-3.511], radiation: 55.63, convection: 47.29, uValue: 5.146 }),
  ...both('double dry', [dry, dry], { filmsC: [0.484, -8.478], radiation: 101.49, convection: 33.3, uValue: 6.74 }, { filmsC: [2.429, -7.087], radiation: 63.85, convection: 26.5, uValue: 4.517 }),
  ...both('double, inner wet', [wet, dry], { filmsC: [-1.319, -9.064], radiation: 71.47, convection: 39.62, uValue: 5.554 }, { filmsC: [1.932, -7.376], radiation: 47.26, convection: 28.24, uValue: 3.775 }),
  ...both('double, inner infrared-absorbing', [infraredFilm, dry], { filmsC: [-1.48, -9.129], radiation: 67.94, convection: 40.18, uValue: 5.406 }, { filmsC: [1.886, -7.409], radiation: 45.26, convection: 28.4, uValue: 3.683 }),
  { name: 'unheated, single dry', cover: unheated([dry]), filmsC: [-4.154], radiation: 96.29, convection: 15.46 },
  { name: 'unheated, single wet', cover: unheated([wet]), filmsC: [-5.019], radiation: 66.38, convection: 18.06 },
  { name: 'unheated, double, inner wet', cover: unheated([wet, dry]), filmsC: [-3.915, -5.957], radiation: 56.88, convection: 14.75 },
];

const row = (name: string, expected: number, model: () => number): PublishedRow => ({ name, expected, model });

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'steady covers: film temperature', unit: '°C', tolerance: 0.02, toleranceReason: 'acceptance of the film network; rounded to 0.001 K', origin: 'closed form',
    rows: PRINTED.flatMap(({ name, cover, filmsC }) => filmsC.map((expected, f) => row(`${name}, film ${f + 1}`, expected, () => kelvinToCelsius(solveSteadyCover(cover).filmTempsK[f]!)))),
  },
  {
    source, title: 'steady covers: longwave lost by the ground', unit: 'W/m2', tolerance: 0.1, toleranceReason: '0.02 K of film temperature', origin: 'closed form',
    rows: PRINTED.map(({ name, cover, radiation }) => row(name, radiation, () => solveSteadyCover(cover).groundLossWPerM2)),
  },
  {
    source, title: 'steady covers: convection to the film', unit: 'W/m2', tolerance: 0.1, toleranceReason: '0.02 K of film temperature', origin: 'closed form',
    rows: PRINTED.map(({ name, cover, convection }) => row(name, convection, () => solveSteadyCover(cover).convectionWPerM2)),
  },
  {
    source, title: 'steady covers: heat-loss coefficient', unit: 'W/(m2 K)', tolerance: 0.01, toleranceReason: '0.1 W/m2 over 20 K', origin: 'closed form',
    rows: PRINTED.flatMap(({ name, cover, uValue }) =>
      uValue === undefined
        ? []
        : [row(name, uValue, () => ((result) => (result.groundLossWPerM2 + result.convectionWPerM2) / (cover.insideTempC - cover.outsideTempC))(solveSteadyCover(cover)))],
    ),
  },
];
