import { celsiusToKelvin, humidityRatioKgPerKg, wetBulbK } from '../../../engine/index.js';

// The first service's own ratio: 10 mm of water are 7 cm of new snow.
const SNOW_M_PER_WATER_MM = 0.007;
// All snow up to the one wet-bulb temperature, all rain from the other, in proportion between (project estimate; half at 1 degree C from memory).
const ALL_SNOW_K = celsiusToKelvin(0);
const ALL_RAIN_K = celsiusToKelvin(2);
// Above this no air is dry enough for snow to last.
const TOO_WARM_K = celsiusToKelvin(15);

/**
 * Depth of new snow (m) from precipitation (mm of water). What falls is told by the wet-bulb temperature, not the air's:
 * in dry air flakes cool themselves as they melt, and reach the ground at some degrees above zero.
 */
export function snowfallM(precipitationMm: number, air: { readonly airTempK: number; readonly vapourPressurePa: number; readonly pressurePa: number }): number {
  const { airTempK, vapourPressurePa, pressurePa } = air;
  if (precipitationMm <= 0 || airTempK > TOO_WARM_K) return 0;
  const wetBulb = wetBulbK({ airTempK, humidityRatio: humidityRatioKgPerKg(vapourPressurePa, pressurePa), pressurePa });
  const snowShare = Math.min(1, Math.max(0, (ALL_RAIN_K - wetBulb) / (ALL_RAIN_K - ALL_SNOW_K)));
  return precipitationMm * snowShare * SNOW_M_PER_WATER_MM;
}
