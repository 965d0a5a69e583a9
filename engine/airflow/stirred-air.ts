import { assertInRange } from '../errors.js';

// Air at about 275 K (Incropera2007 table A.4).
const AIR_CONDUCTIVITY_W_PER_MK = 0.0243;
const AIR_KINEMATIC_VISCOSITY_M2_PER_S = 1.37e-5;
const AIR_PRANDTL = 0.71;
/** A fan that moves 0.01 m3/s for each m2 of floor stirs the air to about 0.3 m/s (trade rule for circulation fans, from memory). */
const RULE_FLOW_M_PER_S = 0.01;
const RULE_SPEED_M_PER_S = 0.3;
const FASTEST_M_PER_S = 1;

/** Air speed that a circulation fan keeps up. Units: m3/s, m2; m/s. Valid: any flow. Outside: never above 1 m/s. Source: trade rule as named above (from memory), speed with the square root of the flow (momentum). */
export const stirredSpeedMPerS = (airflowM3PerS: number, floorAreaM2: number): number => Math.min(FASTEST_M_PER_S, RULE_SPEED_M_PER_S * Math.sqrt(airflowM3PerS / floorAreaM2 / RULE_FLOW_M_PER_S));

/**
 * Forced convection on a flat surface of given length in slow air.
 * Units: m/s, m; W/(m2 K).
 * Valid: 0 to 3 m/s.
 * Outside: throws OutOfRangeError.
 * Source: laminar plate Nu = 0.664 Re^(1/2) Pr^(1/3) (Incropera2007 eq. 7.30).
 */
export function plateForcedWPerM2K(speedMPerS: number, lengthM: number): number {
  assertInRange('speedMPerS', speedMPerS, { lowest: 0, highest: 3, unit: 'm/s' });
  const reynolds = (speedMPerS * lengthM) / AIR_KINEMATIC_VISCOSITY_M2_PER_S;
  return (0.664 * Math.sqrt(reynolds) * Math.cbrt(AIR_PRANDTL) * AIR_CONDUCTIVITY_W_PER_MK) / lengthM;
}

/** Natural and forced convection together. Units: W/(m2 K). Valid: any. Outside: not applicable. Source: Incropera2007 eq. 9.64, cubes add. */
export const mixedWPerM2K = (naturalWPerM2K: number, forcedWPerM2K: number): number => (forcedWPerM2K === 0 ? naturalWPerM2K : Math.cbrt(naturalWPerM2K ** 3 + forcedWPerM2K ** 3));
