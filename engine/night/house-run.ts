import { moistAirDensityKgPerM3, humidityRatioKgPerKg } from '../air/moist-air.js';
import { blendOptics, type LongwaveOptics } from '../cover/film-optics.js';
import { longwaveExchange, type LongwaveEnclosure, type LongwaveExchange } from '../cover/longwave-exchange.js';
import { emptySources, stepImplicit, type Sources } from '../network/implicit-step.js';
import type { ControlPlan, Controls } from './controls.js';
import type { Forcing } from './forcing.js';
import { buildHouseModel, type HouseModel } from './house-model.js';
import type { House } from '../greenhouse/house.js';
import { applyMoisture, buildMoistureModel, waterAfterStep, type MoistureModel, type MoistureStep } from './moisture.js';

/** Everything that a house remembers from one step to the next. */
export interface HouseState {
  readonly tempsK: Float64Array;
  readonly humidity: Float64Array;
  readonly waterKgPerM2: Float64Array;
}

/** A house ready to be run: built once, used for every plan and scenario. */
export interface HouseRunner {
  readonly model: HouseModel;
  readonly moisture: MoistureModel;
}

export const houseRunner = (house: House): HouseRunner => {
  const model = buildHouseModel(house);
  return { model, moisture: buildMoistureModel(model) };
};

/** One finished step, as an observer sees it: valid only during the call. */
export interface StepRecord {
  readonly timeS: number;
  readonly stepIndex: number;
  readonly controls: Controls;
  readonly tempsBeforeK: Float64Array;
  readonly tempsK: Float64Array;
  readonly humidity: Float64Array;
  readonly pressurePa: number;
  readonly uptakeKgPerS: Float64Array;
  readonly exchange: LongwaveExchange;
  readonly enclosure: LongwaveEnclosure;
  /** Heat from sun and heater into each node, W, without latent heat. */
  readonly sunAndHeaterW: Float64Array;
  readonly latentW: Float64Array;
  readonly heaterW: number;
  readonly iterations: number;
}

/** Soil longwave emissivity (from memory: 0.92 to 0.97). */
const SOIL_EMISSIVITY = 0.95;
/** Share of the sun kept in the house that ends as heat; the rest is reflected out (prior of this project). */
const ABSORBED_SHARE = 0.8;
/** Of that, what the soil takes at once; foliage and air take the rest (prior of this project). */
const SUN_TO_SOIL_SHARE = 0.6;
/** A thermostat gives full power below its setting by half of this and none above by half (keeps the step smooth). */
const THERMOSTAT_BAND_K = 1;
const TRANSPARENT: LongwaveOptics = { transmittance: 1, emissivity: 0 };

/**
 * Runs a house through the weather of a forcing from a given state.
 * Units: SI.
 * Valid: a state of the same house.
 * Outside: throws when a step does not settle.
 * Source: network of this project (one file for each relation).
 */
export function runHouse(runner: HouseRunner, start: HouseState, forcing: Forcing, controls: ControlPlan, observe: (record: StepRecord) => void = () => undefined): HouseState {
  const { model } = runner;
  const sources = emptySources(model.network.nodes.length);
  let state = start;
  for (let i = 0; i < forcing.outsideAirTempK.length; i += 1) {
    const timeS = forcing.startS + (i + 1) * forcing.stepS;
    state = oneStep(runner, state, { forcing, i, timeS, controls: controls(timeS - forcing.stepS / 2), sources, observe });
  }
  return state;
}

interface StepInput {
  readonly forcing: Forcing;
  readonly i: number;
  readonly timeS: number;
  readonly controls: Controls;
  readonly sources: Sources;
  readonly observe: (record: StepRecord) => void;
}

function oneStep(runner: HouseRunner, state: HouseState, input: StepInput): HouseState {
  const { model, moisture } = runner;
  const { forcing, i, controls, sources } = input;
  const size = model.network.nodes.length;
  const tempsK = Float64Array.from(state.tempsK);
  tempsK[model.outside] = forcing.outsideAirTempK[i]!;
  tempsK[model.surroundings] = forcing.surroundingsTempK[i]!;
  setConditions(model, state, input);
  const enclosure = enclosureNow(runner, state, controls);
  const exchange = longwaveExchange(enclosure);
  let link = 0;
  for (let n = 0; n < exchange.plane.count; n += 1) for (let m = n + 1; m < exchange.plane.count; m += 1) model.network.radiators[link++]!.exchangeAreaM2 = exchange.areasM2[n * exchange.plane.count + m]!;
  const moistureStep: MoistureStep = {
    stepS: forcing.stepS,
    pressurePa: forcing.pressurePa[i]!,
    outsideHumidityRatio: humidityRatioKgPerKg(forcing.vapourPressurePa[i]!, forcing.pressurePa[i]!),
    humidityBefore: state.humidity,
    waterBefore: state.waterKgPerM2,
    humidity: Float64Array.from(state.humidity),
    uptakeKgPerS: new Float64Array(moisture.surfaces.length),
  };
  const sunW = sunByNodeW(model, forcing.sunW[i]!, controls);
  const sunAndHeaterW = new Float64Array(size);
  const latentW = new Float64Array(size);
  let heaterW = 0;
  const iterations = stepImplicit({
    network: model.network,
    tempsK,
    stepS: forcing.stepS,
    sources,
    updateSources: (temps, out) => {
      applyMoisture(model, moisture, moistureStep, temps, out);
      latentW.set(out.powerW);
      heaterW = addHeater(model, temps, out);
      for (let n = 0; n < size; n += 1) {
        sunAndHeaterW[n] = sunW[n]! + (n === model.air ? heaterW : 0);
        out.powerW[n]! += sunW[n]!;
      }
    },
  });
  input.observe({ timeS: input.timeS, stepIndex: i, controls, tempsBeforeK: state.tempsK, tempsK, humidity: moistureStep.humidity, pressurePa: moistureStep.pressurePa, uptakeKgPerS: moistureStep.uptakeKgPerS, exchange, enclosure, sunAndHeaterW, latentW, heaterW, iterations });
  return { tempsK, humidity: moistureStep.humidity, waterKgPerM2: waterAfterStep(moisture, moistureStep) };
}

