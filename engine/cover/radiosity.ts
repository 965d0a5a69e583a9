import { longwaveReflectance, type LongwaveOptics } from './film-optics.js';
import type { LongwaveEnclosure, PlaneIndex, StandingBodies } from './longwave-enclosure.js';

/** Linear equations for the radiosities of an enclosure, and who absorbs how much of which. */
export interface RadiosityEquations {
  readonly unknowns: number;
  /** The unknown that falls on the floor of a patch, and the one that leaves it. */
  readonly ontoFloor: readonly number[];
  readonly fromFloor: readonly number[];
  readonly rows: readonly EquationRow[];
  readonly absorptions: readonly Absorption[];
}

/** unknown = sum of factor x other unknowns + sum of factor x emissive powers of planes. */
interface EquationRow {
  readonly unknown: number;
  readonly terms: readonly Term[];
  readonly emissions: readonly Term[];
}

type Term = readonly [index: number, factor: number];

/** A plane takes area x absorptivity of an incident radiosity, or straight from the surroundings. */
interface Absorption {
  readonly receiver: number;
  readonly incident: number | 'surroundings';
  readonly weightM2: number;
}

/**
 * Radiosity equations of a film house. Opaque surfaces (floor or curtain, wall) see the cover through their common opening and,
 * where they form a corner, each other in proportion to their areas; the cover sees them and itself. A body on the floor turns one half
 * to what is overhead and one half to the floor; by reciprocity the floor sees as much less of what is overhead as the body shows of itself.
 * Units: m2, fractions.
 * Valid: opening at most the cover area.
 * Outside: not checked here; longwaveExchange checks.
 * Source: net-radiation method for semi-transparent grey planes (Siegel2002 ch. 5 and 17, from memory); corner by the crossed-string area.
 */
export function radiosityEquations(enclosure: LongwaveEnclosure, plane: PlaneIndex): RadiosityEquations {
  const { films, patches, bodies = [], coverAreaM2, curtain, wall, snow } = enclosure;
  const system = emptySystem(plane);
  const floorAreaM2 = patches.reduce((sum, patch) => sum + patch.areaM2, 0);
  const opaqueAreaM2 = floorAreaM2 + (wall?.areaM2 ?? 0);
  const openingAreaM2 = wall?.openingAreaM2 ?? floorAreaM2;
  const openShare = openingAreaM2 / opaqueAreaM2;

  const onCover = system.unknown();
  const { down: innerDown } = system.stack({ planes: films.map((optics, f) => ({ optics, plane: plane.film(f) })), areaM2: coverAreaM2, below: onCover, above: 'surroundings' });
  if (snow) system.absorb(plane.film(films.length - 1), 'surroundings', coverAreaM2 * snow.share * snow.emissivity);
  const overhead = wall ? system.unknown() : innerDown;
  const onCurtain = curtain ? system.unknown() : -1;
  const curtainSides = curtain ? system.stack({ planes: [{ optics: curtain, plane: plane.curtain }], areaM2: floorAreaM2, below: onCurtain, above: overhead }) : null;
  const overBeds = curtainSides?.down ?? overhead;

  const standing = bodies.map(({ shownM2 }) => ({ leaving: system.unknown(), shownM2 }));
  const hiddenShare = bodies.reduce((sum, { shownM2 }) => sum + shownM2, 0) / floorAreaM2;
  const ontoPatches = bodies.length > 0 ? system.unknown() : overBeds;
  if (bodies.length > 0) system.set(ontoPatches, [[overBeds, 1 - hiddenShare], ...standing.map(({ leaving, shownM2 }): Term => [leaving, shownM2 / floorAreaM2])], []);

  const ontoFloor: number[] = [];
  const fromFloor: number[] = [];
  const towardsCover = patches.map((patch, p): Term => {
    const up = system.unknown();
    const sides = patch.covers.length === 0 ? { down: ontoPatches, up } : system.stack({ planes: patch.covers.map((optics, k) => ({ optics, plane: plane.rowCover(p, k) })), areaM2: patch.areaM2, below: up, above: ontoPatches });
    system.set(up, [[sides.down, 1 - patch.emissivity]], [[plane.floor(p), patch.emissivity]]);
    system.absorb(plane.floor(p), sides.down, patch.areaM2 * patch.emissivity);
    ontoFloor.push(sides.down);
    fromFloor.push(up);
    return [sides.up, patch.areaM2];
  });
  addBodies(system, { plane, bodies, standing, overBeds, fromPatches: towardsCover.map(([up, areaM2]) => [up, areaM2 / floorAreaM2]) });
  const fromBelow: readonly Term[] = [...towardsCover.map(([up, areaM2]): Term => [up, areaM2 * (1 - hiddenShare)]), ...standing.map(({ leaving, shownM2 }): Term => [leaving, shownM2])];
  const opaque: Term[] = curtainSides ? [[curtainSides.up, floorAreaM2]] : [...fromBelow];
  if (curtainSides) system.set(onCurtain, fromBelow.map(([up, areaM2]) => [up, areaM2 / floorAreaM2]), []);
  if (wall) {
    const wallOut = system.unknown();
    system.set(wallOut, [[overhead, 1 - wall.emissivity]], [[plane.wall, wall.emissivity]]);
    system.absorb(plane.wall, overhead, wall.areaM2 * wall.emissivity);
    const all: Term[] = [...opaque, [wallOut, wall.areaM2]];
    system.set(overhead, [[innerDown, openShare], ...all.map(([out, areaM2]): Term => [out, ((1 - openShare) * areaM2) / opaqueAreaM2])], []);
    opaque.splice(0, opaque.length, ...all);
  }
  const coverSees = openingAreaM2 / coverAreaM2;
  system.set(onCover, [...opaque.map(([out, areaM2]): Term => [out, (coverSees * areaM2) / opaqueAreaM2]), [innerDown, 1 - coverSees]], []);
  return { unknowns: system.count(), ontoFloor, fromFloor, rows: system.rows, absorptions: system.absorptions };
}

