import { vapourPressureFromDewPointOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { CLOUD_LONGWAVE_WEIGHT, downwellingLongwaveWPerM2, surroundingsRadiantTempK } from '../../../engine/sky/downwelling-longwave.js';
import { celsiusToKelvin, SECONDS_PER_DAY } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/**
 * FAO Irrigation and Drainage Paper 56, eq. 39 and example 11 (from memory): net longwave lost by grass. Daily in MJ/m2 from extremes of
 * temperature, vapour pressure and the share of clear sunlight; the same form for an instant of a clear night. Assumed for the engine: a
 * black surface at air temperature.
 */
export const source = 'FAO-56';

const PER_DAY_MJ_PER_M2K4 = 4.903e-9;
const MEGAJOULE = 1e6;
const humidityTerm = (vapourPressureKPa: number): number => 0.34 - 0.14 * Math.sqrt(vapourPressureKPa);
const example11 = (): number => ((PER_DAY_MJ_PER_M2K4 * ((25.1 + 273.16) ** 4 + (19.1 + 273.16) ** 4)) / 2) * humidityTerm(2.1) * (1.35 * (14.5 / 18.8) - 0.35);

const clearNightFaoWPerM2 = (airC: number, dewPointC: number): number =>
  PER_DAY_MJ_PER_M2K4 * celsiusToKelvin(airC) ** 4 * humidityTerm(vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dewPointC)) / 1000) * (MEGAJOULE / SECONDS_PER_DAY);

const clearNightEngineWPerM2 = (airC: number, dewPointC: number): number => {
  const airTempK = celsiusToKelvin(airC);
  const skyTempK = surroundingsRadiantTempK({ airTempK, vapourPressurePa: vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dewPointC)), cloudFraction: 0, cloudWeight: CLOUD_LONGWAVE_WEIGHT, skyViewFraction: 1 });
  return downwellingLongwaveWPerM2(airTempK, 1) - downwellingLongwaveWPerM2(skyTempK, 1);
};

const NIGHTS = [[0, -5, 78.6], [-10, -15, 75.8]] as const;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'eq. 39, example 11: 25.1 and 19.1 °C, 2.1 kPa, 14.5 of 18.8 MJ/m2', unit: 'MJ/(m2 d)', tolerance: 0.05, toleranceReason: 'printed to two digits; shows that the equation is written down rightly', origin: 'from memory',
    rows: [{ name: 'net longwave', expected: 3.5, model: example11 }],
  },
  {
    source, title: 'eq. 39 for an instant of a clear night', unit: 'W/m2', tolerance: 0.1, toleranceReason: 'rounded to 0.1', origin: 'closed form',
    rows: NIGHTS.map(([airC, dewPointC, expected]) => ({ name: `air ${airC}, dew point ${dewPointC} °C`, expected, model: () => clearNightFaoWPerM2(airC, dewPointC) })),
  },
  {
    source, title: "the engine's net longwave of a clear night beside eq. 39", unit: 'W/m2', tolerance: 10, toleranceReason: 'eq. 39 was fitted to whole days of warm seasons; formulas of the clear sky differ by 40 in cold dry air', origin: 'closed form',
    rows: NIGHTS.map(([airC, dewPointC, expected]) => ({ name: `air ${airC}, dew point ${dewPointC} °C`, expected, model: () => clearNightEngineWPerM2(airC, dewPointC) })),
  },
];
