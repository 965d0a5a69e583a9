import { vapourPressureFromDewPointOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import { CLEAR_SKY_FORMULAS } from '../longwave/clear-sky-formulas.js';
import { CLOUD_RULES } from '../longwave/cloud-rules.js';
import type { PublishedTable } from '../published-table.js';

/** Walton's polynomial of cloud in tenths as printed in the EnergyPlus reference, on the clear sky of Clark and Allen. A rival: on measured nights it is 21 W/m2 too cold. */
export const source = 'Walton1983';

const polynomial = CLOUD_RULES['Walton polynomial'];
const clearAtDewPoint0 = (): number => CLEAR_SKY_FORMULAS['Clark-Allen78']({ airTempK: celsiusToKelvin(5), vapourPressurePa: vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(0)), pressurePa: 101_325 });
const POINTS = [[0, 1, 0.7874], [2, 1.03304, 0.8134], [5, 1.0595, 0.8343], [8, 1.09856, 0.865], [10, 1.154, 0.9087]] as const;

export const tables: readonly PublishedTable[] = [
  { source, title: 'cloud polynomial: factor', unit: '1', tolerance: 1e-5, toleranceReason: 'exact arithmetic, rounded', origin: 'closed form', rows: POINTS.map(([tenths, factor]) => ({ name: `${tenths} tenths`, expected: factor, model: () => polynomial(1, tenths / 10) })) },
  { source, title: 'cloud polynomial: sky emissivity at a dew point of 0 °C', unit: '1', tolerance: 1e-4, toleranceReason: 'rounded to four digits', origin: 'closed form', rows: POINTS.map(([tenths, , emissivity]) => ({ name: `${tenths} tenths`, expected: emissivity, model: () => polynomial(clearAtDewPoint0(), tenths / 10) })) },
];
