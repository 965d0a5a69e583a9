import { assertInRange } from '../errors.js';
import { ZERO_CELSIUS_K } from '../units.js';
import { humidityRatioKgPerKg } from './moist-air.js';
import { saturationVapourPressureHylandWexlerPa } from './saturation-hyland-wexler.js';

// ASHRAE-F17 ch. 1 eq. 33 (above freezing) and eq. 35 (below), all in kJ/kg and degrees Celsius.
function humidityRatioAtWetBulb(airTempC: number, wetBulbC: number, saturated: number): number {
  return wetBulbC >= 0
    ? ((2501 - 2.326 * wetBulbC) * saturated - 1.006 * (airTempC - wetBulbC)) / (2501 + 1.86 * airTempC - 4.186 * wetBulbC)
    : ((2830 - 0.24 * wetBulbC) * saturated - 1.006 * (airTempC - wetBulbC)) / (2830 + 1.86 * airTempC - 2.1 * wetBulbC);
}

const BISECTIONS = 60;
const SEARCH_DEPTH_K = 60;

/**
 * Thermodynamic wet-bulb temperature.
 * Units: airTempK in K, humidityRatio in kg/kg, pressurePa in Pa; result in K.
 * Valid: air 213.15 to 323.15 K, not above saturation.
 * Outside: throws OutOfRangeError.
 * Source: ASHRAE-F17 ch. 1 eq. 33 and 35, solved by bisection.
 */
export function wetBulbK(state: { airTempK: number; humidityRatio: number; pressurePa: number }): number {
  assertInRange('airTempK', state.airTempK, { lowest: 213.15, highest: 323.15, unit: 'K' });
  let low = state.airTempK - SEARCH_DEPTH_K;
  let high = state.airTempK;
  for (let i = 0; i < BISECTIONS; i += 1) {
    const middle = (low + high) / 2;
    const saturated = humidityRatioKgPerKg(saturationVapourPressureHylandWexlerPa(middle), state.pressurePa);
    const ratio = humidityRatioAtWetBulb(state.airTempK - ZERO_CELSIUS_K, middle - ZERO_CELSIUS_K, saturated);
    if (ratio > state.humidityRatio) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
