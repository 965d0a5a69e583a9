import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, STEFAN_BOLTZMANN_W_PER_M2K4, SUBLIMATION_HEAT_J_PER_KG, VAPORISATION_HEAT_J_PER_KG } from '../constants.js';
import { FILM_GAP_W_PER_M2K, outsideConvectionWPerM2K } from '../cover/convection.js';
import { longwaveReflectance, type LongwaveOptics } from '../cover/film-optics.js';
import type { LongwaveEnclosure, PlaneIndex } from '../cover/longwave-exchange.js';
import { DEEP_SOIL_DEPTH_M, SOIL_LAYERS_M } from '../ground/soil-column.js';
import { DRUM_SHARES } from '../mass/water-drum.js';
import { heatOfStoreJ } from '../network/enthalpy.js';
import { ZERO_CELSIUS_K } from '../units.js';
import { STEP_S } from './forcing.js';
import { coverExchangeWPerK, filmToAirWPerM2K, outsideAirflowM3PerS, ROW_COVER_TO_AIR_W_PER_M2K, soilToAirWPerM2K, type HouseModel } from './house-model.js';
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
    const gainsW = fluxesIntoNodesW(runner, record);
    let crossingW = gainsW.subarray(nodes.length).reduce((sum, gain) => sum + Math.abs(gain), 0);
    let latentW = 0;
    nodes.forEach((node, n) => {
      const storedW = (heatOfStoreJ(node.store, record.tempsK[n]!) - heatOfStoreJ(node.store, record.tempsBeforeK[n]!)) / stepS;
      residualJ += Math.abs(storedW - gainsW[n]!) * stepS;
      crossingW += Math.abs(storedW) + Math.abs(record.sunAndHeaterW[n]!);
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
  const gainsW = new Float64Array(tempsK.length);
  const flow: Flow = (a, b, conductanceWPerK) => {
    const toAW = conductanceWPerK * (tempsK[b]! - tempsK[a]!);
    gainsW[a]! += toAW;
    gainsW[b]! -= toAW;
  };
  coverAndAirFlows(model, tempsK, flow);
  floorFlows(model, tempsK, flow);
  const emittedWPerM2 = model.planeNodes.map((node) => STEFAN_BOLTZMANN_W_PER_M2K4 * tempsK[node]! ** 4);
  longwaveGainsW(record.enclosure, model.plane, emittedWPerM2).forEach((gain, plane) => (gainsW[model.planeNodes[plane]!]! += gain));
  moisture.surfaces.forEach(({ node }, s) => (gainsW[node]! += phaseChangeHeatJPerKg(tempsK[node]!) * record.uptakeKgPerS[s]!));
  record.sunAndHeaterW.forEach((power, node) => (gainsW[node]! += power));
  return gainsW;
}

type Flow = (a: number, b: number, conductanceWPerK: number) => void;

function coverAndAirFlows(model: HouseModel, tempsK: Float64Array, flow: Flow): void {
  const { house, conditions, films, air, outside } = model;
  const { coverAreaM2 } = house.geometry;
  const inner = films[0]!;
  flow(inner, air, coverAreaM2 * filmToAirWPerM2K(tempsK[inner]!, tempsK[air]!));
  if (films.length === 2) flow(inner, films[1]!, coverAreaM2 * FILM_GAP_W_PER_M2K);
  flow(films.at(-1)!, outside, coverAreaM2 * outsideConvectionWPerM2K(conditions.windAtCoverMPerS));
  const inflowM3PerS = outsideAirflowM3PerS(house, conditions, { insideAirTempK: tempsK[air]!, outsideAirTempK: tempsK[outside]! });
  flow(air, outside, inflowM3PerS * conditions.airDensityKgPerM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK);
}

/** Layers of soil that the ground outside reaches, each with a third of the edge's conductance. */
const EDGE_LAYERS = [3, 4, 5] as const;

function floorFlows(model: HouseModel, tempsK: Float64Array, flow: Flow): void {
  const { house, conditions, air, outside, deep } = model;
  house.columns.forEach(({ areaM2, soil, edgeConductanceWPerK }, c) => {
    const { surface, rowCover, underCoverAir } = model.columns[c]!;
    const plantAir = underCoverAir >= 0 ? underCoverAir : air;
    flow(surface, plantAir, areaM2 * soilToAirWPerM2K(tempsK[surface]!, tempsK[plantAir]!));
    if (rowCover >= 0) {
      for (const side of [plantAir, air]) flow(rowCover, side, areaM2 * ROW_COVER_TO_AIR_W_PER_M2K);
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
  house.drums.forEach(({ conductanceWPerK }, d) => {
    flow(model.drums[d]!, air, DRUM_SHARES.air * conductanceWPerK);
    flow(model.drums[d]!, model.films[0]!, DRUM_SHARES.film * conductanceWPerK);
    flow(model.drums[d]!, model.columns.at(-1)!.surface, DRUM_SHARES.ground * conductanceWPerK);
  });
}

/** Vaporisation above +0.5 degrees C, sublimation below -0.5, even between (as moisture.ts has it; written again on purpose). */
function phaseChangeHeatJPerKg(tempK: number): number {
  const waterShare = Math.min(1, Math.max(0, tempK - ZERO_CELSIUS_K + 0.5));
  return waterShare * VAPORISATION_HEAT_J_PER_KG + (1 - waterShare) * SUBLIMATION_HEAT_J_PER_KG;
}

const MOST_REFLECTIONS = 2000;
const SETTLED_W_PER_M2 = 1e-10;

interface Beams {
  /** Longwave on the inner side of the cover, from the inner film downwards, and in the gap up and down, W/m2. */
  onCover: number;
  innerDown: number;
  gapUp: number;
  gapDown: number;
  /** For each patch: what leaves the floor, what falls on it, and what goes on to the cover. */
  readonly floorUp: number[];
  readonly ontoFloor: number[];
  readonly toCover: number[];
}

/** What passes or leaves a plane on one side: own emission, reflection of that side's light, transmission of the other side's. */
const leaving = (optics: LongwaveOptics, emitted: number, light: { sameSide: number; otherSide: number }): number =>
  optics.emissivity * emitted + longwaveReflectance(optics) * light.sameSide + optics.transmittance * light.otherSide;

/** Follows the reflections until they die out, then counts what each plane absorbs less what it emits. */
function longwaveGainsW(enclosure: LongwaveEnclosure, plane: PlaneIndex, emitted: readonly number[]): Float64Array {
  const { films, patches, coverAreaM2 } = enclosure;
  const beams: Beams = { onCover: 0, innerDown: 0, gapUp: 0, gapDown: 0, floorUp: patches.map(() => 0), ontoFloor: patches.map(() => 0), toCover: patches.map(() => 0) };
  for (let bounce = 0, before = -1; Math.abs(beams.onCover - before) > SETTLED_W_PER_M2; bounce += 1) {
    if (bounce === MOST_REFLECTIONS) throw new Error(`reflections did not die out within ${MOST_REFLECTIONS} bounces`);
    before = beams.onCover;
    bounceOnce(enclosure, plane, emitted, beams);
  }
  const gainsW = new Float64Array(plane.count);
  patches.forEach((patch, p) => {
    gainsW[plane.floor(p)] = patch.areaM2 * patch.emissivity * (beams.ontoFloor[p]! - emitted[plane.floor(p)]!);
    if (patch.rowCover) gainsW[plane.rowCover(p)] = patch.areaM2 * patch.rowCover.emissivity * (beams.floorUp[p]! + beams.innerDown - 2 * emitted[plane.rowCover(p)]!);
  });
  const sky = emitted[plane.surroundings]!;
  films.forEach((film, f) => {
    const below = f === 0 ? beams.onCover : beams.gapUp;
    const above = f === films.length - 1 ? sky : beams.gapDown;
    gainsW[plane.film(f)] = coverAreaM2 * film.emissivity * (below + above - 2 * emitted[plane.film(f)]!);
  });
  gainsW[plane.surroundings] = -gainsW.reduce((sum, gain) => sum + gain, 0);
  return gainsW;
}

function bounceOnce({ films, patches, coverAreaM2 }: LongwaveEnclosure, plane: PlaneIndex, emitted: readonly number[], beams: Beams): void {
  let onCover = beams.innerDown;
  patches.forEach(({ areaM2, emissivity, rowCover }, p) => {
    const under = rowCover ? leaving(rowCover, emitted[plane.rowCover(p)]!, { sameSide: beams.floorUp[p]!, otherSide: beams.innerDown }) : beams.innerDown;
    const floorUp = emissivity * emitted[plane.floor(p)]! + (1 - emissivity) * under;
    beams.ontoFloor[p] = under;
    beams.floorUp[p] = floorUp;
    beams.toCover[p] = rowCover ? leaving(rowCover, emitted[plane.rowCover(p)]!, { sameSide: beams.innerDown, otherSide: floorUp }) : floorUp;
    onCover += (areaM2 / coverAreaM2) * (beams.toCover[p] - beams.innerDown);
  });
  beams.onCover = onCover;
  const sky = emitted[plane.surroundings]!;
  const inner = films[0]!;
  const fromInner = emitted[plane.film(0)]!;
  const outer = films[1];
  if (outer) {
    beams.gapUp = leaving(inner, fromInner, { sameSide: beams.gapDown, otherSide: onCover });
    beams.gapDown = leaving(outer, emitted[plane.film(1)]!, { sameSide: beams.gapUp, otherSide: sky });
  }
  beams.innerDown = leaving(inner, fromInner, { sameSide: onCover, otherSide: outer ? beams.gapDown : sky });
}
