import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, STEFAN_BOLTZMANN_W_PER_M2K4, SUBLIMATION_HEAT_J_PER_KG, VAPORISATION_HEAT_J_PER_KG } from '../constants.js';
import { outsideConvectionWPerM2K } from '../cover/convection.js';
import { snowConductanceWPerM2K, snowHoldingShare, snowyShare } from '../cover/snow-layer.js';
import { DEEP_SOIL_DEPTH_M, SOIL_LAYERS_M } from '../ground/soil-column.js';
import { heatOfStoreJ } from '../network/enthalpy.js';
import { ZERO_CELSIUS_K } from '../units.js';
import { BETWEEN_COVERS_W_PER_M2K, coverExchangeWPerK, curtainExchangeWPerK, filmToAirWPerM2K, outsideAirflowM3PerS, ROW_COVER_TO_AIR_W_PER_M2K, soilToAirWPerM2K, stirredAtColumnWPerM2K } from './air-exchange.js';
import { deviceFlows, type Flow } from './audit/device-flows.js';
import { longwaveGainsW } from './audit/longwave-by-bounces.js';
import { STEP_S } from './forcing.js';
import type { HouseModel } from './house-model.js';
import type { HouseRunner, StepRecord } from './house-run.js';

export interface EnergyAuditResult {
  /** Heat that the accounts of single nodes lack or have too much, without sign, over all nodes and steps. */
  readonly residualJ: number;
  /** Heat that went through the house: half of all that crossed its boundary and all that its stores took up or gave. */
  readonly turnoverJ: number;
  readonly residualShare: number;
}

export interface EnergyAudit {
  readonly observe: (record: StepRecord) => void;
  readonly result: () => EnergyAuditResult;
}

/**
 * Checks the heat account of every node in every step, from the temperatures alone: reflections are followed plane by plane, each law is
 * evaluated anew, and nothing that the solver assembled is used (no exchange areas, no conductors, no linear system).
 * Units: J.
 * Valid: steps of the house it was made for, all of the same length (STEP_S unless given); observe inside the call of the observer only.
 * Outside: a turnover of zero gives a share of zero.
 * Source: first law for each node, heat stored = sum of fluxes x step; each law names its own source where it is defined.
 */
export function createEnergyAudit(runner: HouseRunner, stepS: number = STEP_S): EnergyAudit {
  let residualJ = 0;
  let turnoverJ = 0;
  const observe = (record: StepRecord): void => {
    const { nodes } = runner.model.network;
    const fluxesW = fluxesIntoNodesW(runner, record);
    let crossingW = fluxesW.subarray(nodes.length).reduce((sum, gain) => sum + Math.abs(gain), 0);
    let latentW = 0;
    nodes.forEach((node, n) => {
      const storedW = (heatOfStoreJ(node.store, record.tempsK[n]!) - heatOfStoreJ(node.store, record.tempsBeforeK[n]!)) / stepS;
      residualJ += Math.abs(storedW - fluxesW[n]!) * stepS;
      crossingW += Math.abs(storedW) + Math.abs(record.gainsW[n]!);
      latentW += record.latentW[n]!;
    });
    turnoverJ += ((crossingW + Math.abs(latentW)) / 2) * stepS;
  };
  return { observe, result: () => ({ residualJ, turnoverJ, residualShare: turnoverJ > 0 ? residualJ / turnoverJ : 0 }) };
}

/** Heat into each node, then into each boundary (whose entries say what crossed it). */
function fluxesIntoNodesW(runner: HouseRunner, record: StepRecord): Float64Array {
  const { model, moisture } = runner;
  const { tempsK } = record;
  const fluxesW = new Float64Array(tempsK.length);
  const flow: Flow = (a, b, conductanceWPerK) => {
    const toAW = conductanceWPerK * (tempsK[b]! - tempsK[a]!);
    fluxesW[a]! += toAW;
    fluxesW[b]! -= toAW;
  };
  coverAndAirFlows(model, tempsK, flow);
  floorFlows(model, tempsK, flow);
  deviceFlows(model, tempsK, flow);
  const emittedWPerM2 = model.planeNodes.map((node) => STEFAN_BOLTZMANN_W_PER_M2K4 * tempsK[node]! ** 4);
  longwaveGainsW(record.enclosure, model.plane, emittedWPerM2).forEach((gain, plane) => (fluxesW[model.planeNodes[plane]!]! += gain));
  moisture.surfaces.forEach(({ node }, s) => (fluxesW[node]! += phaseChangeHeatJPerKg(tempsK[node]!) * record.uptakeKgPerS[s]!));
  record.gainsW.forEach((power, node) => (fluxesW[node]! += power));
  return fluxesW;
}

