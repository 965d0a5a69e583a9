import { describe, expect, it } from 'vitest';
import { humidityRatioKgPerKg } from '../../engine/air/moist-air.js';
import { forcingFor } from '../../engine/night/forcing.js';
import { outsideAirflowM3PerS } from '../../engine/night/air-exchange.js';
import { houseRunner, runHouse } from '../../engine/night/house-run.js';
import { startState } from '../../engine/night/start-state.js';
import { GROUND, houseOf, plainControls } from '../fixtures/houses.js';
import { randomControls, randomDeviceControls, randomGreenhouse, randomWeather, seededRandom, withRandomDevices } from './random-houses.js';

/** Vapour kept in the air, taken up by surfaces and blown out must add up to none made or lost. */
describe('water account of the air in the house', () => {
  it.each(Array.from({ length: 24 }, (_, i) => ({ seed: 100 + i, devices: i >= 15 })))('random house and weather $seed, devices: $devices', ({ seed, devices }) => {
    const random = seededRandom(seed);
    const plain = randomGreenhouse(random);
    const house = houseOf(devices ? withRandomDevices(random, plain) : plain);
    const { invented, weather } = randomWeather(random, house);
    const runner = houseRunner(house);
    const { model, moisture } = runner;
    const forcing = forcingFor(house, weather, { fromS: weather.timeS[0]!, toS: weather.timeS.at(-1)! });
    const start = startState(runner, weather, GROUND).state;
    let before = start.humidity;
    let lostKg = 0;
    let movedKg = 0;
    runHouse(runner, start, forcing, plainControls(house, invented, (devices ? randomDeviceControls : randomControls)(random, house)), (record) => {
      const density = model.conditions.airDensityKgPerM3;
      const keptKg = moisture.volumes.reduce((sum, { volumeM3 }, v) => sum + density * volumeM3 * (record.humidity[v]! - before[v]!), 0);
      const outsideRatio = humidityRatioKgPerKg(forcing.vapourPressurePa[record.stepIndex]!, record.pressurePa);
      const airflow = outsideAirflowM3PerS(house, model.conditions, { insideAirTempK: record.tempsK[model.roofAir]!, outsideAirTempK: record.tempsK[model.outside]! });
      const takenUp = moisture.surfaces.map(({ volume }, s) => (volume < 0 ? 0 : record.uptakeKgPerS[s]! * forcing.stepS));
      const blownInKg = density * airflow * (outsideRatio - record.humidity[moisture.roofVolume]!) * forcing.stepS;
      const burntKg = record.vapourKgPerS * forcing.stepS;
      lostKg += Math.abs(keptKg + takenUp.reduce((sum, kg) => sum + kg, 0) - blownInKg - burntKg);
      movedKg += takenUp.reduce((sum, kg) => sum + Math.abs(kg), Math.abs(blownInKg));
      before = Float64Array.from(record.humidity);
    });
    expect(movedKg).toBeGreaterThan(0);
    expect(lostKg / movedKg).toBeLessThan(1e-4);
  });
});
