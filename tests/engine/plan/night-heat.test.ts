import { beforeAll, describe, expect, it } from 'vitest';
import { outsideConvectionWPerM2K } from '../../../engine/cover/convection.js';
import { DEEP_SOIL_DEPTH_M, SOIL_LAYERS_M } from '../../../engine/ground/soil-column.js';
import { forcingFor } from '../../../engine/night/forcing.js';
import { runHouse } from '../../../engine/night/house-run.js';
import { weatherScenarios } from '../../../engine/night/scenarios.js';
import { controlsOfChoices } from '../../../engine/plan/controls-of-choices.js';
import type { EveningPlan } from '../../../engine/plan/plan-evening.js';
import { CLEAR_COLD_NIGHT, houseOf, inventedWeather, REFERENCE_FILE } from '../../fixtures/houses.js';
import { inventedEvening } from '../../fixtures/invented-evening.js';

const OVERCAST = { ...CLEAR_COLD_NIGHT, lastNightCloud: 1, dayCloud: 1, peakSunWPerM2: 80 };
/** Soil layers whose sides give heat to the ground outside, a third each. */
const EDGE_LAYERS = [3, 4, 5];

describe('the heat of a night', () => {
  let clear: EveningPlan;
  beforeAll(() => {
    clear = inventedEvening({});
  });

  it('goes to the air outside as the laws of cover and ground have it', () => {
    // The account has it as what is left over; here it is worked out from the temperatures of film and soil.
    const { evening, house, night, standing, chosen, doubt } = clear;
    const weather = inventedWeather(houseOf(REFERENCE_FILE), CLEAR_COLD_NIGHT);
    const forcing = forcingFor(house, weather, { fromS: evening.atS, toS: evening.atS + Math.floor((night.sunriseS - evening.atS) / 600) * 600 }, weatherScenarios(doubt, evening.atS)[0]!.departure);
    const { model } = evening.runner;
    const outer = model.films.at(-1)!;
    const flowsW: number[] = [];
    runHouse(evening.runner, evening.state, forcing, controlsOfChoices(house, standing, chosen.choices), ({ timeS, stepIndex, tempsK }) => {
      if (timeS <= night.sunsetS) return;
      const alongFilmW = house.geometry.coverAreaM2 * outsideConvectionWPerM2K(forcing.windAtCoverMPerS[stepIndex]!) * (tempsK[outer]! - tempsK[model.outside]!);
      const throughGroundW = house.columns.reduce((sum, { edgeConductanceWPerK, areaM2, soil }, c) => {
        const { surface, deepest } = model.columns[c]!;
        const sideW = EDGE_LAYERS.reduce((side, layer) => side + (edgeConductanceWPerK / EDGE_LAYERS.length) * (tempsK[surface + layer]! - tempsK[model.outside]!), 0);
        const depthM = DEEP_SOIL_DEPTH_M - SOIL_LAYERS_M.reduce((down, layerM) => down + layerM, 0) + SOIL_LAYERS_M.at(-1)! / 2;
        return sum + sideW - ((soil.thermalConductivityWPerMK * areaM2) / depthM) * (tempsK[model.deep]! - tempsK[deepest]!);
      }, 0);
      flowsW.push(alongFilmW + throughGroundW);
    });
    const meanW = flowsW.reduce((sum, flow) => sum + flow, 0) / flowsW.length;
    expect(Math.abs(clear.heat.lost.airW - meanW)).toBeLessThan(0.02 * clear.heat.lost.skyW);
  });

  it('goes to the sky above all on a clear night, and far less of it under cloud', () => {
    const { lost, cloudFraction, windMPerS } = clear.heat;
    expect(lost.skyW).toBeGreaterThan(Math.abs(lost.airW) + Math.abs(lost.gapsW));
    expect(cloudFraction).toBeLessThan(0.05);
    expect(windMPerS).toBeCloseTo(CLEAR_COLD_NIGHT.wind10mMPerS, 6);
    const overcast = inventedEvening({}, OVERCAST).heat;
    expect(overcast.lost.skyW).toBeLessThan(0.6 * lost.skyW);
    expect(overcast.cloudFraction).toBeGreaterThan(0.9);
  });

  it('comes from the ground where nothing else is, and from water where it stands', () => {
    expect(clear.heat.given.groundW).toBeGreaterThan(0);
    expect(clear.heat.given).toMatchObject({ waterW: 0, stonesW: 0, heaterW: 0, compostW: 0 });
    const wet = inventedEvening({ drums: [{ count: 10, litres: 208 }] });
    expect(wet.heat.given.waterW).toBeGreaterThan(0);
    expect(wet.heat.given.groundW).toBeLessThan(clear.heat.given.groundW);
  });

  it('of a heater is what it burns', () => {
    const heated = inventedEvening({ heater: { kind: 'electric', power: 1000, thermostat: false, on: true } });
    expect(heated.heat.given.heaterW).toBeCloseTo(1000, 3);
    expect(heated.heat.given.groundW).toBeLessThan(clear.heat.given.groundW);
  });
});
