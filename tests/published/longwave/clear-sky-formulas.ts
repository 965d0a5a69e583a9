import { dewPointOverWaterK } from '../../../engine/air/saturation-magnus.js';
import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { clearSkyEmissivityPrata1996 } from '../../../engine/sky/clear-sky-emissivity-prata.js';
import { kelvinToCelsius } from '../../../engine/units.js';

/** What a formula of the clear sky may know of the air at screen height. */
export interface ScreenAir {
  readonly airTempK: number;
  readonly vapourPressurePa: number;
  readonly pressurePa: number;
}

/** Emissivity of the clear sky. */
export type ClearSkyFormula = (air: ScreenAir) => number;

const hectopascal = (pascal: number): number => pascal / 100;
const dewPointC = (air: ScreenAir): number => kelvinToCelsius(dewPointOverWaterK(air.vapourPressurePa));
/** Precipitable water in cm as Prata1996 guesses it from the screen. */
const waterCm = (air: ScreenAir): number => (46.5 * hectopascal(air.vapourPressurePa)) / air.airTempK;
const bruntForm = (a: number, b: number): ClearSkyFormula => (air) => a + b * Math.sqrt(hectopascal(air.vapourPressurePa));

/**
 * Rivals of the engine's clear sky, all coefficients from memory, named as the list of scores has them. The engine itself uses Prata alone;
 * these are here so that the choice stays on record and can be made again.
 */
export const CLEAR_SKY_FORMULAS = {
  'Brunt(0.52,0.065)': bruntForm(0.52, 0.065), // Brunt1932
  'Brunt-Li17(0.598,0.057)': bruntForm(0.598, 0.057), // Li2017
  Brutsaert75: (air) => 1.24 * (hectopascal(air.vapourPressurePa) / air.airTempK) ** (1 / 7), // Brutsaert1975
  'Idso-Jackson69': (air) => 1 - 0.261 * Math.exp(-7.77e-4 * (273 - air.airTempK) ** 2), // IdsoJackson1969
  Swinbank63: (air) => 9.36e-6 * air.airTempK ** 2, // Swinbank1963
  Idso81: (air) => 0.7 + 5.95e-5 * hectopascal(air.vapourPressurePa) * Math.exp(1500 / air.airTempK), // Idso1981
  Prata96: (air) => clearSkyEmissivityPrata1996(air.airTempK, air.vapourPressurePa),
  'Dilley-OBrien98': (air) => (59.38 + 113.7 * (air.airTempK / 273.16) ** 6 + 96.96 * Math.sqrt(waterCm(air) / 2.5)) / (STEFAN_BOLTZMANN_W_PER_M2K4 * air.airTempK ** 4), // DilleyOBrien1998
  'Clark-Allen78': (air) => 0.787 + 0.764 * Math.log(dewPointOverWaterK(air.vapourPressurePa) / 273), // ClarkAllen1978
  'Berdahl-Fromberg82 night': (air) => 0.741 + 0.0062 * dewPointC(air), // BerdahlFromberg1982
  // BerdahlMartin1984, with its pressure term.
  'Berdahl-Martin84': (air) => 0.711 + 0.56 * (dewPointC(air) / 100) + 0.73 * (dewPointC(air) / 100) ** 2 + 0.00012 * (hectopascal(air.pressurePa) - 1000),
  'Angstrom(0.83,0.18,0.067)': (air) => 0.83 - 0.18 * 10 ** (-0.067 * hectopascal(air.vapourPressurePa)), // Angstrom1915
} as const satisfies Record<string, ClearSkyFormula>;

export type ClearSkyName = keyof typeof CLEAR_SKY_FORMULAS;
export const CLEAR_SKY_NAMES = Object.keys(CLEAR_SKY_FORMULAS) as readonly ClearSkyName[];
