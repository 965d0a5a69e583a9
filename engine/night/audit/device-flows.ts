import { DEEP_SOIL_DEPTH_M, SOIL_LAYERS_M } from '../../ground/soil-column.js';
import { BODY_TO_AIR_SHARE } from '../../mass/standing-body.js';
import { wallToAirWPerM2K } from '../air-exchange.js';
import type { HouseModel } from '../house-model.js';
import { PANE_TO_AIR_W_PER_M2K, PANE_TO_FILM_W_PER_M2K, STONES_TO_PANE_W_PER_M2K } from '../parts/stores-part.js';

/** Books the heat that a conductance lets through from b to a. */
export type Flow = (a: number, b: number, conductanceWPerK: number) => void;

const groundUnder = (model: HouseModel): number => model.columns.at(-1)!.surface;

/** Heat flows of drums, stones, box, wall, tubes and heap, each law written again from its meaning. */
export function deviceFlows(model: HouseModel, tempsK: Float64Array, flow: Flow): void {
  const { house, conditions, air, films } = model;
  house.drums.forEach(({ conductanceWPerK }, d) => flow(model.drums[d]!, air, BODY_TO_AIR_SHARE * conductanceWPerK));
  house.stones.forEach(({ lumps }, s) => {
    flow(model.stones[s]!.skin, air, BODY_TO_AIR_SHARE * lumps.surfaceWPerK);
    flow(model.stones[s]!.skin, model.stones[s]!.core, lumps.skinToCoreWPerK);
  });
  if (house.stoneBox && model.stoneBox) {
    const { pane, skin, core } = model.stoneBox;
    const { glazedM2, lumps, sidesWPerK } = house.stoneBox;
    flow(pane, air, PANE_TO_AIR_W_PER_M2K * glazedM2);
    flow(pane, films[0]!, PANE_TO_FILM_W_PER_M2K * glazedM2);
    flow(pane, skin, STONES_TO_PANE_W_PER_M2K * glazedM2);
    flow(skin, core, lumps.skinToCoreWPerK);
    flow(core, air, sidesWPerK / 2);
    flow(core, groundUnder(model), sidesWPerK / 2);
    const capacity = lumps.skinJPerK + lumps.coreJPerK;
    flow(skin, air, (conditions.fanWPerK['stone-box'] * lumps.skinJPerK) / capacity);
    flow(core, air, (conditions.fanWPerK['stone-box'] * lumps.coreJPerK) / capacity);
  }
  wallFlows(model, tempsK, flow);
  tubeFlows(model, flow);
  heapFlows(model, flow);
}

function wallFlows(model: HouseModel, tempsK: Float64Array, flow: Flow): void {
  const { house, wall, air, conditions } = model;
  if (!house.solidWall || !wall) return;
  const { areaM2, masonryM, stone, outwardWPerM2K, behindTempK } = house.solidWall;
  flow(wall.surface, air, areaM2 * wallToAirWPerM2K(tempsK[wall.surface]!, tempsK[air]!, conditions.stirredWPerM2K));
  const layerM = masonryM / wall.layers.length;
  wall.layers.forEach((node, l) => flow(l === 0 ? wall.surface : wall.layers[l - 1]!, node, (areaM2 * stone.thermalConductivityWPerMK) / (l === 0 ? layerM / 2 : layerM)));
  const beyond = behindTempK === null ? model.outside : model.behindWall;
  flow(wall.layers.at(-1)!, beyond, areaM2 / (layerM / 2 / stone.thermalConductivityWPerMK + 1 / outwardWPerM2K));
}

/** Radii of this grid, written again: each ring 1.6 times the one within, temperatures at the geometric mean. */
const RING_GROWTH = 1.6;

function tubeFlows(model: HouseModel, flow: Flow): void {
  const { house, tubes, columns, air, conditions, deep } = model;
  if (!house.tubes || !tubes) return;
  const { rings } = tubes;
  const { lengthM, count, depthM, soil } = house.tubes;
  const perLog = 2 * Math.PI * soil.thermalConductivityWPerMK * lengthM * count;
  flow(rings[0]!, air, conditions.fanWPerK.tubes);
  for (let ring = 1; ring < rings.length; ring += 1) flow(rings[ring - 1]!, rings[ring]!, perLog / Math.log(RING_GROWTH));
  const outward = perLog / Math.log(2 * Math.sqrt(RING_GROWTH));
  const layer = layerAtDepth(depthM);
  if (layer === null) flow(rings.at(-1)!, deep, outward);
  else columns.forEach(({ surface }, c) => flow(rings.at(-1)!, surface + layer, (outward * house.columns[c]!.areaM2) / house.geometry.floorAreaM2));
}

/** Layer whose middle is nearest; null below the middle of the last one. */
function layerAtDepth(depthM: number): number | null {
  const middles = SOIL_LAYERS_M.map((thickness, layer) => SOIL_LAYERS_M.slice(0, layer).reduce((sum, above) => sum + above, 0) + thickness / 2);
  if (depthM > middles.at(-1)! || depthM >= DEEP_SOIL_DEPTH_M) return null;
  return middles.reduce((nearest, middle, layer) => (Math.abs(middle - depthM) < Math.abs(middles[nearest]! - depthM) ? layer : nearest), 0);
}

/** Moist compost of 0.3 W/(m K); the way from the core is 0.3 of the edge of a cube. */
const HEAP_W_PER_MK = 0.3;
const HEAP_WAY_SHARE = 0.3;
/** Third soil layer from the bottom of the first metre: 7.5 to 15.5 cm. */
const CONTACT_LAYER = 4;

function heapFlows(model: HouseModel, flow: Flow): void {
  const { house, heap: core, columns, air, outside, deep, conditions } = model;
  if (!house.heap || core === null) return;
  const edgeM = Math.cbrt(house.heap.volumeM3);
  const faceWPerK = (edgeM * edgeM * HEAP_W_PER_MK) / (HEAP_WAY_SHARE * edgeM);
  flow(core, house.heap.fan ? outside : air, 5 * faceWPerK);
  flow(core, house.heap.fan ? deep : columns[house.heap.column ?? columns.length - 1]!.surface + CONTACT_LAYER, faceWPerK);
  flow(core, air, conditions.fanWPerK.heap);
}
