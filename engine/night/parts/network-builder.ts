import type { House } from '../../greenhouse/house.js';
import { createNetwork, steadyConductor, type Conductor, type Network, type NetworkNode, type Radiator } from '../../network/network.js';
import type { Conditions } from '../conditions.js';

/** Bodies with a given temperature, as they are called while the network is being built; they get their places when all nodes are known. */
export const BOUNDARY = { outside: -1, surroundings: -2, deep: -3, behindWall: -4 } as const;
const BOUNDARY_NAMES = ['outside air', 'sky and surroundings', 'deep ground', 'behind the wall'] as const;

/** What the parts of a house add their bodies and couplings to. */
export interface NetworkBuilder {
  readonly house: House;
  /** Read by conductors; set before each step. */
  readonly conditions: Conditions;
  readonly addNode: (node: NetworkNode) => number;
  readonly nextNode: () => number;
  readonly adopt: (conductor: Conductor) => void;
  readonly couple: (a: number, b: number, conductanceWPerK: number) => void;
  /** A coupling that changes with the conditions of the step. */
  readonly coupleBy: (a: number, b: number, conductanceWPerK: () => number) => void;
  /** A coupling that changes with the two temperatures. */
  readonly coupleByTemps: (a: number, b: number, conductanceWPerK: (tempAK: number, tempBK: number) => number) => void;
  /** `planeNodes` are all planes that exchange longwave with each other. */
  readonly finish: (planeNodes: readonly number[]) => { network: Network; planeNodes: readonly number[]; boundary: (placeholder: number) => number };
}

export function networkBuilder(house: House, conditions: Conditions): NetworkBuilder {
  const nodes: NetworkNode[] = [];
  const conductors: Conductor[] = [];
  const finish: NetworkBuilder['finish'] = (planes) => {
    const boundary = (index: number): number => (index < 0 ? nodes.length - 1 - index : index);
    const planeNodes = planes.map(boundary);
    const radiators = planeNodes.flatMap((a, n) => planeNodes.slice(n + 1).map((b): Radiator => ({ a, b, exchangeAreaM2: 0 })));
    const network = createNetwork({ nodes, boundaries: BOUNDARY_NAMES, conductors: conductors.map((conductor) => ({ ...conductor, a: boundary(conductor.a), b: boundary(conductor.b) })), radiators });
    return { network, planeNodes, boundary };
  };
  return {
    house,
    conditions,
    addNode: (node) => nodes.push(node) - 1,
    nextNode: () => nodes.length,
    adopt: (conductor) => void conductors.push(conductor),
    couple: (a, b, conductanceWPerK) => void conductors.push(steadyConductor(a, b, conductanceWPerK)),
    coupleBy: (a, b, conductanceWPerK) => void conductors.push({ a, b, conductanceWPerK, dependsOnTemps: false }),
    coupleByTemps: (a, b, conductanceWPerK) => void conductors.push({ a, b, conductanceWPerK, dependsOnTemps: true }),
    finish,
  };
}
