import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, SUBLIMATION_HEAT_J_PER_KG, VAPORISATION_HEAT_J_PER_KG } from '../constants.js';
import { humidityRatioKgPerKg } from '../air/moist-air.js';
import { saturationSlopeAtSurfacePaPerK, saturationVapourPressureAtSurfacePa } from '../air/saturation-magnus.js';
import { MOST_WATER_ON_FILM_KG_PER_M2, wetFraction } from '../cover/film-optics.js';
import { outsideConvectionWPerM2K } from '../cover/convection.js';
import { snowHoldingShare, snowyShare } from '../cover/snow-layer.js';
import type { Sources } from '../network/implicit-step.js';
import { ZERO_CELSIUS_K } from '../units.js';
import { coverExchangeWPerK, curtainExchangeWPerK, filmToAirWPerM2K, outsideAirflowM3PerS, ROW_COVER_TO_AIR_W_PER_M2K, soilToAirWPerM2K, stirredAtColumnWPerM2K, UNDER_COVER_HEIGHT_M } from './air-exchange.js';
import type { HouseModel } from './house-model.js';
import { ROOF_SHARE_OF_VOLUME } from './parts/air-part.js';

const OUTSIDE_VOLUME = -1;

/** A surface that takes vapour from a body of air or gives it. */
interface WetSurface {
  readonly node: number;
  readonly areaM2: number;
  /** Volume of air it touches. */
  readonly volume: number;
  /** Index into the water held on films and covers; -1 for soil, which does not run dry in a night. */
  readonly water: number;
  readonly evaporationShare: number;
  /** Not coupled to the other surfaces in the network: how they pull each other is then left to the iteration. */
  readonly standsApart?: boolean;
  readonly heatTransferWPerM2K: (tempsK: Float64Array) => number;
}

/** A body of air with its humidity; all but that of the house exchange air with it. */
interface AirVolume {
  readonly volumeM3: number;
  readonly exchangeWPerK: () => number;
}

/** Bodies of air, and the surfaces they exchange vapour with. Volume 0 is the house where the plants stand; the others lie under covers or above the curtain. */
export interface MoistureModel {
  readonly surfaces: readonly WetSurface[];
  readonly volumes: readonly AirVolume[];
  /** The volume that outside air comes into. */
  readonly roofVolume: number;
  /** For each column: the volume its plants stand in. */
  readonly volumeOfColumn: readonly number[];
  readonly waterAreasM2: readonly number[];
  readonly innerFilmWater: number;
  readonly outerFilmWater: number;
  /** For each column: index of the water on its row cover, -1 without one. */
  readonly rowCoverWater: readonly number[];
  /** -1 without a curtain. */
  readonly curtainWater: number;
}

export function buildMoistureModel(model: HouseModel): MoistureModel {
  const { house, conditions, films, columns } = model;
  const { coverAreaM2, volumeM3, floorAreaM2 } = house.geometry;
  const surfaces: WetSurface[] = [];
  const roofVolume = house.curtain ? 1 : 0;
  const volumes: AirVolume[] = [{ volumeM3: house.curtain ? (1 - ROOF_SHARE_OF_VOLUME) * volumeM3 : volumeM3, exchangeWPerK: () => 0 }];
  if (house.curtain) volumes.push({ volumeM3: ROOF_SHARE_OF_VOLUME * volumeM3, exchangeWPerK: () => curtainExchangeWPerK(house, conditions) });
  const waterAreasM2 = [coverAreaM2, coverAreaM2];
  surfaces.push({ node: films[0]!, areaM2: coverAreaM2, volume: roofVolume, water: 0, evaporationShare: 1, heatTransferWPerM2K: (t) => filmToAirWPerM2K(t[films[0]!]!, t[model.roofAir]!, conditions.stirredWPerM2K) });
  // Dew and frost on the bare part of the outer film; what forms on snow does not reach it.
  const holdingShare = snowHoldingShare(house.geometry.facets);
  surfaces.push({ node: films.at(-1)!, areaM2: coverAreaM2, volume: OUTSIDE_VOLUME, water: 1, evaporationShare: 1, heatTransferWPerM2K: () => (1 - snowyShare(conditions.troubles.roofSnowM, holdingShare)) * outsideConvectionWPerM2K(conditions.windAtCoverMPerS) });
  const curtainWater = model.curtain < 0 ? -1 : waterAreasM2.push(floorAreaM2) - 1;
  if (model.curtain >= 0) surfaces.push({ node: model.curtain, areaM2: floorAreaM2, volume: 0, water: curtainWater, evaporationShare: 1, heatTransferWPerM2K: (t) => (conditions.curtainDrawn ? filmToAirWPerM2K(t[model.curtain]!, t[model.air]!, conditions.stirredWPerM2K) : 0) });
  // Warm damp air that is blown through cold ground leaves its water there; the drain takes it.
  if (model.tubes) surfaces.push({ node: model.tubes.rings[0]!, areaM2: 1, volume: 0, water: -1, evaporationShare: 0, standsApart: true, heatTransferWPerM2K: () => conditions.fanWPerK.tubes });
  const volumeOfColumn: number[] = [];
  const rowCoverWater = house.columns.map((column, c) => {
    const index = columns[c]!;
    const { areaM2, evaporationShare } = column;
    const airNode = index.underCoverAir >= 0 ? index.underCoverAir : model.air;
    const volume = index.underCoverAir >= 0 ? volumes.push({ volumeM3: areaM2 * UNDER_COVER_HEIGHT_M, exchangeWPerK: () => coverExchangeWPerK(house, conditions, c) }) - 1 : 0;
    volumeOfColumn.push(volume);
    surfaces.push({ node: index.surface, areaM2, volume, water: -1, evaporationShare, heatTransferWPerM2K: (t) => soilToAirWPerM2K(t[index.surface]!, t[airNode]!, stirredAtColumnWPerM2K(conditions, c)) });
    if (index.rowCover < 0) return -1;
    const water = waterAreasM2.push(areaM2) - 1;
    surfaces.push({ node: index.rowCover, areaM2, volume, water, evaporationShare: 1, heatTransferWPerM2K: () => ROW_COVER_TO_AIR_W_PER_M2K });
    return water;
  });
  return { surfaces, volumes, roofVolume, volumeOfColumn, waterAreasM2, innerFilmWater: 0, outerFilmWater: 1, rowCoverWater, curtainWater };
}

