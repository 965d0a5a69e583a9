import type { HouseGeometry } from '../cover/shape.js';
import { stackDiffuseTransmittance, stackTransmittance, type Sheet } from '../cover/shortwave-transmittance.js';
import type { SunPosition } from './position.js';

export interface HouseSun {
  readonly geometry: HouseGeometry;
  /** All sheets that the light passes. */
  readonly sheets: readonly Sheet[];
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

/** W for the whole house: all that is kept, and of it what falls on the solid wall. */
export interface SunKept {
  readonly totalW: number;
  readonly onWallW: number;
}

/**
 * Sunlight that comes through the cover and stays inside, from global and diffuse light on the flat.
 * Beam enters each facet by its own incidence; what would leave through the far side is only partly kept, unless a solid wall stands there.
 * Units: W/m2 horizontal in; W for the whole house out.
 * Valid: any sun position; below the horizon only diffuse light counts.
 * Outside: not applicable.
 * Source: isotropic sky (Liu1963) on tilted facets, Duffie2013 ch. 2 and 5.
 */
export function sunIntoHouse(house: HouseSun, sun: SunPosition, light: { globalWPerM2: number; diffuseWPerM2: number }): SunKept {
  const { geometry, sheets, cleanShare, groundAlbedo } = house;
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
    entering += facet.areaM2 * cosine * stackTransmittance(Math.acos(Math.min(1, cosine)), sheets);
  }
  const beam = beamHorizontal === 0 || entryAreaM2 === 0 ? NONE_KEPT : keptBeam({ beamNormal: beamHorizontal / sine, meanTransmittance: entering / entryAreaM2, entryAreaM2 }, geometry, sun);
  // Diffuse light enters all round and half of it leaves again on the other side; as much as falls on floor, wall and what stands there is kept.
  const wallM2 = geometry.solidWall?.areaM2 ?? 0;
  const shareOf = (areaM2: number): number => areaM2 / (geometry.coverAreaM2 + wallM2);
  const opaqueShare = shareOf(geometry.floorAreaM2 + wallM2);
  const diffuseW = stackDiffuseTransmittance(sheets) * diffuseAreaM2;
  return {
    totalW: cleanShare * (beam.totalW + diffuseW * (opaqueShare + KEPT_OF_PASSING_BEAM * (1 - opaqueShare))),
    onWallW: cleanShare * (beam.onWallW + diffuseW * shareOf(wallM2)),
  };
}

const NONE_KEPT: SunKept = { totalW: 0, onWallW: 0 };

function keptBeam(beam: { beamNormal: number; meanTransmittance: number; entryAreaM2: number }, geometry: HouseGeometry, sun: SunPosition): SunKept {
  const onFloorM2 = Math.min(geometry.floorAreaM2 * Math.sin(sun.altitudeRad), beam.entryAreaM2);
  const facing = geometry.solidWall ? Math.max(0, Math.cos(sun.altitudeRad) * Math.cos(sun.azimuthRad - geometry.solidWall.inwardAzimuthRad)) : 0;
  const onWallM2 = Math.min((geometry.solidWall?.areaM2 ?? 0) * facing, beam.entryAreaM2 - onFloorM2);
  const strength = beam.beamNormal * beam.meanTransmittance;
  return { totalW: strength * (onFloorM2 + onWallM2 + KEPT_OF_PASSING_BEAM * (beam.entryAreaM2 - onFloorM2 - onWallM2)), onWallW: strength * onWallM2 };
}
