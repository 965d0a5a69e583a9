import { assertInRange } from '../errors.js';
import { profileOf, type ShapeKind, type Strip } from './profile.js';

/** A flat piece of cover. The outward normal is `tiltRad` from the vertical, towards `azimuthRad` clockwise from north. */
export interface Facet {
  readonly areaM2: number;
  readonly tiltRad: number;
  readonly azimuthRad: number;
}

export interface HouseShape {
  readonly kind: ShapeKind;
  readonly widthM: number;
  readonly lengthM: number;
  /** To the ridge; of a lean-to, to the top of its back wall. */
  readonly heightM: number;
  /** Height at which roof and side wall meet; a half-round starts at the ground. */
  readonly sideHeightM: number;
  /** Direction in which the ridge runs, clockwise from north. */
  readonly ridgeAzimuthRad: number;
  /** A wall along one long side that lets no light through; its height, and the direction that its outer face is nearest to. */
  readonly solidWall?: { readonly heightM: number; readonly facesAzimuthRad: number } | null;
}

export interface SolidWallGeometry {
  readonly areaM2: number;
  /** Flat opening that floor and wall together turn to the cover. */
  readonly openingAreaM2: number;
  /** Direction that its inner face looks. */
  readonly inwardAzimuthRad: number;
}

export interface HouseGeometry {
  readonly floorAreaM2: number;
  /** What lets light through: without the solid wall. */
  readonly coverAreaM2: number;
  readonly volumeM3: number;
  readonly perimeterM: number;
  readonly facets: readonly Facet[];
  readonly solidWall: SolidWallGeometry | null;
}

/**
 * Cover facets, areas and volume of a house.
 * Units: m and rad in; m2, m3, m out.
 * Valid: width, length 1 to 60 m, height 0.8 to 12 m, side height below the ridge, solid wall no higher than the house.
 * Outside: throws OutOfRangeError.
 * Source: geometry; cross-sections as named in profile.ts.
 */
export function houseGeometry(shape: HouseShape): HouseGeometry {
  assertInRange('widthM', shape.widthM, { lowest: 1, highest: 60, unit: 'm' });
  assertInRange('lengthM', shape.lengthM, { lowest: 1, highest: 60, unit: 'm' });
  assertInRange('heightM', shape.heightM, { lowest: 0.8, highest: 12, unit: 'm' });
  if (shape.solidWall) assertInRange('solidWall.heightM', shape.solidWall.heightM, { lowest: 0.1, highest: shape.heightM, unit: 'm' });
  const right = shape.ridgeAzimuthRad + Math.PI / 2;
  const wallSide = shape.solidWall ? sideFacing(right, shape.solidWall.facesAzimuthRad) : 1;
  const profile = profileOf(shape, wallSide);
  const glazed = profile.strips.map((strip) => (shape.solidWall && strip.side === wallSide ? above(strip, shape.solidWall.heightM) : strip)).filter(({ runM }) => runM > 0);
  const sides = glazed.map((strip): Facet => ({ areaM2: strip.runM * shape.lengthM, tiltRad: strip.tiltRad, azimuthRad: strip.side > 0 ? right : right + Math.PI }));
  const ends = [0, Math.PI].map((turn): Facet => ({ areaM2: profile.endAreaM2, tiltRad: Math.PI / 2, azimuthRad: shape.ridgeAzimuthRad + turn }));
  const facets = [...sides, ...ends];
  return {
    floorAreaM2: shape.widthM * shape.lengthM,
    coverAreaM2: facets.reduce((sum, facet) => sum + facet.areaM2, 0),
    volumeM3: profile.endAreaM2 * shape.lengthM,
    perimeterM: 2 * (shape.widthM + shape.lengthM),
    facets,
    solidWall: shape.solidWall
      ? {
          areaM2: shape.solidWall.heightM * shape.lengthM,
          openingAreaM2: shape.lengthM * Math.hypot(shape.widthM, shape.solidWall.heightM),
          inwardAzimuthRad: wallSide > 0 ? right + Math.PI : right,
        }
      : null,
  };
}

/** The long side whose outer face is nearest to a direction: 1 is the right of the ridge, -1 the left. */
const sideFacing = (rightAzimuthRad: number, azimuthRad: number): 1 | -1 => (Math.cos(rightAzimuthRad - azimuthRad) >= 0 ? 1 : -1);

/** What of a strip stands higher than the wall that replaces its lower part. */
function above(strip: Strip, wallHeightM: number): Strip {
  if (strip.topM <= strip.bottomM) return strip.bottomM >= wallHeightM ? strip : { ...strip, runM: 0 };
  const share = Math.min(1, Math.max(0, (strip.topM - wallHeightM) / (strip.topM - strip.bottomM)));
  return { ...strip, runM: share * strip.runM };
}