/** Half-width over which the heat of evaporation goes over into that of sublimation: frost forms patchily around 0 degrees C. */
const PHASE_BLEND_K = 0.5;

function phaseChangeHeatJPerKg(tempK: number): number {
  const iceShare = Math.min(1, Math.max(0, 0.5 - (tempK - ZERO_CELSIUS_K) / (2 * PHASE_BLEND_K)));
  return VAPORISATION_HEAT_J_PER_KG + iceShare * (SUBLIMATION_HEAT_J_PER_KG - VAPORISATION_HEAT_J_PER_KG);
}

export interface MoistureStep {
  readonly stepS: number;
  readonly pressurePa: number;
  readonly outsideHumidityRatio: number;
  readonly humidityBefore: Float64Array;
  /** kg/m2 on each film or cover at the start of the step. */
  readonly waterBefore: Float64Array;
  /** What a flame gives off into the house air; set before each iteration. */
  vapourFromHeaterKgPerS: number;
  /** Latest iterate, then the result. */
  readonly humidity: Float64Array;
  /** Vapour taken up by each surface, kg/s; negative while it evaporates. */
  readonly uptakeKgPerS: Float64Array;
}

/**
 * Humidity of all bodies of air for the latest temperatures, and the heat that condensing and evaporating puts into the surfaces.
 * Units: kg/kg, kg/s, W.
 * Valid: temperatures inside the Magnus range.
 * Outside: throws OutOfRangeError.
 * Source: Lewis relation E = (h/cp)(w - w_sat) (Incropera2007 sec. 6.7); quasi-implicit balance of this project.
 */
export function applyMoisture(model: HouseModel, moisture: MoistureModel, step: MoistureStep, tempsK: Float64Array, sources: Sources): void {
  const saturated = moisture.surfaces.map((surface) => humidityRatioKgPerKg(saturationVapourPressureAtSurfacePa(tempsK[surface.node]!), step.pressurePa));
  const given = moisture.surfaces.map((surface, s) => vapourFlow(surface, step, { tempsK, saturated: saturated[s]!, humidity: surface.volume < 0 ? step.outsideHumidityRatio : step.humidity[surface.volume]! }));
  const conductance = given.map((flow) => flow.conductanceKgPerS);
  const weights = solveHumidity(model, moisture, step, { tempsK, saturated, given });
  const saturatedSlope = moisture.surfaces.map((surface, s) => (saturated[s]! * saturationSlopeAtSurfacePaPerK(tempsK[surface.node]!)) / saturationVapourPressureAtSurfacePa(tempsK[surface.node]!));
  moisture.surfaces.forEach((surface, s) => {
    const humidity = surface.volume < 0 ? step.outsideHumidityRatio : step.humidity[surface.volume]!;
    const uptake = conductance[s]! * (humidity - saturated[s]!) - given[s]!.lastKgPerS;
    const tempK = tempsK[surface.node]!;
    const heat = phaseChangeHeatJPerKg(tempK);
    step.uptakeKgPerS[s] = uptake;
    sources.powerW[surface.node]! += heat * uptake;
    sources.slopeWPerK[surface.node]! -= heat * conductance[s]! * saturatedSlope[s]!;
    if (surface.volume < 0 || surface.standsApart) return;
    // The air takes on the humidity of its surfaces within seconds: each surface feels how the others pull it along.
    moisture.surfaces.forEach((other, o) => {
      if (other.volume !== surface.volume || other.standsApart) return;
      const pull = (heat * conductance[s]! * conductance[o]! * saturatedSlope[o]!) / weights[surface.volume]!;
      if (other.node === surface.node) sources.slopeWPerK[surface.node]! += pull;
      else sources.crossFallWPerK[surface.node * sources.powerW.length + other.node]! -= pull;
    });
  });
}

