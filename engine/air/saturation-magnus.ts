import { assertInRange } from '../errors.js';
import { ZERO_CELSIUS_K } from '../units.js';

// WMO-No8 Annex 4.B (from memory): e = 6.112 hPa exp(a t / (b + t)), t in degrees Celsius, pure phase.
const MAGNUS_AT_ZERO_PA = 611.2;
const OVER_WATER = { a: 17.62, bK: 243.12 } as const;
const OVER_ICE = { a: 22.46, bK: 272.62 } as const;
type Phase = typeof OVER_WATER | typeof OVER_ICE;

// The formula's own ranges are -45..60 (water) and -65..0 (ice). The upper end is left open to 85 degrees C for sunlit films and dry soil in a shut house in summer (2 % off there).
const LOWEST_K = 173.15;
const HIGHEST_K = 358.15;

function magnusPa(tempK: number, phase: Phase): number {
  const t = tempK - ZERO_CELSIUS_K;
  return MAGNUS_AT_ZERO_PA * Math.exp((phase.a * t) / (phase.bK + t));
}

function inverseMagnusK(vapourPressurePa: number, phase: Phase): number {
  const x = Math.log(vapourPressurePa / MAGNUS_AT_ZERO_PA);
  return (phase.bK * x) / (phase.a - x) + ZERO_CELSIUS_K;
}

/**
 * Saturation vapour pressure over liquid water, also supercooled.
 * Units: tempK in K; result in Pa.
 * Valid: 173.15 to 358.15 K (within 0.3 % of Hyland-Wexler between -45 and 60 degrees C).
 * Outside: throws OutOfRangeError.
 * Source: WMO-No8 Annex 4.B (coefficients from memory).
 */
export function saturationVapourPressureOverWaterPa(tempK: number): number {
  assertInRange('tempK', tempK, { lowest: LOWEST_K, highest: HIGHEST_K, unit: 'K' });
  return magnusPa(tempK, OVER_WATER);
}

/**
 * Saturation vapour pressure over ice.
 * Units: tempK in K; result in Pa.
 * Valid: 173.15 to 273.16 K.
 * Outside: throws OutOfRangeError.
 * Source: WMO-No8 Annex 4.B (coefficients from memory).
 */
export function saturationVapourPressureOverIcePa(tempK: number): number {
  assertInRange('tempK', tempK, { lowest: LOWEST_K, highest: 273.16, unit: 'K' });
  return magnusPa(tempK, OVER_ICE);
}

/**
 * Saturation vapour pressure at a surface: over ice below freezing, over water above.
 * Units: tempK in K; result in Pa.
 * Valid: 173.15 to 358.15 K.
 * Outside: throws OutOfRangeError.
 * Source: WMO-No8 Annex 4.B (coefficients from memory).
 * Assumes: dew on a surface below 0 degrees C is frost.
 */
export function saturationVapourPressureAtSurfacePa(tempK: number): number {
  assertInRange('tempK', tempK, { lowest: LOWEST_K, highest: HIGHEST_K, unit: 'K' });
  return magnusPa(tempK, tempK < ZERO_CELSIUS_K ? OVER_ICE : OVER_WATER);
}

/**
 * Slope of the saturation vapour pressure at a surface, for the linearised moisture balance.
 * Units: tempK in K; result in Pa/K.
 * Valid: 173.15 to 358.15 K.
 * Outside: throws OutOfRangeError.
 * Source: derivative of WMO-No8 Annex 4.B, checked by finite difference.
 */
export function saturationSlopeAtSurfacePaPerK(tempK: number): number {
  const phase = tempK < ZERO_CELSIUS_K ? OVER_ICE : OVER_WATER;
  const t = tempK - ZERO_CELSIUS_K;
  return (saturationVapourPressureAtSurfacePa(tempK) * phase.a * phase.bK) / (phase.bK + t) ** 2;
}

/**
 * Vapour pressure from a dew point as weather services give it: over liquid water also below 0 degrees C.
 * Units: dewPointK in K; result in Pa.
 * Valid: 173.15 to 358.15 K.
 * Outside: throws OutOfRangeError.
 * Source: WMO-No8 Annex 4.B (coefficients from memory).
 */
export function vapourPressureFromDewPointOverWaterPa(dewPointK: number): number {
  return saturationVapourPressureOverWaterPa(dewPointK);
}

const LOWEST_VAPOUR_PRESSURE_PA = 1e-3;
const HIGHEST_VAPOUR_PRESSURE_PA = 50_000;

/**
 * Dew point over liquid water: the exact inverse of vapourPressureFromDewPointOverWaterPa.
 * Units: vapourPressurePa in Pa; result in K.
 * Valid: 0.001 to 50 000 Pa.
 * Outside: throws OutOfRangeError.
 * Source: WMO-No8 Annex 4.B inverted (coefficients from memory).
 */
export function dewPointOverWaterK(vapourPressurePa: number): number {
  assertInRange('vapourPressurePa', vapourPressurePa, { lowest: LOWEST_VAPOUR_PRESSURE_PA, highest: HIGHEST_VAPOUR_PRESSURE_PA, unit: 'Pa' });
  return inverseMagnusK(vapourPressurePa, OVER_WATER);
}

/**
 * Frost point: the temperature at which air saturates over ice.
 * Units: vapourPressurePa in Pa; result in K.
 * Valid: 0.001 to 611.2 Pa (above that the surface is not below freezing).
 * Outside: throws OutOfRangeError.
 * Source: WMO-No8 Annex 4.B inverted (coefficients from memory).
 */
export function frostPointK(vapourPressurePa: number): number {
  assertInRange('vapourPressurePa', vapourPressurePa, { lowest: LOWEST_VAPOUR_PRESSURE_PA, highest: MAGNUS_AT_ZERO_PA, unit: 'Pa' });
  return inverseMagnusK(vapourPressurePa, OVER_ICE);
}