/** Bodies take from overhead and from the patches, half and half, and send alike to both. */
function addBodies(system: System, among: { plane: PlaneIndex; bodies: readonly StandingBodies[]; standing: readonly { leaving: number }[]; overBeds: number; fromPatches: readonly Term[] }): void {
  const { plane, bodies, standing, overBeds, fromPatches } = among;
  bodies.forEach(({ shownM2, emissivity }, b) => {
    system.set(standing[b]!.leaving, [[overBeds, (1 - emissivity) / 2], ...fromPatches.map(([up, share]): Term => [up, (share * (1 - emissivity)) / 2])], [[plane.body(b), emissivity]]);
    system.absorb(plane.body(b), overBeds, shownM2 * emissivity);
    for (const [up, share] of fromPatches) system.absorb(plane.body(b), up, share * shownM2 * emissivity);
  });
}

interface StackedPlanes {
  /** From the lowest to the highest. */
  readonly planes: readonly { readonly optics: LongwaveOptics; readonly plane: number }[];
  readonly areaM2: number;
  /** What comes from below, and what comes from above. */
  readonly below: number;
  readonly above: number | 'surroundings';
}

interface System {
  readonly rows: EquationRow[];
  readonly absorptions: Absorption[];
  readonly count: () => number;
  readonly unknown: () => number;
  readonly set: (unknown: number, terms: readonly Term[], emissions: readonly Term[]) => void;
  readonly absorb: (receiver: number, incident: Absorption['incident'], weightM2: number) => void;
  /** Adds planes that lie over each other; returns what leaves the lowest downwards and the highest upwards. */
  readonly stack: (stack: StackedPlanes) => { down: number; up: number };
}

function emptySystem(plane: PlaneIndex): System {
  let count = 0;
  const rows: EquationRow[] = [];
  const absorptions: Absorption[] = [];
  const unknown = (): number => count++;
  const set: System['set'] = (row, terms, emissions) => void rows.push({ unknown: row, terms, emissions });
  const absorb: System['absorb'] = (receiver, incident, weightM2) => void absorptions.push({ receiver, incident, weightM2 });
  const stack: System['stack'] = ({ planes, areaM2, below, above }) => {
    const sides = planes.map(() => ({ down: unknown(), up: unknown() }));
    planes.forEach(({ optics, plane: own }, k) => {
      const incidentBelow = k === 0 ? below : sides[k - 1]!.up;
      const incidentAbove = k === planes.length - 1 ? above : sides[k + 1]!.down;
      const reflectance = longwaveReflectance(optics);
      const leaving = (out: number, sameSide: Absorption['incident'], otherSide: Absorption['incident']): void => {
        const parts = [[sameSide, reflectance], [otherSide, optics.transmittance]] as const;
        const terms = parts.filter((part): part is readonly [number, number] => part[0] !== 'surroundings');
        const fromOutside = parts.filter(([incident]) => incident === 'surroundings').map(([, factor]): Term => [plane.surroundings, factor]);
        set(out, terms, [[own, optics.emissivity], ...fromOutside]);
      };
      leaving(sides[k]!.down, incidentBelow, incidentAbove);
      leaving(sides[k]!.up, incidentAbove, incidentBelow);
      for (const incident of [incidentBelow, incidentAbove]) absorb(own, incident, areaM2 * optics.emissivity);
    });
    return { down: sides[0]!.down, up: sides.at(-1)!.up };
  };
  return { rows, absorptions, count: () => count, unknown, set, absorb, stack };
}
