import { WATER_HEAT_CAPACITY_J_PER_KGK } from '../../constants.js';
import { layerNearest, soilColumn } from '../../ground/soil-column.js';
import { MASSLESS, sensibleStore } from '../../network/enthalpy.js';
import { BETWEEN_COVERS_W_PER_M2K, coverExchangeWPerK, ROW_COVER_TO_AIR_W_PER_M2K, soilToAirWPerM2K, stirredAtColumnWPerM2K, UNDER_COVER_HEIGHT_M } from '../air-exchange.js';
import { airCapacityJPerK, type AirIndex } from './air-part.js';
import { BOUNDARY, type NetworkBuilder } from './network-builder.js';

/** Depths at which the edge strip loses heat to the ground outside (5 to 30 cm; prior of this project). */
const EDGE_DEPTHS_M = [0.05, 0.11, 0.23] as const;

export interface ColumnIndex {
  readonly surface: number;
  readonly deepest: number;
  /** -1 where there is no row cover. */
  readonly rowCover: number;
  readonly secondCover: number;
  readonly underCoverAir: number;
}

/** A soil column for each bed, path and edge, with row covers and the air under them. */
export const addFloor = (builder: NetworkBuilder, { air }: AirIndex): readonly ColumnIndex[] => builder.house.columns.map((_, c) => addColumn(builder, air, c));

function addColumn(builder: NetworkBuilder, air: number, c: number): ColumnIndex {
  const { house, conditions } = builder;
  const column = house.columns[c]!;
  const { areaM2 } = column;
  const surface = builder.nextNode();
  const soil = soilColumn(column.soil, { areaM2, firstNode: surface, deepBoundary: BOUNDARY.deep, name: column.name });
  for (const node of soil.nodes) builder.addNode(node);
  for (const conductor of soil.conductors) builder.adopt(conductor);
  const deepest = builder.nextNode() - 1;
  if (column.edgeConductanceWPerK > 0) for (const depthM of EDGE_DEPTHS_M) builder.couple(surface + layerNearest(depthM), BOUNDARY.outside, column.edgeConductanceWPerK / EDGE_DEPTHS_M.length);
  const exchangesWith = (airNode: number): void => builder.coupleByTemps(surface, airNode, (soilK, airK) => areaM2 * soilToAirWPerM2K(soilK, airK, stirredAtColumnWPerM2K(conditions, c)));
  if (!column.rowCover) {
    exchangesWith(air);
    return { surface, deepest, rowCover: -1, secondCover: -1, underCoverAir: -1 };
  }
  const rowCover = builder.addNode({ name: `${column.name} row cover`, store: MASSLESS });
  const secondCover = column.secondCover ? builder.addNode({ name: `${column.name} second cover`, store: MASSLESS }) : -1;
  const foliageJPerK = areaM2 * column.foliageKgPerM2 * WATER_HEAT_CAPACITY_J_PER_KGK;
  const underCoverAir = builder.addNode({ name: `${column.name} air under cover`, store: sensibleStore(airCapacityJPerK(areaM2 * UNDER_COVER_HEIGHT_M) + foliageJPerK) });
  exchangesWith(underCoverAir);
  builder.couple(underCoverAir, rowCover, areaM2 * ROW_COVER_TO_AIR_W_PER_M2K);
  if (secondCover >= 0) builder.couple(rowCover, secondCover, areaM2 * BETWEEN_COVERS_W_PER_M2K);
  builder.couple(secondCover >= 0 ? secondCover : rowCover, air, areaM2 * ROW_COVER_TO_AIR_W_PER_M2K);
  builder.coupleBy(underCoverAir, air, () => coverExchangeWPerK(house, conditions, c));
  return { surface, deepest, rowCover, secondCover, underCoverAir };
}
