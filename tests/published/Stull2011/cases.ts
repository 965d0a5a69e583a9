import { humidityRatioKgPerKg } from '../../../engine/air/moist-air.js';
import { saturationVapourPressureOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { wetBulbK } from '../../../engine/air/wet-bulb.js';
import { STANDARD_PRESSURE_PA } from '../../../engine/constants.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Stull 2011, J. Appl. Meteorol. Climatol. 50: wet bulb by one formula, at sea level (formula and example from memory). Its author states
 * errors between -1 and 0.65 K, with a mean of 0.3 K: the engine solves the exact balance, so what is seen here are Stull's errors.
 */
export const source = 'Stull2011';

const stullC = (airC: number, percent: number): number =>
  airC * Math.atan(0.151977 * Math.sqrt(percent + 8.313659)) + Math.atan(airC + percent) - Math.atan(percent - 1.676331) + 0.00391838 * percent ** 1.5 * Math.atan(0.023101 * percent) - 4.686035;

const exactC = (airC: number, percent: number): number => {
  const airTempK = celsiusToKelvin(airC);
  const vapourPressurePa = (percent / 100) * saturationVapourPressureOverWaterPa(airTempK);
  return kelvinToCelsius(wetBulbK({ airTempK, humidityRatio: humidityRatioKgPerKg(vapourPressurePa, STANDARD_PRESSURE_PA), pressurePa: STANDARD_PRESSURE_PA }));
};

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'example: 20 °C, 50 %', unit: '°C', tolerance: 0.3, toleranceReason: 'mean error that the author states', origin: 'from memory',
    rows: [{ name: 'wet bulb', expected: 13.7, model: () => exactC(20, 50) }],
  },
  {
    source, title: 'the formula over a grid above freezing', unit: 'K', tolerance: 1, toleranceReason: 'largest error that the author states', origin: 'from memory',
    rows: [5, 10, 15, 20, 25, 30].flatMap((airC) => [40, 55, 70, 85, 97].map((percent) => ({ name: `${airC} °C, ${percent} %`, expected: stullC(airC, percent), model: () => exactC(airC, percent) }))),
  },
];
