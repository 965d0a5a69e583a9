import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, SUBLIMATION_HEAT_J_PER_KG, VAPORISATION_HEAT_J_PER_KG } from '../constants.js';
import { humidityRatioKgPerKg } from '../air/moist-air.js';
import { saturationSlopeAtSurfacePaPerK, saturationVapourPressureAtSurfacePa } from '../air/saturation-magnus.js';
import { MOST_WATER_ON_FILM_KG_PER_M2, wetFraction } from '../cover/film-optics.js';
import { outsideConvectionWPerM2K } from '../cover/convection.js';
import type { Sources } from '../network/implicit-step.js';
import { ZERO_CELSIUS_K } from '../units.js';
import { coverExchangeWPerK, filmToAirWPerM2K, outsideAirflowM3PerS, ROW_COVER_TO_AIR_W_PER_M2K, soilToAirWPerM2K, UNDER_COVER_HEIGHT_M, type HouseModel } from './house-model.js';

/** A surface that takes vapour from a body of air or gives it. */
interface WetSurface {
  readonly node: number;
  readonly areaM2: number;
  /** Volume of air it touches; -1 is the air outside. */
  readonly volume: number;
  /** Index into the water held on films and covers; -1 for soil, which does not run dry in a night. */
  readonly water: number;
  readonly evaporationShare: number;
  readonly heatTransferWPerM2K: (tempsK: Float64Array) => number;
}

/** Bodies of air with their humidity, and the surfaces they exchange vapour with. Volume 0 is the house, the others lie under covers. */
export interface MoistureModel {
  readonly surfaces: readonly WetSurface[];
  readonly volumesM3: readonly number[];
  /** Column of each volume from 1 on. */
  readonly columnOfVolume: readonly number[];
  readonly waterAreasM2: readonly number[];
  readonly innerFilmWater: number;
  readonly outerFilmWater: number;
  /** For each column: index of the water on its row cover, -1 without one. */
  readonly rowCoverWater: readonly number[];
}

export function buildMoistureModel(model: HouseModel): MoistureModel {
  const { house, films, columns } = model;
  const { coverAreaM2, volumeM3 } = house.geometry;
  const surfaces: WetSurface[] = [];
  const volumesM3 = [volumeM3];
  const columnOfVolume = [-1];
  const waterAreasM2 = [coverAreaM2, coverAreaM2];
  surfaces.push({ node: films[0]!, areaM2: coverAreaM2, volume: 0, water: 0, evaporationShare: 1, heatTransferWPerM2K: (t) => filmToAirWPerM2K(t[films[0]!]!, t[model.air]!) });
  surfaces.push({ node: films.at(-1)!, areaM2: coverAreaM2, volume: -1, water: 1, evaporationShare: 1, heatTransferWPerM2K: () => outsideConvectionWPerM2K(model.conditions.windAtCoverMPerS) });
  const rowCoverWater = house.columns.map((column, c) => {
    const index = columns[c]!;
    const { areaM2, evaporationShare } = column;
    const airNode = index.underCoverAir >= 0 ? index.underCoverAir : model.air;
    const volume = index.underCoverAir >= 0 ? volumesM3.push(areaM2 * UNDER_COVER_HEIGHT_M) - 1 : 0;
    if (volume > 0) columnOfVolume.push(c);
    surfaces.push({ node: index.surface, areaM2, volume, water: -1, evaporationShare, heatTransferWPerM2K: (t) => soilToAirWPerM2K(t[index.surface]!, t[airNode]!) });
    if (index.rowCover < 0) return -1;
    const water = waterAreasM2.push(areaM2) - 1;
    surfaces.push({ node: index.rowCover, areaM2, volume, water, evaporationShare: 1, heatTransferWPerM2K: () => ROW_COVER_TO_AIR_W_PER_M2K });
    return water;
  });
  return { surfaces, volumesM3, columnOfVolume, waterAreasM2, innerFilmWater: 0, outerFilmWater: 1, rowCoverWater };
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
  const conductance = moisture.surfaces.map((surface, s) => vapourConductanceKgPerS(surface, step, { tempsK, saturated: saturated[s]!, humidity: surface.volume < 0 ? step.outsideHumidityRatio : step.humidity[surface.volume]! }));
  const weights = solveHumidity(model, moisture, step, { tempsK, saturated, conductance });
  const saturatedSlope = moisture.surfaces.map((surface, s) => (saturated[s]! * saturationSlopeAtSurfacePaPerK(tempsK[surface.node]!)) / saturationVapourPressureAtSurfacePa(tempsK[surface.node]!));
  moisture.surfaces.forEach((surface, s) => {
    const humidity = surface.volume < 0 ? step.outsideHumidityRatio : step.humidity[surface.volume]!;
    const uptake = conductance[s]! * (humidity - saturated[s]!);
    const tempK = tempsK[surface.node]!;
    const heat = phaseChangeHeatJPerKg(tempK);
    step.uptakeKgPerS[s] = uptake;
    sources.powerW[surface.node]! += heat * uptake;
    sources.slopeWPerK[surface.node]! -= heat * conductance[s]! * saturatedSlope[s]!;
    if (surface.volume < 0) return;
    // The air takes on the humidity of its surfaces within seconds: each surface feels how the others pull it along.
    moisture.surfaces.forEach((other, o) => {
      if (other.volume !== surface.volume) return;
      const pull = (heat * conductance[s]! * conductance[o]! * saturatedSlope[o]!) / weights[surface.volume]!;
      if (other.node === surface.node) sources.slopeWPerK[surface.node]! += pull;
      else sources.crossSlopes.push({ node: surface.node, dependsOn: other.node, slopeWPerK: pull });
    });
  });
}

