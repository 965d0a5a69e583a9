import {
  DRY_AIR_GAS_CONSTANT_J_PER_KGK,
  DRY_AIR_HEAT_CAPACITY_J_PER_KGK,
  STANDARD_PRESSURE_PA,
  VAPORISATION_HEAT_J_PER_KG,
  VAPOUR_HEAT_CAPACITY_J_PER_KGK,
  WATER_TO_DRY_AIR_MASS_RATIO,
} from '../constants.js';
import { assertInRange } from '../errors.js';
import { ZERO_CELSIUS_K } from '../units.js';

/**
 * Humidity ratio of moist air.
 * Units: vapourPressurePa and pressurePa in Pa; result in kg of vapour per kg of dry air.
 * Valid: vapour pressure from 0 to below half of the air pressure.
 * Outside: throws OutOfRangeError.
 * Source: ASHRAE-F17 ch. 1 eq. 20.
 */
export function humidityRatioKgPerKg(vapourPressurePa: number, pressurePa: number): number {
  assertInRange('vapourPressurePa', vapourPressurePa, { lowest: 0, highest: pressurePa / 2, unit: 'Pa' });
  return (WATER_TO_DRY_AIR_MASS_RATIO * vapourPressurePa) / (pressurePa - vapourPressurePa);
}

/**
 * Vapour pressure from a humidity ratio: the exact inverse of humidityRatioKgPerKg.
 * Units: humidityRatio in kg/kg, pressurePa in Pa; result in Pa.
 * Valid: humidity ratio 0 to 0.6 kg/kg.
 * Outside: throws OutOfRangeError.
 * Source: ASHRAE-F17 ch. 1 eq. 20 inverted.
 */
export function vapourPressureFromHumidityRatioPa(humidityRatio: number, pressurePa: number): number {
  assertInRange('humidityRatio', humidityRatio, { lowest: 0, highest: 0.6, unit: 'kg/kg' });
  return (humidityRatio * pressurePa) / (WATER_TO_DRY_AIR_MASS_RATIO + humidityRatio);
}

// ASHRAE-F17 ch. 1 eq. 26: v = R (T)(1 + 1.607858 W) / p, per kg of dry air.
const MOLAR_RATIO_IN_VOLUME = 1.607858;

/**
 * Density of moist air.
 * Units: airTempK in K, humidityRatio in kg/kg, pressurePa in Pa; result in kg/m3.
 * Valid: 173.15 to 373.15 K.
 * Outside: throws OutOfRangeError.
 * Source: ASHRAE-F17 ch. 1 eq. 26 and rho = (1 + W) / v.
 */
export function moistAirDensityKgPerM3(state: { airTempK: number; humidityRatio: number; pressurePa: number }): number {
  assertInRange('airTempK', state.airTempK, { lowest: 173.15, highest: 373.15, unit: 'K' });
  const volumeM3PerKg = (DRY_AIR_GAS_CONSTANT_J_PER_KGK * state.airTempK * (1 + MOLAR_RATIO_IN_VOLUME * state.humidityRatio)) / state.pressurePa;
  return (1 + state.humidityRatio) / volumeM3PerKg;
}

/**
 * Specific enthalpy of moist air, zero for dry air at 0 degrees C.
 * Units: airTempK in K, humidityRatio in kg/kg; result in J per kg of dry air.
 * Valid: 173.15 to 373.15 K.
 * Outside: throws OutOfRangeError.
 * Source: ASHRAE-F17 ch. 1 eq. 30.
 */
export function moistAirEnthalpyJPerKg(airTempK: number, humidityRatio: number): number {
  assertInRange('airTempK', airTempK, { lowest: 173.15, highest: 373.15, unit: 'K' });
  const t = airTempK - ZERO_CELSIUS_K;
  return DRY_AIR_HEAT_CAPACITY_J_PER_KGK * t + humidityRatio * (VAPORISATION_HEAT_J_PER_KG + VAPOUR_HEAT_CAPACITY_J_PER_KGK * t);
}

// ASHRAE-F17 ch. 1 eq. 3: p = 101325 (1 - 2.25577e-5 z)^5.2559.
const PRESSURE_LAPSE_PER_M = 2.25577e-5;
const PRESSURE_EXPONENT = 5.2559;

/**
 * Pressure of the standard atmosphere at a height.
 * Units: elevationM in m above sea level; result in Pa.
 * Valid: -500 to 9000 m.
 * Outside: throws OutOfRangeError.
 * Source: ASHRAE-F17 ch. 1 eq. 3.
 */
export function standardPressurePa(elevationM: number): number {
  assertInRange('elevationM', elevationM, { lowest: -500, highest: 9000, unit: 'm' });
  return STANDARD_PRESSURE_PA * (1 - PRESSURE_LAPSE_PER_M * elevationM) ** PRESSURE_EXPONENT;
}
