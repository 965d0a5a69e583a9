import type { SunPosition } from '../../../engine/sun/position.js';
import type { BoxCase, Opening, Wall } from './box-case.js';

export type Face = Wall | 'roof' | 'floor';
export type Vector = readonly [east: number, north: number, up: number];

/** A plane of the room: the coordinate that is fixed, and the two that run along it. */
interface Plane {
  readonly face: Face;
  readonly axis: 0 | 1 | 2;
  readonly at: number;
  /** 1 where the room lies on the side of larger coordinates. */
  readonly inward: 1 | -1;
  readonly u: 0 | 1 | 2;
  readonly v: 0 | 1 | 2;
}

export interface RoomSurface {
  readonly name: string;
  readonly face: Face;
  readonly areaM2: number;
  readonly opening: Opening | null;
}

/** The six planes of a room with the windows as surfaces of their own, after the planes. */
export interface Room {
  readonly sizeM: Vector;
  readonly surfaces: readonly RoomSurface[];
  /** Surface that a ray from a point inside or on a plane reaches. */
  readonly reachedFrom: (point: Vector, direction: Vector) => number;
  /** Points evenly spread over a surface. */
  readonly pointsOn: (surface: number, perSide: number) => readonly Vector[];
  readonly inwardNormal: (surface: number) => Vector;
}

const COINCIDENT_M = 1e-9;

export function roomOf({ size, windows }: Pick<BoxCase, 'size' | 'windows'>): Room {
  const sizeM: Vector = [size.eastWestM, size.northSouthM, size.heightM];
  const planes: readonly Plane[] = [
    { face: 'north', axis: 1, at: sizeM[1], inward: -1, u: 0, v: 2 },
    { face: 'east', axis: 0, at: sizeM[0], inward: -1, u: 1, v: 2 },
    { face: 'south', axis: 1, at: 0, inward: 1, u: 0, v: 2 },
    { face: 'west', axis: 0, at: 0, inward: 1, u: 1, v: 2 },
    { face: 'roof', axis: 2, at: sizeM[2], inward: -1, u: 0, v: 1 },
    { face: 'floor', axis: 2, at: 0, inward: 1, u: 0, v: 1 },
  ];
  const planeOf = (surface: number): Plane => (surface < planes.length ? planes[surface]! : planes.find(({ face }) => face === windows[surface - planes.length]!.wall)!);
  const windowAt = (face: Face, uM: number, vM: number): number =>
    windows.findIndex(({ wall, fromCornerM, widthM, sillM, heightM }) => wall === face && uM >= fromCornerM && uM < fromCornerM + widthM && vM >= sillM && vM < sillM + heightM);

  const reachedFrom = (point: Vector, direction: Vector): number => {
    let nearest = Number.POSITIVE_INFINITY;
    let reached = 0;
    planes.forEach(({ axis, at }, p) => {
      const distance = (at - point[axis]) / direction[axis];
      if (distance > COINCIDENT_M && distance < nearest) {
        nearest = distance;
        reached = p;
      }
    });
    const { face, u, v } = planes[reached]!;
    const window = windowAt(face, point[u] + nearest * direction[u], point[v] + nearest * direction[v]);
    return window < 0 ? reached : planes.length + window;
  };

  const pointsOn = (surface: number, perSide: number): readonly Vector[] => {
    const plane = planeOf(surface);
    const opening = surface < planes.length ? null : windows[surface - planes.length]!;
    const from = opening ? [opening.fromCornerM, opening.sillM] : [0, 0];
    const length = opening ? [opening.widthM, opening.heightM] : [sizeM[plane.u], sizeM[plane.v]];
    const points: Vector[] = [];
    for (let i = 0; i < perSide; i += 1) {
      for (let j = 0; j < perSide; j += 1) {
        const uM = from[0]! + ((i + 0.5) / perSide) * length[0]!;
        const vM = from[1]! + ((j + 0.5) / perSide) * length[1]!;
        if (!opening && windowAt(plane.face, uM, vM) >= 0) continue;
        const point: [number, number, number] = [0, 0, 0];
        point[plane.axis] = plane.at;
        point[plane.u] = uM;
        point[plane.v] = vM;
        points.push(point);
      }
    }
    return points;
  };

  const inwardNormal = (surface: number): Vector => {
    const { axis, inward } = planeOf(surface);
    const normal: [number, number, number] = [0, 0, 0];
    normal[axis] = inward;
    return normal;
  };

  const glassOn = (face: Face): number => windows.filter(({ wall }) => wall === face).reduce((sum, { widthM, heightM }) => sum + widthM * heightM, 0);
  const surfaces: readonly RoomSurface[] = [
    ...planes.map(({ face, u, v }): RoomSurface => ({ name: face, face, areaM2: sizeM[u] * sizeM[v] - glassOn(face), opening: null })),
    ...windows.map((opening, w): RoomSurface => ({ name: `${opening.wall} window ${w + 1}`, face: opening.wall, areaM2: opening.widthM * opening.heightM, opening })),
  ];
  return { sizeM, surfaces, reachedFrom, pointsOn, inwardNormal };
}

/** Direction from the room to the sun. */
export function towardsSun({ altitudeRad, azimuthRad }: SunPosition): Vector {
  return [Math.cos(altitudeRad) * Math.sin(azimuthRad), Math.cos(altitudeRad) * Math.cos(azimuthRad), Math.sin(altitudeRad)];
}

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
