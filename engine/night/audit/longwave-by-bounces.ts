import { longwaveReflectance, type LongwaveOptics } from '../../cover/film-optics.js';
import type { LongwaveEnclosure, PlaneIndex, StandingBodies } from '../../cover/longwave-enclosure.js';

const MOST_REFLECTIONS = 4000;
const SETTLED_W_PER_M2 = 1e-10;

/** Planes over each other, and the longwave that runs up and down above each of them, W/m2. */
interface Stack {
  readonly optics: readonly LongwaveOptics[];
  readonly planes: readonly number[];
  readonly areaM2: number;
  readonly up: number[];
  readonly down: number[];
}

interface Beams {
  readonly films: Stack;
  readonly curtain: Stack | null;
  readonly covers: readonly Stack[];
  /** What leaves each floor patch, and what falls on it. */
  readonly floorUp: number[];
  readonly ontoFloor: number[];
  /** What leaves each body that stands on the floor. */
  readonly bodyOut: number[];
  wallOut: number;
  onCover: number;
  overhead: number;
}

const stackOf = (optics: readonly LongwaveOptics[], planes: readonly number[], areaM2: number): Stack => ({ optics, planes, areaM2, up: optics.map(() => 0), down: optics.map(() => 0) });
const floorArea = ({ patches }: LongwaveEnclosure): number => patches.reduce((sum, { areaM2 }) => sum + areaM2, 0);
const bodiesOf = ({ bodies }: LongwaveEnclosure): readonly StandingBodies[] => bodies ?? [];

/**
 * Longwave that each plane takes up less what it gives off: reflections are followed until they die out, without any exchange area.
 * Units: W/m2 emitted (sigma T^4 of each plane) in, W out.
 * Valid: an enclosure that longwaveExchange accepts.
 * Outside: throws when reflections do not die out.
 * Source: successive reflections between grey planes (Siegel2002 ch. 5, from memory).
 */
export function longwaveGainsW(enclosure: LongwaveEnclosure, plane: PlaneIndex, emitted: readonly number[]): Float64Array {
  const { films, patches, coverAreaM2, curtain, wall } = enclosure;
  const beams: Beams = {
    films: stackOf(films, films.map((_, f) => plane.film(f)), coverAreaM2),
    curtain: curtain ? stackOf([curtain], [plane.curtain], floorArea(enclosure)) : null,
    covers: patches.map(({ covers, areaM2 }, p) => stackOf(covers, covers.map((_, k) => plane.rowCover(p, k)), areaM2)),
    floorUp: patches.map(() => 0),
    ontoFloor: patches.map(() => 0),
    bodyOut: bodiesOf(enclosure).map(() => 0),
    wallOut: 0,
    onCover: 0,
    overhead: 0,
  };
  for (let bounce = 0, before = -1; Math.abs(allLight(beams) - before) > SETTLED_W_PER_M2; bounce += 1) {
    if (bounce === MOST_REFLECTIONS) throw new Error(`reflections did not die out within ${MOST_REFLECTIONS} bounces`);
    before = allLight(beams);
    bounceOnce(enclosure, plane, emitted, beams);
  }
  const gainsW = new Float64Array(plane.count);
  patches.forEach(({ areaM2, emissivity }, p) => (gainsW[plane.floor(p)] = areaM2 * emissivity * (beams.ontoFloor[p]! - emitted[plane.floor(p)]!)));
  const overBeds = beams.curtain ? beams.curtain.down[0]! : beams.overhead;
  beams.covers.forEach((stack, p) => addAbsorbed(gainsW, stack, emitted, { below: beams.floorUp[p]!, above: besideBodies(enclosure, beams, overBeds) }));
  bodiesOf(enclosure).forEach(({ shownM2, emissivity }, b) => (gainsW[plane.body(b)] = shownM2 * emissivity * (overBeds + meanFromPatches(enclosure, beams) - 2 * emitted[plane.body(b)]!)));
  if (beams.curtain) addAbsorbed(gainsW, beams.curtain, emitted, { below: ontoCurtain(enclosure, beams), above: beams.overhead });
  if (wall) gainsW[plane.wall] = wall.areaM2 * wall.emissivity * (beams.overhead - emitted[plane.wall]!);
  addAbsorbed(gainsW, beams.films, emitted, { below: beams.onCover, above: emitted[plane.surroundings]! });
  const topmost = plane.film(films.length - 1);
  if (enclosure.snow) gainsW[topmost]! += coverAreaM2 * enclosure.snow.share * enclosure.snow.emissivity * (emitted[plane.surroundings]! - emitted[topmost]!);
  gainsW[plane.surroundings] = -gainsW.reduce((sum, gain) => sum + gain, 0);
  return gainsW;
}