function coverAndAirFlows(model: HouseModel, tempsK: Float64Array, flow: Flow): void {
  const { house, conditions, films, air, roofAir, curtain, snow, outside } = model;
  const { coverAreaM2, floorAreaM2, facets } = house.geometry;
  const filmWPerM2K = (film: number, side: number): number => filmToAirWPerM2K(tempsK[film]!, tempsK[side]!, conditions.stirredWPerM2K);
  flow(films[0]!, roofAir, coverAreaM2 * filmWPerM2K(films[0]!, roofAir));
  const gaps = conditions.troubles.blowerOff ? house.slackGapsWPerM2K : house.gapsWPerM2K;
  gaps.forEach((gap, g) => flow(films[g]!, films[g + 1]!, coverAreaM2 * gap));
  const holdingShare = snowHoldingShare(facets);
  const snowy = snow >= 0 ? snowyShare(conditions.troubles.roofSnowM, holdingShare) : 0;
  const toWindWPerK = coverAreaM2 * outsideConvectionWPerM2K(conditions.windAtCoverMPerS);
  flow(films.at(-1)!, outside, (1 - snowy) * toWindWPerK);
  if (snow >= 0) {
    flow(films.at(-1)!, snow, coverAreaM2 * snowConductanceWPerM2K(conditions.troubles.roofSnowM, holdingShare));
    flow(snow, outside, snowy * toWindWPerK);
  }
  if (curtain >= 0) {
    flow(air, roofAir, curtainExchangeWPerK(house, conditions));
    for (const side of [air, roofAir]) flow(curtain, side, floorAreaM2 * filmWPerM2K(curtain, side));
  }
  const inflowM3PerS = outsideAirflowM3PerS(house, conditions, { insideAirTempK: tempsK[roofAir]!, outsideAirTempK: tempsK[outside]! });
  flow(roofAir, outside, inflowM3PerS * conditions.airDensityKgPerM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK);
}

/** Layers of soil that the ground outside reaches, each with a third of the edge's conductance. */
const EDGE_LAYERS = [3, 4, 5] as const;

function floorFlows(model: HouseModel, tempsK: Float64Array, flow: Flow): void {
  const { house, conditions, air, outside, deep } = model;
  house.columns.forEach(({ areaM2, soil, edgeConductanceWPerK }, c) => {
    const { surface, rowCover, secondCover, underCoverAir } = model.columns[c]!;
    const plantAir = underCoverAir >= 0 ? underCoverAir : air;
    flow(surface, plantAir, areaM2 * soilToAirWPerM2K(tempsK[surface]!, tempsK[plantAir]!, stirredAtColumnWPerM2K(conditions, c)));
    if (rowCover >= 0) {
      flow(rowCover, plantAir, areaM2 * ROW_COVER_TO_AIR_W_PER_M2K);
      if (secondCover >= 0) flow(rowCover, secondCover, areaM2 * BETWEEN_COVERS_W_PER_M2K);
      flow(secondCover >= 0 ? secondCover : rowCover, air, areaM2 * ROW_COVER_TO_AIR_W_PER_M2K);
      flow(plantAir, air, coverExchangeWPerK(house, conditions, c));
    }
    let topM = 0;
    SOIL_LAYERS_M.forEach((thicknessM, layer) => {
      const nextM = SOIL_LAYERS_M[layer + 1];
      const distanceM = nextM === undefined ? DEEP_SOIL_DEPTH_M - (topM + thicknessM / 2) : (thicknessM + nextM) / 2;
      flow(surface + layer, nextM === undefined ? deep : surface + layer + 1, (soil.thermalConductivityWPerMK * areaM2) / distanceM);
      topM += thicknessM;
    });
    for (const layer of EDGE_LAYERS) flow(surface + layer, outside, edgeConductanceWPerK / EDGE_LAYERS.length);
  });
}

/** Vaporisation above +0.5 degrees C, sublimation below -0.5, even between (as moisture.ts has it; written again on purpose). */
function phaseChangeHeatJPerKg(tempK: number): number {
  const waterShare = Math.min(1, Math.max(0, tempK - ZERO_CELSIUS_K + 0.5));
  return waterShare * VAPORISATION_HEAT_J_PER_KG + (1 - waterShare) * SUBLIMATION_HEAT_J_PER_KG;
}
