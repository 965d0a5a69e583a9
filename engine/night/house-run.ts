import { moistAirDensityKgPerM3, humidityRatioKgPerKg } from '../air/moist-air.js';
import type { LongwaveEnclosure } from '../cover/longwave-enclosure.js';
import type { LongwaveExchange } from '../cover/longwave-exchange.js';
import { emptySources, stepImplicit, type Sources } from '../network/implicit-step.js';
import { setConditions } from './conditions.js';
import type { ControlPlan, Controls } from './controls.js';
import { enclosureOf } from './enclosure.js';
import type { Forcing } from './forcing.js';
import { addMadeHeat, heaterShare, sunByNodeW, type MadeHeat } from './gains.js';
import { buildHouseModel, type HouseModel } from './house-model.js';
import type { House } from '../greenhouse/house.js';
import { rememberedExchange, type RememberedExchange } from './remembered-exchange.js';
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
  readonly exchangeOf: RememberedExchange;
}

export const houseRunner = (house: House): HouseRunner => {
  const model = buildHouseModel(house);
  return { model, moisture: buildMoistureModel(model), exchangeOf: rememberedExchange() };
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
  /** Heat from sun, heater, motors and compost into each node, W, without latent heat. */
  readonly gainsW: Float64Array;
  readonly latentW: Float64Array;
  readonly heaterW: number;
  readonly vapourKgPerS: number;
  readonly heapW: number;
  readonly fanMotorsW: number;
  readonly airSpeedMPerS: number;
  readonly iterations: number;
}

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
  let earlierTempsK = start.tempsK;
  for (let i = 0; i < forcing.outsideAirTempK.length; i += 1) {
    const timeS = forcing.startS + (i + 1) * forcing.stepS;
    const next = oneStep(runner, state, { forcing, i, timeS, controls: controls(timeS - forcing.stepS / 2), earlierTempsK, sources, observe });
    earlierTempsK = state.tempsK;
    state = next;
  }
  return state;
}

interface StepInput {
  readonly forcing: Forcing;
  readonly i: number;
  readonly timeS: number;
  readonly controls: Controls;
  /** Temperatures a step before the present ones: where they were going is the first guess. */
  readonly earlierTempsK: Float64Array;
  readonly sources: Sources;
  readonly observe: (record: StepRecord) => void;
}

function oneStep(runner: HouseRunner, state: HouseState, input: StepInput): HouseState {
  const { model, moisture } = runner;
  const { forcing, i, controls, sources } = input;
  const pressurePa = forcing.pressurePa[i]!;
  const tempsK = state.tempsK.map((nowK, n) => 2 * nowK - input.earlierTempsK[n]!);
  tempsK[model.outside] = forcing.outsideAirTempK[i]!;
  tempsK[model.surroundings] = forcing.surroundingsTempK[i]!;
  tempsK[model.behindWall] = model.house.solidWall?.behindTempK ?? forcing.outsideAirTempK[i]!;
  setConditions(model.conditions, model.house, {
    controls,
    windAtCoverMPerS: forcing.windAtCoverMPerS[i]!,
    airDensityKgPerM3: moistAirDensityKgPerM3({ airTempK: state.tempsK[model.air]!, humidityRatio: state.humidity[0]!, pressurePa }),
    sunWPerM2: forcing.globalShortwaveWPerM2[i]!,
  });
  const enclosure = enclosureNow(runner, state, controls);
  const exchange = runner.exchangeOf(enclosure);
  setExchangeAreas(model, exchange);
  const moistureStep: MoistureStep = {
    stepS: forcing.stepS,
    pressurePa,
    outsideHumidityRatio: humidityRatioKgPerKg(forcing.vapourPressurePa[i]!, pressurePa),
    humidityBefore: state.humidity,
    waterBefore: state.waterKgPerM2,
    vapourFromHeaterKgPerS: 0,
    humidity: Float64Array.from(state.humidity),
    uptakeKgPerS: new Float64Array(moisture.surfaces.length),
  };
  const sunW = sunByNodeW(model, { totalW: forcing.sunW[i]!, onWallW: forcing.sunOnWallW[i]! }, controls);
  const latentW = new Float64Array(sunW.length);
  const gainsW = new Float64Array(sunW.length);
  let made: MadeHeat = { heaterW: 0, vapourKgPerS: 0, heapW: 0 };
  const iterations = stepImplicit({
    network: model.network,
    tempsK,
    startTempsK: state.tempsK,
    stepS: forcing.stepS,
    sources,
    updateSources: (temps, out) => {
      moistureStep.vapourFromHeaterKgPerS = heaterShare(model, temps[model.air]!) * (model.house.heater?.vapourKgPerS ?? 0);
      applyMoisture(model, moisture, moistureStep, temps, out);
      latentW.set(out.powerW);
      made = addMadeHeat(model, input.timeS, temps, out);
      for (let n = 0; n < sunW.length; n += 1) {
        out.powerW[n]! += sunW[n]!;
        gainsW[n] = out.powerW[n]! - latentW[n]!;
      }
    },
  });
  input.observe({ timeS: input.timeS, stepIndex: i, controls, tempsBeforeK: state.tempsK, tempsK, humidity: moistureStep.humidity, pressurePa, uptakeKgPerS: moistureStep.uptakeKgPerS, exchange, enclosure, gainsW, latentW, heaterW: made.heaterW, vapourKgPerS: made.vapourKgPerS, heapW: made.heapW, fanMotorsW: model.conditions.fanMotorsW, airSpeedMPerS: model.conditions.airSpeedMPerS, iterations });
  return { tempsK, humidity: moistureStep.humidity, waterKgPerM2: waterAfterStep(moisture, moistureStep) };
}

function setExchangeAreas({ network, plane }: HouseModel, exchange: LongwaveExchange): void {
  let link = 0;
  for (let n = 0; n < plane.count; n += 1) for (let m = n + 1; m < plane.count; m += 1) network.radiators[link++]!.exchangeAreaM2 = exchange.areasM2[n * plane.count + m]!;
}

/** Films and covers with the water they hold now. */
function enclosureNow({ model, moisture }: HouseRunner, state: HouseState, controls: Controls): LongwaveEnclosure {
  const water = state.waterKgPerM2;
  return enclosureOf(model.house, {
    coverOn: (c) => controls.coverOn[c]!,
    curtainDrawn: controls.curtainDrawn,
    roofSnowM: controls.troubles.roofSnowM,
    innerFilmWater: water[moisture.innerFilmWater]!,
    outerFilmWater: water[moisture.outerFilmWater]!,
    rowCoverWater: (c) => water[moisture.rowCoverWater[c]!]!,
    curtainWater: moisture.curtainWater < 0 ? 0 : water[moisture.curtainWater]!,
  });
}