/** Condensing is free; evaporating depends on how wet the surface is, and a film gives no more than it holds. */
function vapourConductanceKgPerS(surface: WetSurface, step: MoistureStep, state: { tempsK: Float64Array; saturated: number; humidity: number }): number {
  const full = (surface.heatTransferWPerM2K(state.tempsK) * surface.areaM2) / DRY_AIR_HEAT_CAPACITY_J_PER_KGK;
  const deficit = state.saturated - state.humidity;
  if (deficit <= 0) return full;
  if (surface.water < 0) return full * surface.evaporationShare;
  const held = step.waterBefore[surface.water]!;
  return Math.min(full * wetFraction(held), (held * surface.areaM2) / step.stepS / deficit);
}

/** Returns how strongly each body of air is held to its surroundings. The house air and the small bodies under covers form a star: each of those is eliminated into the house air. */
function solveHumidity(model: HouseModel, moisture: MoistureModel, step: MoistureStep, latest: { tempsK: Float64Array; saturated: readonly number[]; conductance: readonly number[] }): readonly number[] {
  const { conditions, house } = model;
  const density = conditions.airDensityKgPerM3;
  const held = moisture.volumesM3.map((volume) => (density * volume) / step.stepS);
  const weight = held.map((mass) => mass);
  const inflow = held.map((mass, v) => mass * step.humidityBefore[v]!);
  moisture.surfaces.forEach(({ volume }, s) => {
    if (volume < 0) return;
    weight[volume]! += latest.conductance[s]!;
    inflow[volume]! += latest.conductance[s]! * latest.saturated[s]!;
  });
  const outsideFlow = density * outsideAirflowM3PerS(house, conditions, { insideAirTempK: latest.tempsK[model.air]!, outsideAirTempK: latest.tempsK[model.outside]! });
  weight[0]! += outsideFlow;
  inflow[0]! += outsideFlow * step.outsideHumidityRatio;
  const exchange = moisture.columnOfVolume.map((column) => (column < 0 ? 0 : coverExchangeWPerK(house, conditions, column) / DRY_AIR_HEAT_CAPACITY_J_PER_KGK));
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
