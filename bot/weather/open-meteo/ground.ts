import { celsiusToKelvin, type GroundOutside } from '../../../engine/index.js';
import { preferred } from './columns.js';
import type { WireAnswer } from './wire.js';

// Soil changes so slowly that the last known day stands for now.
const SOIL_SEARCH_HOURS = 24;

/** Soil temperatures now and the mean of the past year; what is not known is told to `missing`. */
export function groundOutside(
  answer: WireAnswer,
  known: { readonly nowS: number; readonly yearlyMeanAirTempK: number | null },
  missing: (variable: string, instead: string) => void,
): GroundOutside {
  const nowIndex = answer.timeS.findLastIndex((t) => t <= known.nowS);
  const soilK = (variable: 'soil_temperature_18cm' | 'soil_temperature_54cm'): number | null => {
    const recent = preferred(answer, variable)?.values.slice(Math.max(0, nowIndex - SOIL_SEARCH_HOURS), nowIndex + 1);
    const valueC = recent?.findLast((value) => value !== null) ?? null;
    if (valueC === null) missing(variable, 'not known');
    return valueC === null ? null : celsiusToKelvin(valueC);
  };
  const soilTemp18cmK = soilK('soil_temperature_18cm');
  const soilTemp54cmK = soilK('soil_temperature_54cm');
  if (known.yearlyMeanAirTempK === null) missing('mean air temperature of the past year', 'not known');
  return { soilTemp18cmK, soilTemp54cmK, yearlyMeanAirTempK: known.yearlyMeanAirTempK };
}
