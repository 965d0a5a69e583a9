import type { HouseGeometry } from '../cover/shape.js';
import { beamTransmittance, diffuseTransmittance } from '../cover/shortwave-transmittance.js';
import type { SunPosition } from './position.js';

export interface HouseSun {
  readonly geometry: HouseGeometry;
  readonly filmCount: number;
  /** What frame, dirt and age leave of the light. */
  readonly cleanShare: number;
  /** Albedo of the ground around the house: 0.2 bare or grass, 0.6-0.8 snow. */
  readonly groundAlbedo: number;
}

/** Sunlight outside the atmosphere at mean distance (Duffie2013 sec. 1.2, from memory). */
const SOLAR_CONSTANT_W_PER_M2 = 1361;
/** Below this the beam grazes the horizon and the split of a mean hour says nothing. */
const LOWEST_USEFUL_SINE = 0.035;
/** Beam that misses the floor meets standing crops, benches and the far film; this share stays inside (project estimate). */
const KEPT_OF_PASSING_BEAM = 0.4;

/**
 * Sunlight that comes through the cover and stays inside, from global and diffuse light on the flat.
 * Beam enters each facet by its own incidence; what would leave through the far side is only partly kept.
 * Units: W/m2 horizontal in; W for the whole house out.
 * Valid: any sun position; below the horizon only diffuse light counts.
 * Outside: not applicable.
 * Source: isotropic sky (Liu1963) on tilted facets, Duffie2013 ch. 2 and 5.
 */
export function sunIntoHouseW(house: HouseSun, sun: SunPosition, light: { globalWPerM2: number; diffuseWPerM2: number }): number {
  const { geometry, filmCount, cleanShare, groundAlbedo } = house;
  const sine = Math.sin(sun.altitudeRad);
  // What would make the beam stronger than outside the atmosphere is a mismatch of hour and sun: it counts as diffuse.
  const beamHorizontal = sine > LOWEST_USEFUL_SINE ? Math.min(SOLAR_CONSTANT_W_PER_M2 * sine, Math.max(0, light.globalWPerM2 - light.diffuseWPerM2)) : 0;
  const diffuse = light.globalWPerM2 - beamHorizontal;
  let diffuseAreaM2 = 0;
  let entryAreaM2 = 0;
  let entering = 0;
  for (const facet of geometry.facets) {
    const skyward = (1 + Math.cos(facet.tiltRad)) / 2;
    diffuseAreaM2 += facet.areaM2 * (skyward * diffuse + (1 - skyward) * groundAlbedo * light.globalWPerM2);
    const cosine = Math.cos(facet.tiltRad) * sine + Math.sin(facet.tiltRad) * Math.cos(sun.altitudeRad) * Math.cos(sun.azimuthRad - facet.azimuthRad);
    if (cosine <= 0 || beamHorizontal === 0) continue;
    entryAreaM2 += facet.areaM2 * cosine;
    entering += facet.areaM2 * cosine * beamTransmittance(Math.acos(Math.min(1, cosine)), filmCount);
  }
  const beamW = beamHorizontal === 0 ? 0 : keptBeamW({ beamNormal: beamHorizontal / sine, entering, entryAreaM2, floorSineM2: geometry.floorAreaM2 * sine });
  // Diffuse light enters all round and half of it leaves again on the other side; as much as falls on the floor and what stands there is kept.
  const diffuseKept = geometry.floorAreaM2 / geometry.coverAreaM2;
  const diffuseW = diffuseTransmittance(filmCount) * diffuseAreaM2 * (diffuseKept + KEPT_OF_PASSING_BEAM * (1 - diffuseKept));
  return cleanShare * (beamW + diffuseW);
}

function keptBeamW(beam: { beamNormal: number; entering: number; entryAreaM2: number; floorSineM2: number }): number {
  const meanTransmittance = beam.entering / beam.entryAreaM2;
  const onFloor = Math.min(beam.floorSineM2, beam.entryAreaM2);
  return beam.beamNormal * meanTransmittance * (onFloor + KEPT_OF_PASSING_BEAM * (beam.entryAreaM2 - onFloor));
}
