import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import { CLEAR_SKY_TOLERANCE, clearSkyRows } from '../longwave/clear-sky-rows.js';
import type { ClearSkyFormula } from '../longwave/clear-sky-formulas.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Swinbank 1963 (from memory), evaluated apart from this code. A rival of the engine's sky; it knows no humidity. These values were worked
 * out with 9.365e-6, the scores on measured longwave with 9.36e-6: 0.1 W/m2 between them.
 */
export const source = 'Swinbank1963';

const emissivity: ClearSkyFormula = ({ airTempK }) => 9.365e-6 * airTempK ** 2;
const skyTempC = (airC: number): number => kelvinToCelsius(emissivity({ airTempK: celsiusToKelvin(airC), vapourPressurePa: 0, pressurePa: 0 }) ** 0.25 * celsiusToKelvin(airC));

export const tables: readonly PublishedTable[] = [
  { source, title: 'clear sky: downwelling longwave', ...CLEAR_SKY_TOLERANCE, rows: clearSkyRows(emissivity, [337.02, 273.66, 245.92, 220.56, 197.42, 176.34, 139.76]) },
  {
    source, title: 'clear sky: temperature, 0.0552 T^1.5', unit: '°C', tolerance: 0.7, toleranceReason: '0.0552 is rounded: its fourth power lies 0.9 % below 9.365e-6, 0.6 K of sky', origin: 'from memory',
    rows: ([[20, 3.91], [10, -10.15], [0, -23.95], [-10, -37.51]] as const).map(([airC, expected]) => ({ name: `air ${airC} °C`, expected, model: () => skyTempC(airC) })),
  },
];
