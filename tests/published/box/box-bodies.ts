import { MASSLESS, sensibleStore } from '../../../engine/network/enthalpy.js';
import { steadyConductor, type Conductor, type NetworkNode, type Radiator } from '../../../engine/network/network.js';
import type { Layer } from './box-case.js';

/** Bodies and couplings of a box while it is being put together. */
export interface BoxBodies {
  readonly nodes: NetworkNode[];
  readonly conductors: Conductor[];
  readonly radiators: Radiator[];
}

export function addBody(bodies: BoxBodies, name: string, capacityJPerK = 0): number {
  return bodies.nodes.push({ name, store: capacityJPerK === 0 ? MASSLESS : sensibleStore(capacityJPerK) }) - 1;
}

/** The two faces of a wall or of a pane. */
export interface Faces {
  readonly outside: number;
  readonly inside: number;
}

/** Layers are cut into cells no thicker than this (halving it moves no figure of the year by more than 0.02 K). */
export const CELL_M = 0.025;
/** A thin board still has a warm and a cold side. */
const LEAST_CELLS = 2;

/** Conduction through layers from outside to inside by finite volumes, with a massless body on either face. */
export function addLayeredWall(bodies: BoxBodies, wall: { name: string; areaM2: number; layers: readonly Layer[] }, cellM = CELL_M): Faces {
  const { name, areaM2 } = wall;
  const outside = addBody(bodies, `${name} outside`);
  let last = outside;
  let resistanceKPerW = 0;
  for (const layer of wall.layers) {
    const acrossKPerW = layer.thicknessM / (layer.conductivityWPerMK * areaM2);
    const capacityJPerK = layer.densityKgPerM3 * layer.heatCapacityJPerKgK * layer.thicknessM * areaM2;
    const cells = capacityJPerK === 0 ? 0 : Math.max(LEAST_CELLS, Math.ceil(layer.thicknessM / cellM));
    if (cells === 0) resistanceKPerW += acrossKPerW;
    for (let c = 0; c < cells; c += 1) {
      const cell = addBody(bodies, `${name} ${layer.name} ${c + 1}`, capacityJPerK / cells);
      const halfKPerW = acrossKPerW / cells / 2;
      bodies.conductors.push(steadyConductor(last, cell, 1 / (resistanceKPerW + halfKPerW)));
      last = cell;
      resistanceKPerW = halfKPerW;
    }
  }
  const inside = addBody(bodies, `${name} inside`);
  bodies.conductors.push(steadyConductor(last, inside, 1 / resistanceKPerW));
  return { outside, inside };
}