/** How a surface exchanges vapour: as its air and its own temperature have it, or the last of its water within the step, whatever they are. */
interface VapourFlow {
  readonly conductanceKgPerS: number;
  readonly lastKgPerS: number;
}

/** Condensing is free; evaporating depends on how wet the surface is, and a film gives no more than it holds. */
function vapourFlow(surface: WetSurface, step: MoistureStep, state: { tempsK: Float64Array; saturated: number; humidity: number }): VapourFlow {
  const full = (surface.heatTransferWPerM2K(state.tempsK) * surface.areaM2) / DRY_AIR_HEAT_CAPACITY_J_PER_KGK;
  const deficit = state.saturated - state.humidity;
  if (deficit <= 0) return { conductanceKgPerS: full, lastKgPerS: 0 };
  if (surface.water < 0) return { conductanceKgPerS: full * surface.evaporationShare, lastKgPerS: 0 };
  const held = step.waterBefore[surface.water]!;
  const lastKgPerS = (held * surface.areaM2) / step.stepS;
  const wet = full * wetFraction(held);
  // A film that dries within the step gives all it has: no temperature changes that, and the step must know it.
  return wet * deficit > lastKgPerS ? { conductanceKgPerS: 0, lastKgPerS } : { conductanceKgPerS: wet, lastKgPerS: 0 };
}

/** Returns how strongly each body of air is held to its surroundings. The house air and the other bodies form a star: each of those is eliminated into the house air. */
function solveHumidity(model: HouseModel, moisture: MoistureModel, step: MoistureStep, latest: { tempsK: Float64Array; saturated: readonly number[]; given: readonly VapourFlow[] }): readonly number[] {
  const { conditions, house } = model;
  const density = conditions.airDensityKgPerM3;
  const weight = moisture.volumes.map(({ volumeM3 }) => (density * volumeM3) / step.stepS);
  const inflow = weight.map((mass, v) => mass * step.humidityBefore[v]!);
  inflow[0]! += step.vapourFromHeaterKgPerS;
  moisture.surfaces.forEach(({ volume }, s) => {
    if (volume < 0) return;
    const { conductanceKgPerS, lastKgPerS } = latest.given[s]!;
    weight[volume]! += conductanceKgPerS;
    inflow[volume]! += conductanceKgPerS * latest.saturated[s]! + lastKgPerS;
  });
  const outsideFlow = density * outsideAirflowM3PerS(house, conditions, { insideAirTempK: latest.tempsK[model.roofAir]!, outsideAirTempK: latest.tempsK[model.outside]! });
  weight[moisture.roofVolume]! += outsideFlow;
  inflow[moisture.roofVolume]! += outsideFlow * step.outsideHumidityRatio;
  const exchange = moisture.volumes.map(({ exchangeWPerK }) => exchangeWPerK() / DRY_AIR_HEAT_CAPACITY_J_PER_KGK);
  for (let v = 1; v < weight.length; v += 1) {
    const total = weight[v]! + exchange[v]!;
    weight[0]! += exchange[v]! - (exchange[v]! * exchange[v]!) / total;
    inflow[0]! += (exchange[v]! * inflow[v]!) / total;
  }
  step.humidity[0] = inflow[0]! / weight[0]!;
  for (let v = 1; v < weight.length; v += 1) step.humidity[v] = (inflow[v]! + exchange[v]! * step.humidity[0]) / (weight[v]! + exchange[v]!);
  return weight.map((own, v) => own + exchange[v]!);
}

/**
 * Water on films and covers after the step; what runs off is lost to the soil.
 * Units: kg/m2.
 * Valid: a step that applyMoisture has filled in.
 * Outside: not checked.
 * Source: mass balance; the most that a film holds is named in film-optics.ts (project estimate).
 */
export function waterAfterStep(moisture: MoistureModel, step: MoistureStep): Float64Array {
  const water = Float64Array.from(step.waterBefore);
  moisture.surfaces.forEach((surface, s) => {
    if (surface.water < 0) return;
    const after = water[surface.water]! + (step.uptakeKgPerS[s]! * step.stepS) / surface.areaM2;
    water[surface.water] = Math.min(MOST_WATER_ON_FILM_KG_PER_M2, Math.max(0, after));
  });
  return water;
}
