import { absorbedAfterBounces, firstFall, type DiffuseRoom } from './bounces.js';
import type { BoxCase } from './box-case.js';
import type { Faces } from './box-bodies.js';
import { glazingOptics, type GlazingOptics } from './glazing-optics.js';
import type { GlazingBodies } from './glazing-bodies.js';
import { towardsSun, type Room, type Vector } from './room.js';
import { lightOnPlane, skyShape } from './sky-light-perez.js';
import type { SunLight } from './sun-clock.js';

/** Rays along each side of a window that follow the beam to where it falls. */
const BEAM_RAYS_PER_SIDE = 8;

/** Bodies of every surface of the room, walls first. */
export interface SurfaceBodies {
  readonly walls: readonly Faces[];
  readonly windows: readonly GlazingBodies[];
}

export interface SunInBox {
  /** Adds what each body absorbs, W; returns what passed the windows, W. */
  readonly absorb: (light: SunLight, powerW: Float64Array) => number;
}

export function sunInBox(boxCase: BoxCase, room: Room, viewAreasM2: Float64Array, bodies: SurfaceBodies): SunInBox {
  const { finish, site, glazing } = boxCase;
  const optics = glazing ? glazingOptics(glazing) : null;
  const wallCount = bodies.walls.length;
  const diffuseRoom = lightRoom(boxCase, room, viewAreasM2, optics);
  const absorbedOf = room.surfaces.map((_, j) => absorbedAfterBounces(diffuseRoom, room.surfaces.map((__, i) => (i === j ? 1 : 0))));
  const absorbedOfWindow = bodies.windows.map((_, w) => absorbedAfterBounces(diffuseRoom, firstFall(diffuseRoom, wallCount + w)));
  const beamPoints = bodies.windows.map((_, w) => room.pointsOn(wallCount + w, BEAM_RAYS_PER_SIDE));
  const outward = room.surfaces.map((_, i): Vector => {
    const [east, north, up] = room.inwardNormal(i);
    return [-east, -north, -up];
  });

  const onInside = (watts: number, absorbed: Float64Array, powerW: Float64Array): void => {
    bodies.walls.forEach(({ inside }, i) => (powerW[inside]! += watts * absorbed[i]!));
    bodies.windows.forEach(({ panes }, w) => {
      const byPane = optics!.diffuseFromInside.absorbed;
      const all = byPane.reduce((sum, share) => sum + share, 0);
      panes.forEach((pane, p) => intoPane(pane, all === 0 ? 0 : (watts * absorbed[wallCount + w]! * byPane[p]!) / all, powerW));
    });
  };

  const absorb: SunInBox['absorb'] = (light, powerW) => {
    const shape = skyShape(light);
    room.surfaces.slice(0, wallCount).forEach(({ face, areaM2 }, i) => {
      if (face === 'floor') return;
      const { beam, diffuse } = lightOnPlane(light, shape, outward[i]!, site.groundReflectance);
      powerW[bodies.walls[i]!.outside]! += finish.solarAbsorptanceOutside * areaM2 * (beam + diffuse);
    });
    let passedW = 0;
    bodies.windows.forEach(({ panes }, w) => {
      const { areaM2 } = room.surfaces[wallCount + w]!;
      const { beam, diffuse, incidenceRad } = lightOnPlane(light, shape, outward[wallCount + w]!, site.groundReflectance);
      const diffuseShares = optics!.diffuseFromOutside;
      const beamShares = optics!.beam(incidenceRad);
      panes.forEach((pane, p) => intoPane(pane, areaM2 * (beam * beamShares.absorbed[p]! + diffuse * diffuseShares.absorbed[p]!), powerW));
      onInside(areaM2 * diffuse * diffuseShares.passed, absorbedOfWindow[w]!, powerW);
      const beamW = areaM2 * beam * beamShares.passed;
      passedW += beamW + areaM2 * diffuse * diffuseShares.passed;
      if (beamW <= 0) return;
      const [east, north, up] = towardsSun(light.sun);
      const points = beamPoints[w]!;
      const fallen = new Float64Array(room.surfaces.length);
      for (const point of points) fallen[room.reachedFrom(point, [-east, -north, -up])]! += beamW / points.length;
      fallen.forEach((watts, i) => watts > 0 && onInside(watts, absorbedOf[i]!, powerW));
    });
    return passedW;
  };
  return { absorb };
}

/** Half to either face of a pane. */
function intoPane({ outside, inside }: Faces, watts: number, powerW: Float64Array): void {
  powerW[outside]! += watts / 2;
  powerW[inside]! += watts / 2;
}

function lightRoom({ finish }: BoxCase, room: Room, viewAreasM2: Float64Array, optics: GlazingOptics | null): DiffuseRoom {
  const fromInside = optics?.diffuseFromInside;
  const absorbedByGlass = fromInside?.absorbed.reduce((sum, share) => sum + share, 0) ?? 0;
  return {
    areasM2: room.surfaces.map(({ areaM2 }) => areaM2),
    viewAreasM2,
    absorptances: room.surfaces.map(({ opening }) => (opening ? absorbedByGlass : finish.solarAbsorptanceInside)),
    reflectances: room.surfaces.map(({ opening }) => (opening ? Math.max(0, 1 - absorbedByGlass - (fromInside?.passed ?? 0)) : 1 - finish.solarAbsorptanceInside)),
  };
}
