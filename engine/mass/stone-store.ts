import { assertInRange } from '../errors.js';
import type { StoneRow } from '../data/stones.js';

/** A store of stone in two lumps: what the surface reaches within hours, and what lies behind it. */
export interface StoneLumps {
  readonly skinJPerK: number;
  readonly coreJPerK: number;
  readonly skinToCoreWPerK: number;
  /** From the skin to air, film and ground together. */
  readonly surfaceWPerK: number;
}

/** A heap against a wall is near a cube of which four faces are free (project estimate). */
const HEAP_FACES = 4;
const SKIN_M = 0.08;
/** A night reaches no deeper into stone: sqrt(pi alpha t) for 14 h is about 0.25 m (Carslaw1959 sec. 2.4). */
const DEEPEST_M = 0.25;
/** Natural convection 2.7 and radiation 4.6 W/(m2 K), as for a water drum (Churchill1975, evaluated with the ht library). */
const SURFACE_W_PER_M2K = 7.3;

/** Free surface of a heap. Units: m3 in, m2 out. Valid: any positive volume. Outside: not checked. Source: geometry of a cube (project estimate). */
export const heapSurfaceM2 = (volumeM3: number): number => HEAP_FACES * volumeM3 ** (2 / 3);

/**
 * A heap or wall of stone as two lumps.
 * Units: m3, m2; J/K and W/K out.
 * Valid: volume 0.001 to 1000 m3, exposed surface above 0; stone deeper than a night reaches is left out unless a depth is given (a fan reaches all of it).
 * Outside: throws OutOfRangeError.
 * Source: Biot number above 0.1, so one lump is too few (Incropera2007 sec. 5.1); depth of a night as named above.
 */
export function stoneLumps(stone: StoneRow, store: { volumeM3: number; exposedM2: number; deepestM?: number }): StoneLumps {
  assertInRange('volumeM3', store.volumeM3, { lowest: 0.001, highest: 1000, unit: 'm3' });
  assertInRange('exposedM2', store.exposedM2, { lowest: 0.01, highest: 5000, unit: 'm2' });
  const depthM = Math.min(store.deepestM ?? DEEPEST_M, store.volumeM3 / store.exposedM2);
  const skinM = Math.min(SKIN_M, depthM / 2);
  const coreM = depthM - skinM;
  const { volumetricHeatCapacityJPerM3K: capacity, thermalConductivityWPerMK: conductivity } = stone;
  return {
    skinJPerK: capacity * skinM * store.exposedM2,
    coreJPerK: capacity * coreM * store.exposedM2,
    skinToCoreWPerK: (conductivity * store.exposedM2) / ((skinM + coreM) / 2),
    surfaceWPerK: store.exposedM2 / (1 / SURFACE_W_PER_M2K + skinM / 2 / conductivity),
  };
}
