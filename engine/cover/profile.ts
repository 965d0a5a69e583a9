import { assertInRange } from '../errors.js';
import { degreesToRadians } from '../units.js';

export const SHAPES = ['half-round', 'gothic', 'gable', 'lean-to'] as const;
export type ShapeKind = (typeof SHAPES)[number];

/** A straight piece of the cross-section, seen along the ridge. */
export interface Strip {
  readonly runM: number;
  /** Of the outward normal, from the vertical. */
  readonly tiltRad: number;
  /** 1 leans to the right of the ridge, -1 to the left. */
  readonly side: 1 | -1;
  readonly bottomM: number;
  readonly topM: number;
}

export interface Profile {
  readonly strips: readonly Strip[];
  readonly endAreaM2: number;
}

interface CrossSection {
  readonly kind: ShapeKind;
  readonly widthM: number;
  readonly heightM: number;
  readonly sideHeightM: number;
}

const ARC_STRIPS = 8;
const ARC_POINTS_PER_STRIP = 16;
/** A pointed arch meets at the ridge about this steep (project estimate from usual bent hoops). */
const GOTHIC_RIDGE_TILT_RAD = degreesToRadians(25);

/**
 * Cross-section of a house, cut into straight strips.
 * Units: m and rad.
 * Valid: side height from 0 to 0.1 m below the ridge.
 * Outside: throws OutOfRangeError.
 * Source: geometry. Half-round: half of an ellipse. Gothic: a curve from an upright side to a ridge of 25 degrees. Lean-to: one slope from the back wall down.
 */
export function profileOf(section: CrossSection, backSide: 1 | -1): Profile {
  if (section.kind === 'half-round') return halfEllipse(section);
  assertInRange('sideHeightM', section.sideHeightM, { lowest: 0, highest: section.heightM - 0.1, unit: 'm' });
  if (section.kind === 'lean-to') return leanTo(section, backSide);
  return section.kind === 'gable' ? gable(section) : gothic(section);
}

type Point = readonly [acrossM: number, upM: number];

/** Strips along a curve that runs on the right side from low to high; the other half is its mirror image. */
function bothSides(curve: (share: number) => Point): Strip[] {
  return Array.from({ length: ARC_STRIPS }, (_, i) => stripOf(curve, i / ARC_STRIPS, (i + 1) / ARC_STRIPS)).flatMap((strip) => [strip, { ...strip, side: -1 as const }]);
}

function stripOf(curve: (share: number) => Point, from: number, to: number): Strip {
  let runM = 0;
  for (let j = 0; j < ARC_POINTS_PER_STRIP; j += 1) {
    const [x0, z0] = curve(from + ((to - from) * j) / ARC_POINTS_PER_STRIP);
    const [x1, z1] = curve(from + ((to - from) * (j + 1)) / ARC_POINTS_PER_STRIP);
    runM += Math.hypot(x1 - x0, z1 - z0);
  }
  const [lowX, lowZ] = curve(from);
  const [highX, highZ] = curve(to);
  return { runM, tiltRad: Math.atan2(highZ - lowZ, lowX - highX), side: 1, bottomM: lowZ, topM: highZ };
}

function halfEllipse({ widthM, heightM }: CrossSection): Profile {
  const a = widthM / 2;
  return { strips: bothSides((share) => [a * Math.cos((share * Math.PI) / 2), heightM * Math.sin((share * Math.PI) / 2)]), endAreaM2: (Math.PI * a * heightM) / 2 };
}

const wall = (heightM: number, side: 1 | -1): Strip => ({ runM: heightM, tiltRad: Math.PI / 2, side, bottomM: 0, topM: heightM });

function gable({ widthM, heightM, sideHeightM }: CrossSection): Profile {
  const rise = heightM - sideHeightM;
  const sides = ([1, -1] as const).flatMap((side): Strip[] => [{ runM: Math.hypot(widthM / 2, rise), tiltRad: Math.atan2(rise, widthM / 2), side, bottomM: sideHeightM, topM: heightM }, wall(sideHeightM, side)]);
  return { strips: sides.filter(({ runM }) => runM > 0), endAreaM2: widthM * (sideHeightM + rise / 2) };
}

/** Quadratic curve whose first tangent is upright and whose last has the tilt of the ridge; too flat for that, it is a gable. */
function gothic(section: CrossSection): Profile {
  const { widthM, heightM, sideHeightM } = section;
  const half = widthM / 2;
  const shoulderM = heightM - Math.tan(GOTHIC_RIDGE_TILT_RAD) * half;
  if (shoulderM <= sideHeightM) return gable(section);
  const curve = (t: number): Point => [half * (1 - t * t), (1 - t) ** 2 * sideHeightM + 2 * t * (1 - t) * shoulderM + t * t * heightM];
  const sides = [wall(sideHeightM, 1), wall(sideHeightM, -1)].filter(({ runM }) => runM > 0);
  // Area between the curve and its springing line: integral of x dz over t, twice, for both sides.
  const arcAreaM2 = 2 * half * ((2 * (shoulderM - sideHeightM)) * QUADRATIC_FIRST + 2 * (heightM - shoulderM) * QUADRATIC_SECOND);
  return { strips: [...sides, ...bothSides(curve)], endAreaM2: widthM * sideHeightM + arcAreaM2 };
}

/** Integrals over t from 0 to 1 of (1 - t^2)(1 - t) and of (1 - t^2) t, where dz = [2 (1 - t)(shoulder - side) + 2 t (height - shoulder)] dt. */
const QUADRATIC_FIRST = 5 / 12;
const QUADRATIC_SECOND = 1 / 4;

function leanTo({ widthM, heightM, sideHeightM }: CrossSection, backSide: 1 | -1): Profile {
  const front = backSide > 0 ? -1 : 1;
  const drop = heightM - sideHeightM;
  const slope: Strip = { runM: Math.hypot(widthM, drop), tiltRad: Math.atan2(drop, widthM), side: front, bottomM: sideHeightM, topM: heightM };
  return { strips: [slope, wall(sideHeightM, front), wall(heightM, backSide)].filter(({ runM }) => runM > 0), endAreaM2: widthM * (sideHeightM + drop / 2) };
}
