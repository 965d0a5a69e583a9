import { FUSION_HEAT_J_PER_KG, ICE_HEAT_CAPACITY_J_PER_KGK, WATER_HEAT_CAPACITY_J_PER_KGK } from '../constants.js';
import { assertInRange } from '../errors.js';
import type { HeatStore } from '../network/enthalpy.js';

/** A 208 L drum standing free (0.572 m across, 0.876 m high): 1.83 m2 at 6.9 W/(m2 K), natural convection and radiation outside, water film inside (ht library, Churchill1975). */
const REFERENCE_LITRES = 208;
const REFERENCE_UA_W_PER_K = 12.6;
/** Water freezes at one temperature; a narrow band keeps heat and temperature in step. */
const FREEZING_BAND_K = 0.2;

/** Drums that touch each other or stand in stacks hide this much of each other from air, cover and sun (prior 0.6-0.8; a taut string round a long row of drums leaves 0.69 of their sides and tops). */
export const TOUCHING_FACTOR = 0.7;

/**
 * Heat store of a body of water that may freeze.
 * Units: litres (1 L = 1 kg); J/K and J out.
 * Valid: 1 to 100 000 L.
 * Outside: throws OutOfRangeError.
 * Source: Incropera2007 tables A.3 and A.6.
 */
export function waterStore(litres: number): HeatStore {
  assertInRange('litres', litres, { lowest: 1, highest: 100_000, unit: 'L' });
  return {
    thawedJPerK: litres * WATER_HEAT_CAPACITY_J_PER_KGK,
    frozenJPerK: litres * ICE_HEAT_CAPACITY_J_PER_KGK,
    latentJ: litres * FUSION_HEAT_J_PER_KG,
    freezingBandK: FREEZING_BAND_K,
  };
}

/**
 * Heat transfer of one drum to its surroundings, scaled by surface from the 208 L drum.
 * Units: litres; W/K out.
 * Valid: 1 to 5000 L a vessel.
 * Outside: throws OutOfRangeError.
 * Source: prior of this project from Churchill1975 films: 12.6 W/K for a 208 L drum; surface goes with volume to the power 2/3.
 */
export function drumConductanceWPerK(litres: number): number {
  assertInRange('litres', litres, { lowest: 1, highest: 5000, unit: 'L' });
  return REFERENCE_UA_W_PER_K * (litres / REFERENCE_LITRES) ** (2 / 3);
}
