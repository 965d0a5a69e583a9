import { assertInRange } from '../errors.js';
import { degreesToRadians } from '../units.js';
import type { Facet } from './shape.js';

/** Settled snow of some days: 0.1 to 0.2 W/(m K) (from memory). */
const SNOW_CONDUCTIVITY_W_PER_MK = 0.15;
/** Snow is black in the longwave (from memory: 0.97 to 0.99). */
export const SNOW_EMISSIVITY = 0.98;
/** A few cm swallow most light: exp(-depth / 3 cm) (from memory, extinction 20 to 40 /m). */
const LIGHT_DEPTH_M = 0.03;
/** Steeper film sheds its snow (project estimate). */
const SHEDS_ABOVE_RAD = degreesToRadians(55);
/** Where no snow lies its surface is one with the film: a coupling that is not felt, for nothing leaves that surface. */
const NO_SNOW_W_PER_M2K = 1000;

/** Share of the cover on which snow stays. Units: 0-1. Valid: facets of a house. Outside: not applicable. Source: geometry; film steeper than 55 degrees sheds (project estimate). */
export function snowHoldingShare(facets: readonly Facet[]): number {
  const all = facets.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  return facets.reduce((sum, { areaM2, tiltRad }) => (tiltRad < SHEDS_ABOVE_RAD ? sum + areaM2 : sum), 0) / all;
}

/** Share of the cover that lies under snow now. Units: m, 0-1. Valid: any depth. Outside: not applicable. Source: definition. */
export const snowyShare = (depthM: number, holdingShare: number): number => (depthM > 0 ? holdingShare : 0);

/**
 * Conductance from the outer film to the surface of the snow on it, for each m2 of the whole cover.
 * Units: m, 0-1; W/(m2 K).
 * Valid: depth 0 to 3 m.
 * Outside: throws OutOfRangeError.
 * Source: conduction through settled snow, 0.15 W/(m K) (from memory), on the share that holds it; the bare rest meets the wind by itself.
 */
export function snowConductanceWPerM2K(depthM: number, holdingShare: number): number {
  assertInRange('depthM', depthM, { lowest: 0, highest: 3, unit: 'm' });
  if (snowyShare(depthM, holdingShare) === 0) return NO_SNOW_W_PER_M2K;
  return Math.min(NO_SNOW_W_PER_M2K, holdingShare * (SNOW_CONDUCTIVITY_W_PER_MK / depthM));
}

/** Share of sunlight that still comes through. Units: m, 0-1. Valid: any depth. Outside: not applicable. Source: exponential extinction (from memory). */
export const sunThroughSnow = (depthM: number, holdingShare: number): number => 1 - holdingShare * (1 - Math.exp(-depthM / LIGHT_DEPTH_M));
