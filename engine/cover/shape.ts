import { assertInRange } from '../errors.js';

/** A flat piece of cover. The outward normal is `tiltRad` from the vertical, towards `azimuthRad` clockwise from north. */
export interface Facet {
  readonly areaM2: number;
  readonly tiltRad: number;
  readonly azimuthRad: number;
}

export interface HouseShape {
  readonly kind: 'half-round' | 'gable';
  readonly widthM: number;
  readonly lengthM: number;
  readonly heightM: number;
  /** Height of the side wall of a gable; a half-round starts at the ground. */
  readonly sideHeightM: number;
  /** Direction in which the ridge runs, clockwise from north. */
  readonly ridgeAzimuthRad: number;
}

export interface HouseGeometry {
  readonly floorAreaM2: number;
  readonly coverAreaM2: number;
  readonly volumeM3: number;
  readonly perimeterM: number;
  readonly facets: readonly Facet[];
}

const ARC_STRIPS = 16;
const ARC_POINTS_PER_STRIP = 16;

/**
 * Cover facets, areas and volume of a house.
 * Units: m and rad in; m2, m3, m out.
 * Valid: width, length 1 to 60 m, height 0.8 to 12 m, gable side height below the ridge.
 * Outside: throws OutOfRangeError.
 * Source: geometry; a half-round is half of an ellipse (a half circle when height is half of the width), cut into 16 strips.
 */
export function houseGeometry(shape: HouseShape): HouseGeometry {
  assertInRange('widthM', shape.widthM, { lowest: 1, highest: 60, unit: 'm' });
  assertInRange('lengthM', shape.lengthM, { lowest: 1, highest: 60, unit: 'm' });
  assertInRange('heightM', shape.heightM, { lowest: 0.8, highest: 12, unit: 'm' });
  const profile = shape.kind === 'half-round' ? halfEllipse(shape) : gable(shape);
  const right = shape.ridgeAzimuthRad + Math.PI / 2;
  const sides = profile.strips.map((strip): Facet => ({
    areaM2: strip.runM * shape.lengthM,
    tiltRad: Math.abs(strip.tiltRad),
    azimuthRad: strip.tiltRad >= 0 ? right : right + Math.PI,
  }));
  const ends = [0, Math.PI].map((turn): Facet => ({ areaM2: profile.endAreaM2, tiltRad: Math.PI / 2, azimuthRad: shape.ridgeAzimuthRad + turn }));
  const facets = [...sides, ...ends];
  return {
    floorAreaM2: shape.widthM * shape.lengthM,
    coverAreaM2: facets.reduce((sum, facet) => sum + facet.areaM2, 0),
    volumeM3: profile.endAreaM2 * shape.lengthM,
    perimeterM: 2 * (shape.widthM + shape.lengthM),
    facets,
  };
}

interface Profile {
  /** Strips of the cross-section; a positive tilt leans to the right of the ridge direction. */
  readonly strips: readonly { runM: number; tiltRad: number }[];
  readonly endAreaM2: number;
}

function halfEllipse({ widthM, heightM }: HouseShape): Profile {
  const a = widthM / 2;
  const point = (angle: number): readonly [number, number] => [a * Math.cos(angle), heightM * Math.sin(angle)];
  const strips = Array.from({ length: ARC_STRIPS }, (_, i) => {
    const from = (i * Math.PI) / ARC_STRIPS;
    let runM = 0;
    for (let j = 0; j < ARC_POINTS_PER_STRIP; j += 1) {
      const [x0, z0] = point(from + (j * Math.PI) / (ARC_STRIPS * ARC_POINTS_PER_STRIP));
      const [x1, z1] = point(from + ((j + 1) * Math.PI) / (ARC_STRIPS * ARC_POINTS_PER_STRIP));
      runM += Math.hypot(x1 - x0, z1 - z0);
    }
    const middle = from + Math.PI / (2 * ARC_STRIPS);
    return { runM, tiltRad: Math.atan2(Math.cos(middle) / a, Math.sin(middle) / heightM) };
  });
  return { strips, endAreaM2: (Math.PI * a * heightM) / 2 };
}

function gable({ widthM, heightM, sideHeightM }: HouseShape): Profile {
  assertInRange('sideHeightM', sideHeightM, { lowest: 0, highest: heightM - 0.1, unit: 'm' });
  const rise = heightM - sideHeightM;
  const slope = { runM: Math.hypot(widthM / 2, rise), tiltRad: Math.atan2(rise, widthM / 2) };
  const wall = { runM: sideHeightM, tiltRad: Math.PI / 2 };
  const strips = [slope, { ...slope, tiltRad: -slope.tiltRad }, wall, { ...wall, tiltRad: -wall.tiltRad }].filter(({ runM }) => runM > 0);
  return { strips, endAreaM2: widthM * (sideHeightM + rise / 2) };
}
