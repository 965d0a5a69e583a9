import type { PlaneIndex } from '../cover/longwave-enclosure.js';
import { planeIndex } from '../cover/longwave-enclosure.js';
import type { House } from '../greenhouse/house.js';
import type { Network } from '../network/network.js';
import { freshConditions, type Conditions } from './conditions.js';
import { enclosureOf, NOTHING_LAID } from './enclosure.js';
import { addAir, type AirIndex } from './parts/air-part.js';
import { addCover, type CoverIndex } from './parts/cover-part.js';
import { addFloor, type ColumnIndex } from './parts/floor-part.js';
import { addHeap } from './parts/heap-part.js';
import { BOUNDARY, networkBuilder } from './parts/network-builder.js';
import { addStores, type StoresIndex } from './parts/stores-part.js';
import { addTubes, type TubesIndex } from './parts/tubes-part.js';
import { addSolidWall, type WallIndex } from './parts/wall-part.js';

/** The network of one house, and where everything stands in it. */
export interface HouseModel extends AirIndex, CoverIndex, StoresIndex {
  readonly house: House;
  readonly network: Network;
  readonly columns: readonly ColumnIndex[];
  readonly wall: WallIndex | null;
  readonly tubes: TubesIndex | null;
  /** Core of the compost heap. */
  readonly heap: number | null;
  readonly outside: number;
  readonly surroundings: number;
  readonly deep: number;
  readonly behindWall: number;
  readonly plane: PlaneIndex;
  /** Network index of each plane of the longwave enclosure. */
  readonly planeNodes: readonly number[];
  /** Read by the conductors; set before each step. */
  readonly conditions: Conditions;
}

/**
 * Builds the network of a house: air, cover, a soil column for each bed, path and edge, wall, stores, tubes, heap.
 * A house without a thing carries no node for it.
 * Units: SI.
 * Valid: a house from toHouse.
 * Outside: throws from the parts.
 * Source: network of this project; each relation names its own source.
 */
export function buildHouseModel(house: House): HouseModel {
  const conditions = freshConditions(house);
  const builder = networkBuilder(house, conditions);
  const air = addAir(builder);
  const cover = addCover(builder, air);
  const columns = addFloor(builder, air);
  const wall = addSolidWall(builder, air);
  const stores = addStores(builder, { air, cover, columns });
  const tubes = addTubes(builder, { air, columns });
  const heap = addHeap(builder, { air, columns });
  const plane = planeIndex(enclosureOf(house, NOTHING_LAID));
  const rowCovers = columns.flatMap(({ rowCover, secondCover }) => [rowCover, secondCover].filter((node) => node >= 0));
  const planes = [...columns.map(({ surface }) => surface), ...rowCovers, ...stores.drums, ...stores.stones.map(({ skin }) => skin), ...(air.curtain >= 0 ? [air.curtain] : []), ...(wall ? [wall.surface] : []), ...cover.films, ...(cover.snow >= 0 ? [cover.snow] : []), BOUNDARY.surroundings];
  const { network, planeNodes, boundary } = builder.finish(planes);
  return {
    house,
    network,
    ...air,
    ...cover,
    ...stores,
    columns,
    wall,
    tubes,
    heap,
    outside: boundary(BOUNDARY.outside),
    surroundings: boundary(BOUNDARY.surroundings),
    deep: boundary(BOUNDARY.deep),
    behindWall: boundary(BOUNDARY.behindWall),
    plane,
    planeNodes,
    conditions,
  };
}
