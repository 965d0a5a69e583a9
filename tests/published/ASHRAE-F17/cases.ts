import { humidityRatioKgPerKg, standardPressurePa } from '../../../engine/air/moist-air.js';
import { saturationVapourPressureHylandWexlerPa } from '../../../engine/air/saturation-hyland-wexler.js';
import { wetBulbK } from '../../../engine/air/wet-bulb.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/** ASHRAE Handbook Fundamentals 2017 ch. 1, tables 1 to 3, as quoted by the test suite of psychrolib 2.5.0. */
export const source = 'ASHRAE-F17';

const SEA_LEVEL_PA = 101_325;
const DENVER_PA = 95_461;

const saturation = (tempC: number, expected: number, tolerance?: number): PublishedRow => ({
  name: `${tempC} °C`,
  expected,
  model: () => saturationVapourPressureHylandWexlerPa(celsiusToKelvin(tempC)),
  ...(tolerance === undefined ? {} : { tolerance }),
});

const wetBulb = (airTempC: number, wetBulbC: number, humidityRatio: number): PublishedRow => ({
  name: `${airTempC} °C with ${humidityRatio} kg/kg`,
  expected: wetBulbC,
  model: () => kelvinToCelsius(wetBulbK({ airTempK: celsiusToKelvin(airTempC), humidityRatio, pressurePa: DENVER_PA })),
});

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'ch. 1 table 3: saturation pressure', unit: 'Pa', tolerance: 3e-4, relative: true,
    toleranceReason: 'printed to four or five digits; at -60 °C (1.08 Pa) to 0.01 Pa', origin: 'published',
    rows: [saturation(-60, 1.08, 0.01), saturation(-20, 103.24), saturation(-5, 401.74), saturation(5, 872.6), saturation(25, 3169.7), saturation(50, 12351.3)],
  },
  {
    source, title: 'ch. 1 table 1: standard pressure', unit: 'Pa', tolerance: 1, toleranceReason: 'printed to 1 Pa', origin: 'published',
    rows: ([[0, 101_325], [500, 95_461], [1000, 89_875], [4000, 61_640]] as const).map(([elevationM, expected]) => ({ name: `${elevationM} m`, expected, model: () => standardPressurePa(elevationM) })),
  },
  {
    source, title: 'ch. 1 table 2: humidity ratio at saturation', unit: 'kg/kg', tolerance: 0.01, relative: true,
    toleranceReason: 'the handbook has the enhancement factor of real moist air (0.4 %), the equations here do not', origin: 'published',
    rows: ([[-20, 0.0006373], [-5, 0.0024863], [5, 0.005425], [25, 0.020173]] as const).map(([tempC, expected]) => ({
      name: `${tempC} °C`,
      expected,
      model: () => humidityRatioKgPerKg(saturationVapourPressureHylandWexlerPa(celsiusToKelvin(tempC)), SEA_LEVEL_PA),
    })),
  },
  {
    source, title: 'ch. 1 eq. 33 and 35: wet bulb at 95 461 Pa', unit: '°C', tolerance: 0.005, toleranceReason: 'humidity ratio printed to five digits: 0.003 K', origin: 'published',
    rows: [wetBulb(30, 25, 0.019228), wetBulb(-1, -5, 0.001204)],
  },
];
