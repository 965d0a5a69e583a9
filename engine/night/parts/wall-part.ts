import { MASSLESS, sensibleStore } from '../../network/enthalpy.js';
import { wallToAirWPerM2K } from '../air-exchange.js';
import type { AirIndex } from './air-part.js';
import { BOUNDARY, type NetworkBuilder } from './network-builder.js';

/** Masonry is cut into layers no thicker than this: a night reaches about three of them. */
const LAYER_M = 0.06;
const MOST_LAYERS = 8;

export interface WallIndex {
  readonly surface: number;
  /** From the inside outwards. */
  readonly layers: readonly number[];
}

/** An opaque wall: its inner surface, the masonry behind it, the insulation, and what lies beyond. */
export function addSolidWall(builder: NetworkBuilder, { air }: AirIndex): WallIndex | null {
  const { house, conditions } = builder;
  const wall = house.solidWall;
  if (!wall) return null;
  const { areaM2, masonryM, stone } = wall;
  const count = Math.min(MOST_LAYERS, Math.ceil(masonryM / LAYER_M));
  const layerM = masonryM / count;
  const surface = builder.addNode({ name: 'wall surface', store: MASSLESS });
  const layers = Array.from({ length: count }, (_, l) => builder.addNode({ name: `wall ${l + 1}`, store: sensibleStore(stone.volumetricHeatCapacityJPerM3K * areaM2 * layerM) }));
  const halfLayerWPerK = (stone.thermalConductivityWPerMK * areaM2) / (layerM / 2);
  builder.coupleByTemps(surface, air, (wallK, airK) => areaM2 * wallToAirWPerM2K(wallK, airK, conditions.stirredWPerM2K));
  builder.couple(surface, layers[0]!, halfLayerWPerK);
  for (let l = 1; l < count; l += 1) builder.couple(layers[l - 1]!, layers[l]!, halfLayerWPerK / 2);
  builder.couple(layers.at(-1)!, wall.behindTempK === null ? BOUNDARY.outside : BOUNDARY.behindWall, 1 / (1 / halfLayerWPerK + 1 / (areaM2 * wall.outwardWPerM2K)));
  return { surface, layers };
}
