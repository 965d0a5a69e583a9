import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../constants.js';
import { assertInRange } from '../errors.js';

// Air at about 285 K (Incropera2007 table A.4).
const AIR_CONDUCTIVITY_W_PER_MK = 0.025;
const AIR_KINEMATIC_VISCOSITY_M2_PER_S = 1.47e-5;
const AIR_PRANDTL = 0.71;
const ITERATIONS = 30;
const SETTLED_K = 1e-6;

/** What hangs in the sun: a bulb (sphere), or a stem or cable probe (cylinder) across the sun and the air. */
export interface Thermometer {
  readonly shape: 'sphere' | 'cylinder';
  readonly diameterM: number;
  /** Share of sunlight that it takes up: bare metal 0.3, white 0.3 to 0.4, red spirit or grey 0.6 to 0.8, black 0.95 (from memory). */
  readonly absorptance: number;
  readonly emissivity: number;
}

export interface SunnyPlace {
  readonly airTempK: number;
  /** Mean radiant temperature of what is around it. */
  readonly radiantTempK: number;
  readonly airSpeedMPerS: number;
  /** Beam on a plane that faces the sun, diffuse light on the flat, and what comes up from below, where the thermometer hangs. */
  readonly beamNormalWPerM2: number;
  readonly diffuseWPerM2: number;
  readonly reflectedWPerM2: number;
}

/** Shadow over surface: pi r2 over 4 pi r2, and 2 r over 2 pi r. */
const SHADOW_SHARE = { sphere: 1 / 4, cylinder: 1 / Math.PI } as const;

/**
 * Nusselt number of air that blows across a cylinder.
 * Units: Reynolds number by the diameter in; dimensionless.
 * Valid: Reynolds times Prandtl number above 0.2.
 * Outside: the form stays smooth.
 * Source: Churchill and Bernstein as Incropera2007 eq. 7.54 (from memory).
 */
export function cylinderNusselt(reynolds: number): number {
  const laminar = (0.62 * Math.sqrt(reynolds) * Math.cbrt(AIR_PRANDTL)) / (1 + (0.4 / AIR_PRANDTL) ** (2 / 3)) ** 0.25;
  return 0.3 + laminar * (1 + (reynolds / 282_000) ** 0.625) ** 0.8;
}

/**
 * Nusselt number of air that blows past a sphere.
 * Units: Reynolds number by the diameter in; dimensionless.
 * Valid: Reynolds number 3.5 to 76 000; tends to 2 in still air.
 * Outside: the form stays smooth.
 * Source: Whitaker as Incropera2007 eq. 7.56 (from memory), viscosity taken as even.
 */
export const sphereNusselt = (reynolds: number): number => 2 + (0.4 * Math.sqrt(reynolds) + 0.06 * reynolds ** (2 / 3)) * AIR_PRANDTL ** 0.4;

/**
 * Heat transfer between a thermometer and the air.
 * Units: m, m/s; W/(m2 K).
 * Valid: diameter 0.002 to 0.1 m, air speed 0.05 to 10 m/s.
 * Outside: throws OutOfRangeError.
 * Source: cylinderNusselt, sphereNusselt.
 */
export function thermometerToAirWPerM2K({ shape, diameterM }: Pick<Thermometer, 'shape' | 'diameterM'>, airSpeedMPerS: number): number {
  assertInRange('diameterM', diameterM, { lowest: 0.002, highest: 0.1, unit: 'm' });
  assertInRange('airSpeedMPerS', airSpeedMPerS, { lowest: 0.05, highest: 10, unit: 'm/s' });
  const reynolds = (airSpeedMPerS * diameterM) / AIR_KINEMATIC_VISCOSITY_M2_PER_S;
  return ((shape === 'sphere' ? sphereNusselt(reynolds) : cylinderNusselt(reynolds)) * AIR_CONDUCTIVITY_W_PER_MK) / diameterM;
}

/**
 * What a thermometer in the sun shows: absorbed sun = convection + longwave.
 * Units: K, W/m2, m, m/s; K out.
 * Valid: as thermometerToAirWPerM2K; beam 0 to 1400 W/m2, diffuse and reflected 0 to 1000 W/m2.
 * Outside: throws OutOfRangeError.
 * Source: energy balance of a small body (Incropera2007 ch. 1 and 12); diffuse light falls on half of it.
 */
export function sunlitThermometerTempK(thermometer: Thermometer, place: SunnyPlace): number {
  assertInRange('beamNormalWPerM2', place.beamNormalWPerM2, { lowest: 0, highest: 1400, unit: 'W/m2' });
  assertInRange('diffuseWPerM2', place.diffuseWPerM2, { lowest: 0, highest: 1000, unit: 'W/m2' });
  assertInRange('reflectedWPerM2', place.reflectedWPerM2, { lowest: 0, highest: 1000, unit: 'W/m2' });
  const { absorptance, emissivity, shape } = thermometer;
  const absorbed = absorptance * (SHADOW_SHARE[shape] * place.beamNormalWPerM2 + (place.diffuseWPerM2 + place.reflectedWPerM2) / 2);
  const toAir = thermometerToAirWPerM2K(thermometer, place.airSpeedMPerS);
  const radiating = emissivity * STEFAN_BOLTZMANN_W_PER_M2K4;
  let tempK = place.airTempK;
  for (let i = 0; i < ITERATIONS; i += 1) {
    const change = (absorbed + toAir * (place.airTempK - tempK) + radiating * (place.radiantTempK ** 4 - tempK ** 4)) / (toAir + 4 * radiating * tempK ** 3);
    tempK += change;
    if (Math.abs(change) < SETTLED_K) break;
  }
  return tempK;
}