function setConditions(model: HouseModel, state: HouseState, { forcing, i, controls }: StepInput): void {
  const { conditions } = model;
  conditions.windAtCoverMPerS = forcing.windAtCoverMPerS[i]!;
  conditions.airDensityKgPerM3 = moistAirDensityKgPerM3({ airTempK: state.tempsK[model.air]!, humidityRatio: state.humidity[0]!, pressurePa: forcing.pressurePa[i]! });
  conditions.ventsMayOpen = controls.ventsMayOpen;
  conditions.coverOn = [...controls.coverOn];
  conditions.heaterOn = controls.heaterOn;
  conditions.heaterSetK = controls.heaterSetK;
}

/** Films and covers with the water they hold now; a cover that does not lie on its bed lets everything pass. */
function enclosureNow({ model, moisture }: HouseRunner, state: HouseState, controls: Controls): LongwaveEnclosure {
  const { house } = model;
  const water = state.waterKgPerM2;
  const last = house.films.length - 1;
  return {
    coverAreaM2: house.geometry.coverAreaM2,
    films: house.films.map((film, f) => blendOptics(film.dry, film.wet, (f === 0 ? water[moisture.innerFilmWater]! : 0) + (f === last ? water[moisture.outerFilmWater]! : 0))),
    patches: house.columns.map((column, c) => ({
      areaM2: column.areaM2,
      emissivity: SOIL_EMISSIVITY,
      rowCover: column.rowCover === null ? null : controls.coverOn[c] ? blendOptics(column.rowCover.dry, column.rowCover.wet, water[moisture.rowCoverWater[c]!]!) : TRANSPARENT,
    })),
  };
}

/** Sun in the house: drums by their aperture, soil by area, foliage and air the rest; a cover keeps part of it above the bed. */
function sunByNodeW(model: HouseModel, sunW: number, controls: Controls): Float64Array {
  const power = new Float64Array(model.network.nodes.length);
  if (sunW <= 0) return power;
  const { house } = model;
  const absorbed = ABSORBED_SHARE * sunW;
  const drumShare = house.drums.reduce((sum, group) => sum + group.sunShare, 0);
  house.drums.forEach((group, d) => (power[model.drums[d]!]! += absorbed * group.sunShare));
  const rest = absorbed * (1 - Math.min(1, drumShare));
  power[model.air]! += (1 - SUN_TO_SOIL_SHARE) * rest;
  house.columns.forEach((column, c) => {
    const index = model.columns[c]!;
    const onColumn = (SUN_TO_SOIL_SHARE * rest * column.areaM2) / house.geometry.floorAreaM2;
    const passed = column.rowCover && controls.coverOn[c] ? column.rowCover.sunTransmittance : 1;
    power[index.surface]! += passed * onColumn;
    if (passed < 1) power[index.rowCover]! += (1 - passed) * onColumn;
  });
  return power;
}

function addHeater(model: HouseModel, tempsK: Float64Array, sources: Sources): number {
  const { heater } = model.house;
  const { conditions, air } = model;
  if (!heater || !conditions.heaterOn) return 0;
  const set = heater.thermostat ? conditions.heaterSetK : null;
  const share = set === null ? 1 : Math.min(1, Math.max(0, (set + THERMOSTAT_BAND_K / 2 - tempsK[air]!) / THERMOSTAT_BAND_K));
  sources.powerW[air]! += share * heater.deliveredW;
  if (set !== null) sources.bands.push({ node: air, lowK: set - THERMOSTAT_BAND_K / 2, highK: set + THERMOSTAT_BAND_K / 2 });
  if (share > 0 && share < 1) sources.slopeWPerK[air]! -= heater.deliveredW / THERMOSTAT_BAND_K;
  return share * heater.deliveredW;
}
