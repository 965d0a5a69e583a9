import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK } from '../constants.js';
import { assertInRange } from '../errors.js';

// Air at about 281 K (Incropera2007 table A.4).
const AIR_CONDUCTIVITY_W_PER_MK = 0.0248;
const AIR_KINEMATIC_VISCOSITY_M2_PER_S = 1.42e-5;
const AIR_PRANDTL = 0.71;
const LAMINAR_NUSSELT = 3.66;
const LAMINAR_BELOW = 2300;
const TURBULENT_ABOVE = 4000;

/** Soil around a tube is cut into rings whose radii grow by this factor: four of them reach what a night and the day before reach (project grid, tested against Carslaw1959). */
const RING_GROWTH = 1.6;
export const RING_COUNT = 4;

/** Outer radius of a ring of soil; ring -1 is the tube itself. Units: m. Valid: rings of this grid. Outside: not checked. Source: grid of this project. */
export const ringOuterRadiusM = (tubeRadiusM: number, ring: number): number => tubeRadiusM * RING_GROWTH ** (ring + 1);

/** Radius at which the temperature of a ring stands: the geometric mean, half of its resistance on either side. Units: m. Valid: rings of this grid. Outside: not checked. Source: logarithmic resistance of a ring (Incropera2007 eq. 3.28). */
export const ringMiddleRadiusM = (tubeRadiusM: number, ring: number): number => tubeRadiusM * RING_GROWTH ** (ring + 0.5);

function nusselt(reynolds: number): number {
  const friction = (0.79 * Math.log(Math.max(reynolds, TURBULENT_ABOVE)) - 1.64) ** -2;
  const turbulent = ((friction / 8) * (Math.max(reynolds, TURBULENT_ABOVE) - 1000) * AIR_PRANDTL) / (1 + 12.7 * Math.sqrt(friction / 8) * (AIR_PRANDTL ** (2 / 3) - 1));
  const share = Math.min(1, Math.max(0, (reynolds - LAMINAR_BELOW) / (TURBULENT_ABOVE - LAMINAR_BELOW)));
  return LAMINAR_NUSSELT + share * (turbulent - LAMINAR_NUSSELT);
}

/**
 * Heat transfer between air and the wall of a smooth round tube.
 * Units: airflow through one tube in m3/s, diameter in m; W/(m2 K).
 * Valid: diameter 0.02 to 1 m, air speed up to 20 m/s.
 * Outside: throws OutOfRangeError.
 * Source: Gnielinski1976 with the friction of Petukhov, laminar 3.66, straight between Re 2300 and 4000 (as in Incropera2007 eq. 8.21, 8.53, 8.62).
 */
export function tubeWallWPerM2K(airflowM3PerS: number, diameterM: number): number {
  assertInRange('diameterM', diameterM, { lowest: 0.02, highest: 1, unit: 'm' });
  const speed = airflowM3PerS / ((Math.PI * diameterM ** 2) / 4);
  assertInRange('air speed in the tube', speed, { lowest: 0, highest: 20, unit: 'm/s' });
  return (nusselt((speed * diameterM) / AIR_KINEMATIC_VISCOSITY_M2_PER_S) * AIR_CONDUCTIVITY_W_PER_MK) / diameterM;
}

/**
 * How near the air comes to the temperature of the soil ring around the tube: air film and half of the ring in series.
 * Units: m3/s through one tube, m, W/(m K), kg/m3; 0-1.
 * Valid: as tubeWallWPerM2K; flow above 0.
 * Outside: throws OutOfRangeError.
 * Source: effectiveness 1 - exp(-NTU) against a body of one temperature (Incropera2007 eq. 11.35a).
 */
export function earthTubeEffectiveness(tube: { airflowM3PerS: number; diameterM: number; lengthM: number; soilConductivityWPerMK: number; airDensityKgPerM3: number }): number {
  const { diameterM, lengthM } = tube;
  const filmMKPerW = 1 / (tubeWallWPerM2K(tube.airflowM3PerS, diameterM) * Math.PI * diameterM);
  const soilMKPerW = Math.log(ringMiddleRadiusM(diameterM / 2, 0) / (diameterM / 2)) / (2 * Math.PI * tube.soilConductivityWPerMK);
  const ntu = lengthM / (filmMKPerW + soilMKPerW) / (tube.airflowM3PerS * tube.airDensityKgPerM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK);
  return 1 - Math.exp(-ntu);
}
