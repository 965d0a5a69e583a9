// The standard atmosphere: lapse, and gravity over gas constant and lapse (ICAO, as in the pressure formula of ASHRAE).
const LAPSE_K_PER_M = 0.0065;
const EXPONENT = 5.2559;

/**
 * Air pressure (Pa) at a height from the pressure at sea level, which weather services compute from it
 * with the air temperature at the place and the standard lapse below it.
 */
export function pressureAtHeightPa(seaLevelPa: number, heightM: number, airTempK: number): number {
  return seaLevelPa * (airTempK / (airTempK + LAPSE_K_PER_M * heightM)) ** EXPONENT;
}
