import { FILMS } from '../../../engine/data/films.js';
import { HEATER_KINDS } from '../../../engine/data/heater-kinds.js';
import { JOULES_PER_KWH, LITRES_PER_US_GALLON, METRES_PER_FOOT, WATTS_PER_BTU_PER_HOUR, SECONDS_PER_HOUR } from '../../../engine/units.js';
import { coverUValue, saving } from '../cover-u-value.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Univ. of Wisconsin-Madison Extension, greenhouse energy pages: foam on the knee wall of a 28 x 100 ft house saves 400 gal of oil, 610 gal of
 * propane or 558 therms of gas a year (which must be one amount of heat); heating values; what an infrared film saves over a season.
 * Assumed: propane of 0.507 kg/L (from memory).
 */
export const source = 'Wisconsin-GreenhouseEnergy';

const BTU_J = WATTS_PER_BTU_PER_HOUR * SECONDS_PER_HOUR;
const MILLION_BTU_J = 1e6 * BTU_J;
const PROPANE_KG_PER_L = 0.507;
const propaneGallonJ = PROPANE_KG_PER_L * LITRES_PER_US_GALLON * HEATER_KINDS['vented-propane'].energyPerUnitJ;
const OIL_BTU_PER_GALLON = 138_690;
const CUBIC_FEET_PER_M3 = METRES_PER_FOOT ** -3;
const { standard } = FILMS;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'foam on a knee wall: one amount of heat in three fuels', unit: '10^6 Btu', tolerance: 0.01, relative: true, toleranceReason: 'printed gallons and therms are rounded to 1 %', origin: 'published',
    rows: [
      { name: '610 gal of propane against 400 gal of oil', expected: (400 * OIL_BTU_PER_GALLON) / 1e6, model: () => (610 * propaneGallonJ) / MILLION_BTU_J },
      { name: '558 therms against 400 gal of oil', expected: (400 * OIL_BTU_PER_GALLON) / 1e6, model: () => (558 * 1e5 * BTU_J) / MILLION_BTU_J },
    ],
  },
  {
    source, title: 'heating values', unit: 'Btu', tolerance: 0.01, relative: true, toleranceReason: 'printed to three digits', origin: 'published',
    rows: [
      { name: 'gallon of propane', expected: 91_500, model: () => propaneGallonJ / BTU_J },
      { name: 'gallon of kerosene', expected: 135_000, model: () => (HEATER_KINDS['vented-kerosene'].energyPerUnitJ * LITRES_PER_US_GALLON) / BTU_J },
      { name: 'cubic foot of natural gas', expected: 1000, model: () => HEATER_KINDS['vented-gas'].energyPerUnitJ / CUBIC_FEET_PER_M3 / BTU_J },
      { name: 'kilowatt-hour', expected: 3412.14, model: () => JOULES_PER_KWH / BTU_J },
    ],
  },
  {
    source, title: 'inner film that stops longwave, under a plain one', unit: 'share saved', tolerance: 0.08, toleranceReason: 'printed 15 to 20 % over a season, of dry and wet nights', origin: 'published',
    rows: [{ name: 'dry films', expected: 0.175, model: () => saving(coverUValue([standard.dry, standard.dry]), coverUValue([FILMS['ir-barrier'].dry, standard.dry])) }],
  },
];
