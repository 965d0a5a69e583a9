import { vapourPressureFromDewPointOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { clearSkyEmissivityPrata1996 } from '../../../engine/sky/clear-sky-emissivity-prata.js';
import { downwellingLongwaveWPerM2, surroundingsRadiantTempK } from '../../../engine/sky/downwelling-longwave.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/** Prata 1996, Q. J. R. Meteorol. Soc. 122 (formula from memory), evaluated apart from this code with Magnus vapour pressure over water. */
export const source = 'Prata1996';

// Air and dew point (degrees C), downwelling longwave (W/m2), sky temperature (degrees C).
const ROWS = [
  [20, 10, 331.83, 3.43],
  [10, 5, 279.46, -8.19],
  [5, 0, 252.41, -14.85],
  [0, -5, 228.8, -21.11],
  [-5, -10, 208.09, -27.02],
  [-10, -15, 189.77, -32.63],
  [-20, -25, 158.73, -43.13],
] as const;

const downwelling = (airTempC: number, dewPointC: number): number => {
  const airTempK = celsiusToKelvin(airTempC);
  return downwellingLongwaveWPerM2(airTempK, clearSkyEmissivityPrata1996(airTempK, vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dewPointC))));
};

const SURFACE_EMISSIVITY = 0.95;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'clear sky: downwelling longwave', unit: 'W/m2', tolerance: 0.1, toleranceReason: 'rounded to 0.01; far below the 23 W/m2 of the formula itself', origin: 'from memory',
    rows: ROWS.map(([airTempC, dewPointC, expected]) => ({ name: `air ${airTempC}, dew point ${dewPointC} °C`, expected, model: () => downwelling(airTempC, dewPointC) })),
  },
  {
    source, title: 'clear sky: sky temperature', unit: 'K', tolerance: 0.05, toleranceReason: 'rounded to 0.01 K', origin: 'from memory',
    rows: ROWS.map(([airTempC, dewPointC, , expected]) => ({
      name: `air ${airTempC}, dew point ${dewPointC} °C`,
      expected,
      model: () => kelvinToCelsius(surroundingsRadiantTempK({ airTempK: celsiusToKelvin(airTempC), vapourPressurePa: vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dewPointC)), cloudFraction: 0, cloudWeight: 0.9, skyViewFraction: 1 })),
    })),
  },
  {
    source, title: 'clear sky: net loss of a surface at air temperature', unit: 'W/m2', tolerance: 0.1, toleranceReason: 'rounded to 0.1', origin: 'from memory',
    rows: ([[0, -5, -82.5], [-10, -15, -78]] as const).map(([airTempC, dewPointC, expected]) => ({
      name: `air ${airTempC}, dew point ${dewPointC} °C`,
      expected,
      model: () => SURFACE_EMISSIVITY * (downwelling(airTempC, dewPointC) - downwellingLongwaveWPerM2(celsiusToKelvin(airTempC), 1)),
    })),
  },
];
