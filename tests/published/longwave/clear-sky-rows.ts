import { vapourPressureFromDewPointOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { downwellingLongwaveWPerM2 } from '../../../engine/sky/downwelling-longwave.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import type { PublishedRow } from '../published-table.js';
import type { ClearSkyFormula } from './clear-sky-formulas.js';

/** Air and dew point, degrees C, of the list that every formula was evaluated for. */
const AIR_AND_DEW_POINT_C = [[20, 10], [10, 5], [5, 0], [0, -5], [-5, -10], [-10, -15], [-20, -25]] as const;
/** The pressure at which the pressure terms of the formulas vanish. */
const BASE_PRESSURE_PA = 100_000;

/** Rows of one formula: downwelling longwave in W/m2 in the order of that list. */
export const clearSkyRows = (formula: ClearSkyFormula, longwaveWPerM2: readonly number[]): readonly PublishedRow[] =>
  AIR_AND_DEW_POINT_C.map(([airC, dewPointC], i) => {
    const airTempK = celsiusToKelvin(airC);
    return {
      name: `air ${airC}, dew point ${dewPointC} °C`,
      expected: longwaveWPerM2[i]!,
      model: () => downwellingLongwaveWPerM2(airTempK, formula({ airTempK, vapourPressurePa: vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dewPointC)), pressurePa: BASE_PRESSURE_PA })),
    };
  });

/** What all these tables say of their tolerance. */
export const CLEAR_SKY_TOLERANCE = { unit: 'W/m2', tolerance: 0.1, toleranceReason: 'rounded to 0.01 W/m2', origin: 'from memory' } as const;
