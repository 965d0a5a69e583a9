import { GRAVITY_M_PER_S2 } from '../constants.js';

export interface VentOpening {
  readonly openAreaM2: number;
  /** Half the height between low and high openings. */
  readonly stackHeightM: number;
}

// ASHRAE-F09 ch. 16 eq. 37-39: wind effectiveness for wind at an angle; discharge 0.40 + 0.0045 dT.
const WIND_EFFECTIVENESS = 0.3;
const DISCHARGE_AT_ZERO = 0.4;
const DISCHARGE_PER_K = 0.0045;

/**
 * Airflow through an open vent by wind and by warm air rising.
 * Units: m2, m, K, m/s; result in m3/s.
 * Valid: any temperatures and wind; flow does not depend on which side is warmer.
 * Outside: not applicable.
 * Source: ASHRAE-F09 ch. 16 eq. 37-39 as given in EnergyPlusEngRef (wind and stack with open area).
 */
export function ventFlowM3PerS(vent: VentOpening, state: { insideAirTempK: number; outsideAirTempK: number; windSpeedMPerS: number; windEffectiveness?: number }): number {
  const differenceK = Math.abs(state.insideAirTempK - state.outsideAirTempK);
  const wind = (state.windEffectiveness ?? WIND_EFFECTIVENESS) * vent.openAreaM2 * state.windSpeedMPerS;
  const discharge = DISCHARGE_AT_ZERO + DISCHARGE_PER_K * differenceK;
  const stack = discharge * vent.openAreaM2 * Math.sqrt((2 * GRAVITY_M_PER_S2 * vent.stackHeightM * differenceK) / Math.max(state.insideAirTempK, state.outsideAirTempK));
  return Math.hypot(wind, stack);
}
