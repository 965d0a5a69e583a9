import type { Room, Vector } from './room.js';

/** Points along each side of a surface and rays over the half-sphere of each: exact to about 0.001 of a view factor. */
const POINTS_PER_SIDE = 16;
const RAYS = 1000;
/** Turning by the golden section spreads rays evenly and keeps them from lining up with the walls. */
const GOLDEN_TURN_RAD = Math.PI * (Math.sqrt(5) - 1);
/** Rounds that bring rows to their areas; each halves what is left several times over. */
const ROUNDS = 50;

/**
 * Area times view factor between all surfaces of the room, row-major: rays leave each surface by the cosine law and are followed to what
 * they reach. Made symmetric (reciprocity), then scaled until each row sums to its area (nothing leaves a closed room).
 */
export function viewAreasM2(room: Room): Float64Array {
  const count = room.surfaces.length;
  const rays = room.surfaces.map((_, i) => raysOver(room.inwardNormal(i)));
  const areas = new Float64Array(count * count);
  room.surfaces.forEach(({ areaM2 }, i) => {
    const points = room.pointsOn(i, POINTS_PER_SIDE);
    const each = areaM2 / (points.length * rays[i]!.length);
    for (const point of points) for (const ray of rays[i]!) areas[i * count + room.reachedFrom(point, ray)]! += each;
  });
  for (let i = 0; i < count; i += 1) {
    areas[i * count + i] = 0;
    for (let j = i + 1; j < count; j += 1) {
      const mean = (areas[i * count + j]! + areas[j * count + i]!) / 2;
      areas[i * count + j] = mean;
      areas[j * count + i] = mean;
    }
  }
  for (let round = 0; round < ROUNDS; round += 1) {
    const scale = room.surfaces.map(({ areaM2 }, i) => Math.sqrt(areaM2 / areas.subarray(i * count, (i + 1) * count).reduce((sum, area) => sum + area, 0)));
    for (let i = 0; i < count; i += 1) for (let j = 0; j < count; j += 1) areas[i * count + j]! *= scale[i]! * scale[j]!;
  }
  return areas;
}

/** Directions over the half-sphere about a normal along an axis, as dense as the cosine law asks. */
function raysOver(normal: Vector): readonly Vector[] {
  const axis = normal.findIndex((part) => part !== 0);
  return Array.from({ length: RAYS }, (_, k): Vector => {
    const sine = Math.sqrt((k + 0.5) / RAYS);
    const turn = k * GOLDEN_TURN_RAD;
    const ray: [number, number, number] = [0, 0, 0];
    ray[axis] = normal[axis]! * Math.sqrt(1 - sine * sine);
    ray[(axis + 1) % 3] = sine * Math.cos(turn);
    ray[(axis + 2) % 3] = sine * Math.sin(turn);
    return ray;
  });
}
