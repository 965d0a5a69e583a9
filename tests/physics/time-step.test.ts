import { describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { forcingFor } from '../../engine/night/forcing.js';
import { houseRunner, runHouse } from '../../engine/night/house-run.js';
import { startState } from '../../engine/night/start-state.js';
import { CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, INSIDE, inventedWeather, plainControls, referenceHouse, runInventedNight } from '../fixtures/houses.js';
import { runRc, type RcNetwork } from '../published/rc-network.js';

const HOUSES: Readonly<Record<string, Partial<GreenhouseFile>>> = {
  'double film': {},
  'single film': { layers: [{ film: 'standard' }] },
  'dry soil': { soil: { kind: 'sand', moisture: 'dry', pathMoisture: 'dry' } },
  'row cover and drums': { beds: [{ name: 'a', area: 12, crops: ['kale'], cover: { kind: 'fabric', weight: 30 } }], drums: [{ litres: 208, count: 4 }] },
  heated: { heater: { kind: 'electric', power: 1500 } },
};

const coversAndHeater = (house: ReturnType<typeof referenceHouse>) => (timeS: number) =>
  timeS > hourOfLastNightS(CLEAR_COLD_NIGHT, -7) ? { coverOn: house.columns.map(({ rowCover }) => rowCover !== null), heaterOn: true, heaterSetK: 272.15 } : {};

describe('halving the step of 600 s', () => {
  it.each(Object.entries(HOUSES))('moves the dawn low by less than 0.05 K: %s', (_name, changes) => {
    const house = referenceHouse(changes);
    const lowK = (stepS: number): number => runInventedNight(house, CLEAR_COLD_NIGHT, { stepS, controls: coversAndHeater(house) }).lowK(INSIDE);
    expect(Math.abs(lowK(600) - lowK(300))).toBeLessThan(0.05);
  });
});

/** Observed order from three solutions, each with half the step of the one before: log2 of the ratio of the differences (root mean square). */
function observedOrder(coarse: readonly number[], middle: readonly number[], fine: readonly number[]): number {
  const distance = (a: readonly number[], b: readonly number[]): number => Math.sqrt(a.reduce((sum, value, i) => sum + (value - b[i]!) ** 2, 0) / a.length);
  return Math.log2(distance(coarse, middle) / distance(middle, fine));
}

const FIRST_ORDER = { low: 0.8, high: 1.2 };

describe('observed order of backward Euler', () => {
  it.each(Object.entries(HOUSES).filter(([name]) => name !== 'heated'))('is one through the night of a whole house: %s', (_name, changes) => {
    const house = referenceHouse(changes);
    const runner = houseRunner(house);
    const weather = inventedWeather(house, CLEAR_COLD_NIGHT);
    const controls = plainControls(house, CLEAR_COLD_NIGHT, coversAndHeater(house));
    const eveningS = hourOfLastNightS(CLEAR_COLD_NIGHT, -6);
    const evening = runHouse(runner, startState(runner, weather, GROUND).state, forcingFor(house, weather, { fromS: weather.timeS[0]!, toS: eveningS }), controls);
    const hourlyK = (stepS: number): number[] => {
      const temps: number[] = [];
      runHouse(runner, evening, forcingFor(house, weather, { fromS: eveningS, toS: hourOfLastNightS(CLEAR_COLD_NIGHT, 6), stepS }), controls, (record) => {
        if (record.timeS % 3600 === 0) temps.push(record.tempsK[runner.model.air]!);
      });
      return temps;
    };
    const order = observedOrder(hourlyK(600), hourlyK(300), hourlyK(150));
    expect(order).toBeGreaterThan(FIRST_ORDER.low);
    expect(order).toBeLessThan(FIRST_ORDER.high);
  });

  it('is one on two lumps, against steps of a half and a quarter', () => {
    const rc: RcNetwork = { capacitiesJPerK: [1.5e5, 4e6], startC: [10, 12], links: [[0, 2, 150], [0, 1, 200]], boundariesC: [() => -8] };
    const hourlyC = (stepS: number): number[] => {
      const temps: number[] = [];
      runRc(rc, { durationS: 14 * 3600, stepS }, (timeS, tempsC) => {
        if (timeS % 3600 === 0) temps.push(tempsC[0]!);
      });
      return temps;
    };
    const order = observedOrder(hourlyC(600), hourlyC(300), hourlyC(150));
    expect(order).toBeGreaterThan(FIRST_ORDER.low);
    expect(order).toBeLessThan(FIRST_ORDER.high);
  });
});
