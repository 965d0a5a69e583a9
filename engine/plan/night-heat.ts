import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, STEFAN_BOLTZMANN_W_PER_M2K4 } from '../constants.js';
import { SOIL_LAYERS_M } from '../ground/soil-column.js';
import { heatOfStoreJ } from '../network/enthalpy.js';
import { outsideAirflowM3PerS } from '../night/air-exchange.js';
import type { HouseModel } from '../night/house-model.js';
import { runHouse, type StepRecord } from '../night/house-run.js';
import type { NightChoices } from './action.js';
import { controlsOfChoices } from './controls-of-choices.js';
import type { TrialNight } from './plants-low.js';

/** Where the heat of a house comes from and goes through a night, means of its hours, W; and the weather that does it. */
export interface NightHeat {
  /** To the sky by radiation; to the air outside along the cover, with what the ground loses sideways; out through gaps, with the vapour that leaves. Below zero: taken in. */
  readonly lost: { readonly skyW: number; readonly airW: number; readonly gapsW: number };
  readonly given: { readonly groundW: number; readonly waterW: number; readonly stonesW: number; readonly heaterW: number; readonly compostW: number };
  readonly cloudFraction: number;
  /** At 10 m, as forecast. */
  readonly windMPerS: number;
}

/** Bodies that keep heat for the night, by the word for them. */
interface Bodies {
  readonly ground: readonly number[];
  readonly water: readonly number[];
  readonly stones: readonly number[];
  readonly compost: readonly number[];
}

/**
 * The heat account of a night under some choices in the middle weather, from sunset (or now) to sunrise.
 * Units: W; wind m/s; cloud 0-1.
 * Valid: choices of the same house, an evening before its sunrise.
 * Outside: all zero where the run has no step in the night.
 * Source: first law over the house: what its bodies give, with the heat made in it, leaves to the sky, through gaps, and the rest to the air outside.
 */
export function nightHeat(trial: TrialNight, choices: NightChoices): NightHeat {
  const { house, evening, standing, central, night, nowS } = trial;
  const { model } = evening.runner;
  const bodies = bodiesOf(model);
  const sums = { skyW: 0, gapsW: 0, allW: 0, groundW: 0, waterW: 0, stonesW: 0, heaterW: 0, compostW: 0, cloud: 0, wind: 0 };
  const fromS = Math.max(nowS, night.sunsetS);
  let steps = 0;
  runHouse(evening.runner, evening.state, central, controlsOfChoices(house, standing, choices), (record) => {
    if (record.timeS <= fromS || record.timeS > night.sunriseS) return;
    steps += 1;
    const given = (nodes: readonly number[]): number => givenByW(model, record, nodes, central.stepS);
    const latentW = total(record.latentW);
    sums.groundW += given(bodies.ground);
    sums.waterW += given(bodies.water);
    sums.stonesW += given(bodies.stones);
    sums.compostW += given(bodies.compost) + record.heapW;
    sums.heaterW += record.heaterW;
    // Heat that evaporation took and no surface got back left the house with the vapour.
    sums.gapsW += leakW(model, record) - latentW;
    sums.skyW += toSkyW(model, record);
    sums.allW += given(model.network.nodes.map((_, n) => n)) + total(record.gainsW);
    sums.cloud += central.cloudFraction[record.stepIndex]!;
    sums.wind += central.windAtCoverMPerS[record.stepIndex]! / house.windShare;
  });
  const mean = (sum: number): number => (steps === 0 ? 0 : sum / steps);
  return {
    lost: { skyW: mean(sums.skyW), airW: mean(sums.allW - sums.skyW - sums.gapsW), gapsW: mean(sums.gapsW) },
    given: { groundW: mean(sums.groundW), waterW: mean(sums.waterW), stonesW: mean(sums.stonesW), heaterW: mean(sums.heaterW), compostW: mean(sums.compostW) },
    cloudFraction: mean(sums.cloud),
    windMPerS: mean(sums.wind),
  };
}

const total = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);

/** The soil around tubes is ground; a solid wall keeps heat as stones do. */
function bodiesOf({ columns, tubes, drums, stones, stoneBox, wall, heap }: HouseModel): Bodies {
  return {
    ground: [...columns.flatMap(({ surface }) => SOIL_LAYERS_M.map((_, layer) => surface + layer)), ...(tubes?.rings ?? [])],
    water: drums,
    stones: [...[...stones, ...(stoneBox ? [stoneBox] : [])].flatMap(({ skin, core }) => [skin, core]), ...(wall ? [wall.surface, ...wall.layers] : [])],
    compost: heap === null ? [] : [heap],
  };
}

function givenByW({ network: { nodes } }: HouseModel, { tempsBeforeK, tempsK }: StepRecord, of: readonly number[], stepS: number): number {
  return of.reduce((sum, n) => sum + heatOfStoreJ(nodes[n]!.store, tempsBeforeK[n]!) - heatOfStoreJ(nodes[n]!.store, tempsK[n]!), 0) / stepS;
}

function leakW({ house, conditions, roofAir, outside }: HouseModel, { tempsK }: StepRecord): number {
  const inflowM3PerS = outsideAirflowM3PerS(house, conditions, { insideAirTempK: tempsK[roofAir]!, outsideAirTempK: tempsK[outside]! });
  return inflowM3PerS * conditions.airDensityKgPerM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK * (tempsK[roofAir]! - tempsK[outside]!);
}

function toSkyW({ planeNodes, surroundings }: HouseModel, { exchange: { areasM2, plane }, tempsK }: StepRecord): number {
  const emitted = (node: number): number => STEFAN_BOLTZMANN_W_PER_M2K4 * tempsK[node]! ** 4;
  return planeNodes.reduce((sum, node, m) => sum + areasM2[m * plane.count + plane.surroundings]! * (emitted(node) - emitted(surroundings)), 0);
}
