import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, STEFAN_BOLTZMANN_W_PER_M2K4, SUBLIMATION_HEAT_J_PER_KG } from '../constants.js';
import { mixedWPerM2K, plateForcedWPerM2K } from '../airflow/stirred-air.js';
import { humidityRatioKgPerKg } from '../air/moist-air.js';
import { saturationSlopeAtSurfacePaPerK, saturationVapourPressureAtSurfacePa } from '../air/saturation-magnus.js';

export interface LeafSurroundings {
  readonly airTempK: number;
  /** Humidity of the air at the leaf; null leaves dew out of the balance. */
  readonly humidityRatio: number | null;
  readonly pressurePa: number;
  readonly longwaveFromAboveWPerM2: number;
  readonly longwaveFromBelowWPerM2: number;
  readonly hPerSideWPerM2K: number;
}

/** Longwave emissivity of leaves (from memory: 0.94 to 0.98). */
const LEAF_EMISSIVITY = 0.95;
const ITERATIONS = 12;
const SETTLED_K = 1e-6;
/** Still air around leaves of a bed at night, each side (between 4 and 8 for leaves of 5 to 10 cm; project estimate). */
const LEAF_H_IN_HOUSE_W_PER_M2K = 6;
const LEAF_H_UNDER_COVER_W_PER_M2K = 5;
/** Width of a leaf that stirred air sweeps along (project estimate for winter greens). */
const LEAF_LENGTH_M = 0.08;

/** Heat transfer of one side of a leaf; stirred air does not reach under a cover. Units: m/s; W/(m2 K). Valid: 0 to 3 m/s. Outside: throws OutOfRangeError. Source: still air as named above; plateForcedWPerM2K and mixedWPerM2K for stirred air. */
export const leafHeatTransferWPerM2K = ({ underCover, airSpeedMPerS }: { underCover: boolean; airSpeedMPerS: number }): number =>
  underCover ? LEAF_H_UNDER_COVER_W_PER_M2K : mixedWPerM2K(LEAF_H_IN_HOUSE_W_PER_M2K, plateForcedWPerM2K(airSpeedMPerS, LEAF_LENGTH_M));

/**
 * Temperature of a leaf that sees the cover above and the soil below, by night.
 * Units: K, W/m2, W/(m2 K) for one side; result in K.
 * Valid: night; sunlight is not part of the balance.
 * Outside: throws OutOfRangeError from the moisture formula for absurd temperatures.
 * Source: two-sided leaf energy balance 0 = e(Ld + Lu - 2 sigma T^4) + 2 h (Ta - T) (Campbell1998 ch. 12), with dew by the Lewis relation.
 */
export function leafTempK(leaf: LeafSurroundings): number {
  let tempK = leaf.airTempK;
  for (let i = 0; i < ITERATIONS; i += 1) {
    let gain = LEAF_EMISSIVITY * (leaf.longwaveFromAboveWPerM2 + leaf.longwaveFromBelowWPerM2 - 2 * STEFAN_BOLTZMANN_W_PER_M2K4 * tempK ** 4) + 2 * leaf.hPerSideWPerM2K * (leaf.airTempK - tempK);
    let slope = 8 * LEAF_EMISSIVITY * STEFAN_BOLTZMANN_W_PER_M2K4 * tempK ** 3 + 2 * leaf.hPerSideWPerM2K;
    if (leaf.humidityRatio !== null) {
      const saturatedPa = saturationVapourPressureAtSurfacePa(tempK);
      const saturated = humidityRatioKgPerKg(saturatedPa, leaf.pressurePa);
      if (leaf.humidityRatio > saturated) {
        const perRatio = (2 * leaf.hPerSideWPerM2K * SUBLIMATION_HEAT_J_PER_KG) / DRY_AIR_HEAT_CAPACITY_J_PER_KGK;
        gain += perRatio * (leaf.humidityRatio - saturated);
        slope += (perRatio * saturated * saturationSlopeAtSurfacePaPerK(tempK)) / saturatedPa;
      }
    }
    tempK += gain / slope;
    if (Math.abs(gain / slope) < SETTLED_K) break;
  }
  return tempK;
}
