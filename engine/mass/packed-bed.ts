import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK } from '../constants.js';
import { assertInRange } from '../errors.js';

// Air at about 285 K (Incropera2007 table A.4).
const AIR_CONDUCTIVITY_W_PER_MK = 0.025;
const AIR_VISCOSITY_PA_S = 1.77e-5;
const AIR_PRANDTL = 0.71;
/** Share of air between loose stones (from memory: 0.35 to 0.45). */
const VOID_SHARE = 0.4;

/** Nusselt number in a bed of stones. Units: dimensionless. Valid: Reynolds number (by stone size) 15 to 8500. Outside: the form stays smooth and tends to 2. Source: Wakao1982, Nu = 2 + 1.1 Pr^(1/3) Re^0.6. */
export const packedBedNusselt = (reynolds: number): number => 2 + 1.1 * Math.cbrt(AIR_PRANDTL) * reynolds ** 0.6;

/**
 * Heat transfer between moving air and stones, for each m3 of bed.
 * Units: mass flux of air in kg/(m2 s) of bed section, stone size in m; W/(m3 K).
 * Valid: flux 0 to 2 kg/(m2 s), stones 0.005 to 0.5 m.
 * Outside: throws OutOfRangeError.
 * Source: Wakao1982; surface of spheres 6 (1 - void)/D.
 */
export function packedBedWPerM3K(massFluxKgPerM2S: number, stoneSizeM: number): number {
  assertInRange('massFluxKgPerM2S', massFluxKgPerM2S, { lowest: 0, highest: 2, unit: 'kg/(m2 s)' });
  assertInRange('stoneSizeM', stoneSizeM, { lowest: 0.005, highest: 0.5, unit: 'm' });
  const nusselt = packedBedNusselt((massFluxKgPerM2S * stoneSizeM) / AIR_VISCOSITY_PA_S);
  return ((6 * (1 - VOID_SHARE)) / stoneSizeM) * ((nusselt * AIR_CONDUCTIVITY_W_PER_MK) / stoneSizeM);
}

/**
 * How near the air comes to the temperature of the stones it is blown through.
 * Units: kg/s, m3, m2 of section, m; 0-1.
 * Valid: flow above 0.
 * Outside: throws OutOfRangeError through packedBedWPerM3K.
 * Source: effectiveness 1 - exp(-NTU) against a body of one temperature (Incropera2007 eq. 11.35a).
 */
export function packedBedEffectiveness(bed: { massFlowKgPerS: number; volumeM3: number; sectionM2: number; stoneSizeM: number }): number {
  const perM3 = packedBedWPerM3K(bed.massFlowKgPerS / bed.sectionM2, bed.stoneSizeM);
  return 1 - Math.exp((-perM3 * bed.volumeM3) / (bed.massFlowKgPerS * DRY_AIR_HEAT_CAPACITY_J_PER_KGK));
}
