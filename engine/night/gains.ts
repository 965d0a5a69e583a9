import { sunThroughSnow, snowHoldingShare } from '../cover/snow-layer.js';
import { stackDiffuseTransmittance } from '../cover/shortwave-transmittance.js';
import { FILMS } from '../data/films.js';
import { metabolicHeatW } from '../heat/compost-heap.js';
import type { Sources } from '../network/implicit-step.js';
import { SECONDS_PER_DAY } from '../units.js';
import type { Controls } from './controls.js';
import type { HouseModel } from './house-model.js';

/** Share of the sun kept in the house that ends as heat; the rest is reflected out (prior of this project). */
const ABSORBED_SHARE = 0.8;
/** Of that, what the soil takes at once; foliage and air take the rest (prior of this project). */
const SUN_TO_SOIL_SHARE = 0.6;
/** Of the light that stones, drums or a wall throw back, what meets something else in the house (project estimate). */
const REFLECTED_KEPT = 0.5;
/** A thermostat gives full power below its setting by half of this and none above by half (keeps the step smooth). */
const THERMOSTAT_BAND_K = 1;
/** Of the light that a drawn curtain stops, what it takes up; the rest goes back out through the roof (project estimate). */
const CURTAIN_TAKES = 0.5;
/** Half of the light of a clear winter day comes through the pane of a stone box at about this angle: as diffuse light (Duffie2013 fig. 5.4.1, from memory). */
const PANE_TRANSMITTANCE = stackDiffuseTransmittance([FILMS.glass.sheet]);

/** Sunlight that stays in the house, W: on the whole, and of it on the solid wall. */
export interface SunInHouse {
  readonly totalW: number;
  readonly onWallW: number;
}

/**
 * Heat of the sun for each node: wall and devices by their share and colour, soil by area, foliage and air the rest; a cover keeps part of it above the bed.
 * Units: W.
 * Valid: sun of the same house.
 * Outside: not applicable.
 * Source: energy balance; shares as named above (priors of this project).
 */
export function sunByNodeW(model: HouseModel, sun: SunInHouse, controls: Controls): Float64Array {
  const { house } = model;
  const power = new Float64Array(model.network.nodes.length);
  const passed = house.mayHoldSnow ? sunThroughSnow(controls.troubles.roofSnowM, snowHoldingShare(house.geometry.facets)) : 1;
  const underRoofW = passed * (sun.totalW - sun.onWallW);
  if (underRoofW <= 0) return power;
  const throughCurtain = house.curtain && controls.curtainDrawn ? house.curtain.sunTransmittance : 1;
  if (throughCurtain < 1) power[model.curtain]! += CURTAIN_TAKES * (1 - throughCurtain) * underRoofW;
  const onFloorW = throughCurtain * underRoofW;
  let leftShare = 1;
  let thrownBackW = 0;
  const take = (node: number, shareOfFloor: number, absorptance: number): void => {
    const share = Math.min(leftShare, shareOfFloor);
    leftShare -= share;
    power[node]! += absorptance * share * onFloorW;
    thrownBackW += (1 - absorptance) * share * onFloorW;
  };
  house.drums.forEach(({ sunShare }, d) => take(model.drums[d]!, sunShare, ABSORBED_SHARE));
  house.stones.forEach(({ sunShare, absorptance }, s) => take(model.stones[s]!.skin, sunShare, absorptance));
  if (house.stoneBox && model.stoneBox) take(model.stoneBox.skin, house.stoneBox.sunShare, PANE_TRANSMITTANCE * house.stoneBox.absorptance);
  if (house.solidWall && model.wall) {
    power[model.wall.surface]! += house.solidWall.absorptance * passed * sun.onWallW;
    thrownBackW += (1 - house.solidWall.absorptance) * passed * sun.onWallW;
  }
  shineOnRest(model, ABSORBED_SHARE * (leftShare * onFloorW + REFLECTED_KEPT * thrownBackW), { power, controls });
  return power;
}

function shineOnRest(model: HouseModel, absorbedW: number, onto: { power: Float64Array; controls: Controls }): void {
  const { house } = model;
  const { power, controls } = onto;
  power[model.air]! += (1 - SUN_TO_SOIL_SHARE) * absorbedW;
  house.columns.forEach(({ areaM2, rowCover, secondCover }, c) => {
    const { surface, rowCover: rowNode, secondCover: secondNode } = model.columns[c]!;
    let light = (SUN_TO_SOIL_SHARE * absorbedW * areaM2) / house.geometry.floorAreaM2;
    for (const [row, node] of [[secondCover, secondNode], [rowCover, rowNode]] as const) {
      if (!row || !controls.coverOn[c]) continue;
      power[node]! += (1 - row.sunTransmittance) * light;
      light *= row.sunTransmittance;
    }
    power[surface]! += light;
  });
}

/** What heater, motors and compost give for the latest temperatures. */
export interface MadeHeat {
  readonly heaterW: number;
  readonly vapourKgPerS: number;
  readonly heapW: number;
}

/** Share of full power that the heater gives at an inside temperature. Units: K in, 0-1 out. Valid: conditions of the step. Outside: not applicable. Source: proportional band as named above. */
export function heaterShare(model: HouseModel, insideAirTempK: number): number {
  const { heater } = model.house;
  const { conditions } = model;
  if (!heater || !conditions.heaterOn || (heater.needsMains && conditions.troubles.powerOut)) return 0;
  const set = heater.thermostat ? conditions.heaterSetK : null;
  return set === null ? 1 : Math.min(1, Math.max(0, (set + THERMOSTAT_BAND_K / 2 - insideAirTempK) / THERMOSTAT_BAND_K));
}

/**
 * Adds heater, fan motors and compost to the sources of the step, with their slopes.
 * Units: W, kg/s.
 * Valid: conditions of the step.
 * Outside: not applicable.
 * Source: each device's own file.
 */
export function addMadeHeat(model: HouseModel, timeS: number, tempsK: Float64Array, sources: Sources): MadeHeat {
  const { house, conditions, air } = model;
  const share = heaterShare(model, tempsK[air]!);
  const heaterW = share * (house.heater?.deliveredW ?? 0);
  sources.powerW[air]! += heaterW + conditions.fanMotorsW;
  if (share > 0 || conditions.heaterOn) addThermostatSlope(model, share, sources);
  let heapW = 0;
  if (house.heap && model.heap !== null) {
    const made = metabolicHeatW({ volumeM3: house.heap.volumeM3, ageDays: (timeS - house.heap.startedS) / SECONDS_PER_DAY, coreTempK: tempsK[model.heap]! });
    sources.powerW[model.heap]! += made.powerW;
    sources.slopeWPerK[model.heap]! += made.slopeWPerK;
    heapW = made.powerW;
  }
  return { heaterW, vapourKgPerS: share * (house.heater?.vapourKgPerS ?? 0), heapW };
}

function addThermostatSlope({ house, conditions, air }: HouseModel, share: number, sources: Sources): void {
  const { heater } = house;
  if (!heater?.thermostat || conditions.heaterSetK === null) return;
  sources.bands.push({ node: air, lowK: conditions.heaterSetK - THERMOSTAT_BAND_K / 2, highK: conditions.heaterSetK + THERMOSTAT_BAND_K / 2 });
  if (share > 0 && share < 1) sources.slopeWPerK[air]! -= heater.deliveredW / THERMOSTAT_BAND_K;
}