/** Grows with every bounce until all light has found its end. */
const allLight = ({ films, floorUp, bodyOut, onCover, wallOut }: Beams): number => [...films.up, ...films.down, ...floorUp, ...bodyOut].reduce((sum, light) => sum + light, onCover + wallOut);

/** What passes or leaves a plane on one side: own emission, reflection of that side's light, transmission of the other side's. */
const leaving = (optics: LongwaveOptics, emitted: number, light: { sameSide: number; otherSide: number }): number =>
  optics.emissivity * emitted + longwaveReflectance(optics) * light.sameSide + optics.transmittance * light.otherSide;

interface Sides {
  readonly below: number;
  readonly above: number;
}

const sidesOf = (stack: Stack, k: number, outer: Sides): Sides => ({ below: k === 0 ? outer.below : stack.up[k - 1]!, above: k === stack.optics.length - 1 ? outer.above : stack.down[k + 1]! });

function bounceThrough(stack: Stack, emitted: readonly number[], outer: Sides): void {
  stack.optics.forEach((optics, k) => {
    const { below, above } = sidesOf(stack, k, outer);
    stack.up[k] = leaving(optics, emitted[stack.planes[k]!]!, { sameSide: above, otherSide: below });
    stack.down[k] = leaving(optics, emitted[stack.planes[k]!]!, { sameSide: below, otherSide: above });
  });
}

function addAbsorbed(gainsW: Float64Array, stack: Stack, emitted: readonly number[], outer: Sides): void {
  stack.optics.forEach(({ emissivity }, k) => {
    const { below, above } = sidesOf(stack, k, outer);
    gainsW[stack.planes[k]!] = stack.areaM2 * emissivity * (below + above - 2 * emitted[stack.planes[k]!]!);
  });
}

/** Area-weighted light from the floor and what lies on it. */
const meanFromPatches = (enclosure: LongwaveEnclosure, beams: Beams): number => enclosure.patches.reduce((sum, { areaM2 }, p) => sum + areaM2 * (beams.covers[p]!.up.at(-1) ?? beams.floorUp[p]!), 0) / floorArea(enclosure);

/** Light over the beds where bodies stand in its way: their own in its place, for as much of the floor as they show of themselves. */
const besideBodies = (enclosure: LongwaveEnclosure, beams: Beams, free: number): number => bodiesOf(enclosure).reduce((sum, { shownM2 }, b) => sum + (shownM2 / floorArea(enclosure)) * (beams.bodyOut[b]! - free), free);
const ontoCurtain = (enclosure: LongwaveEnclosure, beams: Beams): number => besideBodies(enclosure, beams, meanFromPatches(enclosure, beams));

function bounceOnce(enclosure: LongwaveEnclosure, plane: PlaneIndex, emitted: readonly number[], beams: Beams): void {
  const { patches, coverAreaM2, wall } = enclosure;
  const floorAreaM2 = floorArea(enclosure);
  const innerDown = beams.films.down[0]!;
  if (beams.curtain) bounceThrough(beams.curtain, emitted, { below: ontoCurtain(enclosure, beams), above: beams.overhead });
  const overBeds = beams.curtain ? beams.curtain.down[0]! : beams.overhead;
  const above = besideBodies(enclosure, beams, overBeds);
  bodiesOf(enclosure).forEach(({ emissivity }, b) => (beams.bodyOut[b] = emissivity * emitted[plane.body(b)]! + ((1 - emissivity) * (overBeds + meanFromPatches(enclosure, beams))) / 2));
  patches.forEach(({ emissivity }, p) => {
    const covers = beams.covers[p]!;
    bounceThrough(covers, emitted, { below: beams.floorUp[p]!, above });
    beams.ontoFloor[p] = covers.down[0] ?? above;
    beams.floorUp[p] = emissivity * emitted[plane.floor(p)]! + (1 - emissivity) * beams.ontoFloor[p];
  });
  if (wall) beams.wallOut = wall.emissivity * emitted[plane.wall]! + (1 - wall.emissivity) * beams.overhead;
  const fromFloor = beams.curtain ? beams.curtain.up[0]! : ontoCurtain(enclosure, beams);
  const opaqueAreaM2 = floorAreaM2 + (wall?.areaM2 ?? 0);
  const openingAreaM2 = wall?.openingAreaM2 ?? floorAreaM2;
  const meanOut = (floorAreaM2 * fromFloor + (wall?.areaM2 ?? 0) * beams.wallOut) / opaqueAreaM2;
  beams.overhead = innerDown + (1 - openingAreaM2 / opaqueAreaM2) * (meanOut - innerDown);
  beams.onCover = innerDown + (openingAreaM2 / coverAreaM2) * (meanOut - innerDown);
  bounceThrough(beams.films, emitted, { below: beams.onCover, above: emitted[plane.surroundings]! });
}
