import type { HouseGeometry } from '../../../engine/cover/shape.js';
import { sunIntoHouse } from '../../../engine/sun/house-gain.js';
import { degreesToRadians } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/**
 * Liu and Jordan 1963, isotropic sky on a tilted plane, as evaluated by pvlib (6382338a): beam, sky and ground each. The house's own
 * function is asked for one facet of 1 m2 that passes all light, over a floor so wide that nothing is lost again.
 */
export const source = 'Liu1963';

const PASSES_ALL = [{ refractiveIndex: 1, absorbedShare: 0 }] as const;
const WIDE_FLOOR_M2 = 100;

function onPlaneWPerM2(plane: { tiltDeg: number; azimuthDeg: number }, sun: { zenithDeg: number; azimuthDeg: number }, light: { globalWPerM2: number; diffuseWPerM2: number; albedo: number }): number {
  const geometry: HouseGeometry = {
    floorAreaM2: WIDE_FLOOR_M2,
    coverAreaM2: WIDE_FLOOR_M2,
    volumeM3: 1,
    perimeterM: 1,
    facets: [{ areaM2: 1, tiltRad: degreesToRadians(plane.tiltDeg), azimuthRad: degreesToRadians(plane.azimuthDeg) }],
    solidWall: null,
  };
  const position = { altitudeRad: degreesToRadians(90 - sun.zenithDeg), azimuthRad: degreesToRadians(sun.azimuthDeg), distanceAu: 1 };
  return sunIntoHouse({ geometry, sheets: PASSES_ALL, cleanShare: 1, groundAlbedo: light.albedo }, position, light).totalW;
}

const SOUTH_45 = { tiltDeg: 45, azimuthDeg: 180 };
const WALL = { tiltDeg: 90, azimuthDeg: 180 };
const SUN_65 = { zenithDeg: 65, azimuthDeg: 180 };
const ALBEDO = 0.2;
/** Beam of 700 straight at the sun and 80 of diffuse light. */
const GLOBAL = 700 * Math.cos(degreesToRadians(65)) + 80;
const on45 = (albedo: number, diffuseWPerM2 = 80): number => onPlaneWPerM2(SOUTH_45, SUN_65, { globalWPerM2: diffuseWPerM2 + GLOBAL - 80, diffuseWPerM2, albedo });

const NREL_SUN = { zenithDeg: 50.1116, azimuthDeg: 194.3402 };
const nrelBeam = 800 * Math.cos(degreesToRadians(NREL_SUN.zenithDeg));
const row = (name: string, expected: number, model: () => number): PublishedRow => ({ name, expected, model });

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'light on a tilted plane', unit: 'W/m2', tolerance: 0.05, toleranceReason: 'global light of the printed case is rounded to 0.1', origin: 'library run',
    rows: [
      row('45 degrees to the south, sun at 65 degrees from the zenith: all', 737.08, () => on45(ALBEDO)),
      row('the same: beam', 657.79, () => on45(0, 0)),
      row('the same: sky', 68.28, () => on45(0) - on45(0, 0)),
      row('the same: ground', 11.01, () => on45(ALBEDO) - on45(0)),
      row('wall to the south, same sun', 712, () => onPlaneWPerM2(WALL, SUN_65, { globalWPerM2: GLOBAL, diffuseWPerM2: 80, albedo: ALBEDO })),
    ],
  },
  {
    source, title: 'plane of 60 degrees towards 170, sun of the worked example of Reda2004', unit: 'W/m2', tolerance: 0.3, toleranceReason: 'the printed case gives global 600 beside beam 800 and diffuse 87, which do not add up; beam and diffuse are kept', origin: 'library run',
    rows: [row('all', 836.11, () => onPlaneWPerM2({ tiltDeg: 60, azimuthDeg: 170 }, NREL_SUN, { globalWPerM2: nrelBeam + 87, diffuseWPerM2: 87, albedo: ALBEDO }))],
  },
];
