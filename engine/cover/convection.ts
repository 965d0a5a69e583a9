import { assertInRange } from '../errors.js';

// Watmuff1977 (from memory): 2.8 + 3.0 v, convection only, to be used with an explicit sky term.
const STILL_AIR_W_PER_M2K = 2.8;
const PER_WIND_W_PER_M2K_PER_M_PER_S = 3.0;

/**
 * Convection between the outer film and moving outside air, without radiation.
 * Units: wind at the height of the cover in m/s; result in W/(m2 K).
 * Valid: 0 to 40 m/s.
 * Outside: throws OutOfRangeError.
 * Source: Watmuff1977 (coefficients from memory).
 */
export function outsideConvectionWPerM2K(windSpeedMPerS: number): number {
  assertInRange('windSpeedMPerS', windSpeedMPerS, { lowest: 0, highest: 40, unit: 'm/s' });
  return STILL_AIR_W_PER_M2K + PER_WIND_W_PER_M2K_PER_M_PER_S * windSpeedMPerS;
}

/**
 * Turbulent natural convection on surfaces of a film house, in |dT|^(1/3).
 * Warm air under a colder film, or soil warmer than the air over it, is unstable and mixes well; the other way round it is layered.
 */
export const UNSTABLE_W_PER_M2K43 = 1.63; // between Walton1983 enhanced at 45 degrees (1.44) and Papadakis1992 (1.95 dT^0.30); prior of this project
export const STABLE_W_PER_M2K43 = 1.1; // prior of this project; Walton1983 reduced at 45 degrees gives 0.87

/**
 * Natural convection coefficient for a temperature difference.
 * Units: K in; W/(m2 K) out.
 * Valid: any difference.
 * Outside: not applicable.
 * Source: form of Walton1983; coefficients as named above.
 */
export function naturalConvectionWPerM2K(differenceK: number, coefficientWPerM2K43: number): number {
  return coefficientWPerM2K43 * Math.cbrt(Math.abs(differenceK));
}

/** Air in a house never stands quite still: as if there were always this much of a difference (project estimate). It also keeps the law smooth where it turns round. */
const NEVER_STILL_K = 0.1;

/**
 * Natural convection of house air at a surface, mixing on one side of the turn and layered on the other, without a kink between them.
 * Units: how much warmer the lower of the two is, K; W/(m2 K).
 * Valid: any difference; beyond 1 K within 0.2 % of naturalConvectionWPerM2K with either coefficient.
 * Outside: not applicable.
 * Source: form of Walton1983; coefficients and the rest that never ends as named above (priors of this project).
 */
export function houseAirConvectionWPerM2K(lowerLessUpperK: number, coefficients: { mixing: number; layered: number }): number {
  const size2 = lowerLessUpperK * lowerLessUpperK + NEVER_STILL_K * NEVER_STILL_K;
  const mixingShare = (1 + lowerLessUpperK / Math.sqrt(size2)) / 2;
  return (coefficients.layered + mixingShare * (coefficients.mixing - coefficients.layered)) * Math.cbrt(Math.sqrt(size2));
}

/** Gap between two films, still air 10 to 30 cm wide (project prior; Bartok-GreenhouseManagement: the width makes little difference). */
export const FILM_GAP_W_PER_M2K = 2.0;
/** The same two films lying on each other in places after their blower has stopped (project estimate). */
export const SLACK_FILM_GAP_W_PER_M2K = 10;
export const VERTICAL_W_PER_M2K43 = 1.31; // Walton1983 vertical surface
