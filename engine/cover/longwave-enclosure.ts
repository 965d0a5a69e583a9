import type { LongwaveOptics } from './film-optics.js';

/** A patch of floor, bare or under row covers. */
export interface FloorPatch {
  readonly areaM2: number;
  readonly emissivity: number;
  /** Semi-transparent planes over it, the lowest first. */
  readonly covers: readonly LongwaveOptics[];
}

/** Bodies that stand on the floor, one temperature: they turn one half of their surface to the cover and the other to the floor, which they hide from it. */
export interface StandingBodies {
  /** What they turn to the cover, as much as they hide of the floor. */
  readonly shownM2: number;
  readonly emissivity: number;
}

/** A wall that lets no longwave through. */
export interface OpaqueWall {
  readonly areaM2: number;
  readonly emissivity: number;
  /** Area of the flat opening that floor and wall together turn to the cover: they form a corner and see each other. */
  readonly openingAreaM2: number;
}

/** The longwave enclosure of a film house: floor patches below, perhaps an inner curtain, one to four films above, surroundings outside. */
export interface LongwaveEnclosure {
  readonly coverAreaM2: number;
  /** From inside to outside. */
  readonly films: readonly LongwaveOptics[];
  readonly patches: readonly FloorPatch[];
  readonly bodies?: readonly StandingBodies[];
  /** A curtain drawn flat over the whole floor; the wall stands above it. */
  readonly curtain?: LongwaveOptics | null;
  readonly wall?: OpaqueWall | null;
  /** Snow on part of the cover: the last of the films then stands for it. */
  readonly snow?: RoofSnow | null;
}

/**
 * Snow lies on its film and is as warm below as that is: it sends back all that comes from below (its film passes 1 - share and emits nothing)
 * and gives off heat from its upper face alone.
 */
export interface RoofSnow {
  readonly share: number;
  readonly emissivity: number;
}

/** Where each emitting plane stands in the exchange matrix: all floors, all row covers, bodies on the floor, curtain, wall, films, surroundings last. */
export interface PlaneIndex {
  readonly floor: (patch: number) => number;
  /** Only for planes that are there; the lowest cover of a patch is 0. */
  readonly rowCover: (patch: number, cover: number) => number;
  readonly body: (body: number) => number;
  readonly curtain: number;
  readonly wall: number;
  readonly film: (film: number) => number;
  readonly surroundings: number;
  readonly count: number;
}

const NO_PLANE = -1;

export function planeIndex({ patches, bodies = [], films, curtain, wall }: LongwaveEnclosure): PlaneIndex {
  const coversBefore = patches.map((_, p) => patches.slice(0, p).reduce((sum, { covers }) => sum + covers.length, 0));
  const firstBody = patches.length + patches.reduce((sum, { covers }) => sum + covers.length, 0);
  let next = firstBody + bodies.length;
  const curtainPlane = curtain ? next++ : NO_PLANE;
  const wallPlane = wall ? next++ : NO_PLANE;
  const firstFilm = next;
  const surroundings = firstFilm + films.length;
  return {
    floor: (patch) => patch,
    rowCover: (patch, cover) => patches.length + coversBefore[patch]! + cover,
    body: (body) => firstBody + body,
    curtain: curtainPlane,
    wall: wallPlane,
    film: (film) => firstFilm + film,
    surroundings,
    count: surroundings + 1,
  };
}
