import { STANDARD_PRESSURE_PA, STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { leafTempK } from '../../../engine/night/leaf.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/**
 * Two-sided leaf balance (Campbell and Norman 1998 ch. 12), evaluated apart from this code: air 0, ground 2, film -4 °C, clear sky of
 * emissivity 0.72, no dew. The table gives temperatures, not irradiances: those are worked out here (ground 0.95; film = emitted +
 * passed sky + reflected ground). Its row under a row cover is left out because it does not say what the cover passes.
 */
export const source = 'Campbell1998';

const black = (tempC: number): number => STEFAN_BOLTZMANN_W_PER_M2K4 * celsiusToKelvin(tempC) ** 4;
const SKY_WPM2 = 0.72 * black(0);
const GROUND_WPM2 = 0.95 * black(2);
const underFilm = (transmittance: number, emissivity: number): number => emissivity * black(-4) + transmittance * SKY_WPM2 + (1 - transmittance - emissivity) * black(2);

const situation = (name: string, fromAbove: number, printed: readonly (readonly [h: number, leafLessAirK: number])[]): PublishedRow[] =>
  printed.map(([h, expected]) => ({
    name: `${name}, h ${h}`,
    expected,
    model: () =>
      leafTempK({ airTempK: celsiusToKelvin(0), humidityRatio: null, pressurePa: STANDARD_PRESSURE_PA, longwaveFromAboveWPerM2: fromAbove, longwaveFromBelowWPerM2: GROUND_WPM2, hPerSideWPerM2K: h }) - celsiusToKelvin(0),
  }));

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'leaf less air', unit: 'K', tolerance: 0.05, toleranceReason: 'leaf emissivity of the table about 0.96, here 0.95; irradiances worked out', origin: 'closed form',
    rows: [
      ...situation('open field', SKY_WPM2, [[4, -5.51], [8, -3.7], [15, -2.36]]),
      ...situation('under a dry film', underFilm(0.7, 0.22), [[4, -4.15], [8, -2.79], [15, -1.78]]),
      ...situation('under a wet film', underFilm(0.3, 0.6), [[4, -2.48], [8, -1.68], [15, -1.07]]),
    ],
  },
];
