import { describe, expect, it } from 'vitest';
import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK } from '../../engine/constants.js';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { HEAP_HEAT_CAPACITY_J_PER_M3K, heapConductancesWPerK } from '../../engine/heat/compost-heap.js';
import { NO_FANS, type FanPlace } from '../../engine/night/controls.js';
import { forcingFor, STEP_S } from '../../engine/night/forcing.js';
import { houseRunner, runHouse, type HouseRunner, type StepRecord } from '../../engine/night/house-run.js';
import { startState } from '../../engine/night/start-state.js';
import type { GroundOutside } from '../../engine/night/weather.js';
import { celsiusToKelvin, JOULES_PER_KWH, kelvinToCelsius, SECONDS_PER_HOUR } from '../../engine/units.js';
import { CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, inventedWeather, plainControls, referenceHouse } from '../fixtures/houses.js';

/** Runs the reference night with one fan on from sunset to the end; the observer sees the hours while it blows. */
function blownNight(changes: Partial<GreenhouseFile>, place: FanPlace, observe: (runner: HouseRunner, record: StepRecord, hour: number) => void, ground: GroundOutside = GROUND): void {
  const house = referenceHouse(changes);
  const runner = houseRunner(house);
  const weather = inventedWeather(house, CLEAR_COLD_NIGHT);
  const forcing = forcingFor(house, weather, { fromS: weather.timeS[0]!, toS: weather.timeS.at(-1)! });
  const onFromS = hourOfLastNightS(CLEAR_COLD_NIGHT, -8);
  runHouse(runner, startState(runner, weather, ground).state, forcing, plainControls(house, CLEAR_COLD_NIGHT, (timeS) => ({ fansOn: { ...NO_FANS, [place]: timeS > onFromS } })), (record) => {
    if (record.timeS > onFromS + SECONDS_PER_HOUR) observe(runner, record, (record.timeS - hourOfLastNightS(CLEAR_COLD_NIGHT, 0)) / SECONDS_PER_HOUR);
  });
}

/** Air after the tubes or the heap: house air, warmed by what the blown air carried off. */
function outletC({ model }: HouseRunner, record: StepRecord, fan: { node: number; place: FanPlace; airflowM3PerH: number }): number {
  const airK = record.tempsK[model.air]!;
  const carriedW = model.conditions.fanWPerK[fan.place] * (record.tempsK[fan.node]! - airK);
  return kelvinToCelsius(airK + carriedW / ((fan.airflowM3PerH / SECONDS_PER_HOUR) * model.conditions.airDensityKgPerM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK));
}

/**
 * Common practice, no source: air from tubes that lie in soil of 11 to 13 °C leaves them at 8 to 12 °C in the morning.
 * Input: moist loam, ground outside 9.5 °C at 18 and 54 cm (12.5 under the house), house air of 3 down to -5 °C blown in from sunset on, tubes of 10 cm.
 */
const WARM_GROUND: GroundOutside = { soilTemp18cmK: celsiusToKelvin(9.5), soilTemp54cmK: celsiusToKelvin(9.5), yearlyMeanAirTempK: celsiusToKelvin(8) };

describe('air through buried tubes, from sunset to morning', () => {
  const morning = (tubes: { length: number; count: number; depth: number }, airflow: number): { outletC: number; inletC: number; soilAtDuskC: number } => {
    const found = { outletC: NaN, inletC: NaN, soilAtDuskC: NaN };
    blownNight({ tubes: { ...tubes, fan: { airflow, power: 20 } } }, 'tubes', (runner, record, hour) => {
      const [wall] = runner.model.tubes!.rings;
      const far = runner.model.tubes!.rings.at(-1)!;
      if (Number.isNaN(found.soilAtDuskC)) found.soilAtDuskC = kelvinToCelsius(record.tempsK[far]!);
      if (hour <= 6) Object.assign(found, { outletC: outletC(runner, record, { node: wall!, place: 'tubes', airflowM3PerH: airflow }), inletC: kelvinToCelsius(record.tempsK[runner.model.air]!) });
    }, WARM_GROUND);
    return found;
  };

  it.each([
    ['four of 20 m at 0.6 m, 100 m3/h', { length: 20, count: 4, depth: 0.6 }, 100],
    ['four of 20 m at 0.6 m, 150 m3/h', { length: 20, count: 4, depth: 0.6 }, 150],
    ['three of 15 m at 0.8 m, 100 m3/h', { length: 15, count: 3, depth: 0.8 }, 100],
  ] as const)('leaves at 8 to 12 °C at 6 h: %s', (_name, tubes, airflow) => {
    const { outletC: out, inletC, soilAtDuskC } = morning(tubes, airflow);
    expect(soilAtDuskC).toBeGreaterThan(11);
    expect(soilAtDuskC).toBeLessThan(13.5);
    expect(inletC).toBeLessThan(0);
    expect(out).toBeGreaterThan(8);
    expect(out).toBeLessThan(12);
  });

  it('leaves colder from tubes that are short for their flow', () => {
    expect(morning({ length: 5, count: 2, depth: 0.6 }, 150).outletC).toBeLessThan(8);
  });
});

/**
 * Common practice, no source: air through a hot compost heap leaves it at 25 to 40 °C while its heat lasts.
 * Input: 1.5 m3 in its tenth day, outside, pipes with a fan of 60 m3/h from sunset on, house air of 8 down to -4 °C blown in.
 */
const HEAP = { volume: 1.5, started: '2026-11-12' } as const;
const HEAP_FAN = { airflow: 60, power: 10 } as const;

interface HeapAccount {
  madeJ: number;
  fromStoreJ: number;
  toAirJ: number;
  lostJ: number;
  outletsC: number[];
}

function heapNight(compost: NonNullable<GreenhouseFile['compost']>): HeapAccount {
  const account: HeapAccount = { madeJ: 0, fromStoreJ: 0, toAirJ: 0, lostJ: 0, outletsC: [] };
  blownNight({ compost }, 'heap', (runner, record, hour) => {
    const { model } = runner;
    const core = model.heap!;
    const { volumeM3 } = model.house.heap!;
    const { oneFace, freeFaces } = heapConductancesWPerK(volumeM3);
    const coreK = record.tempsK[core]!;
    account.madeJ += record.heapW * STEP_S;
    account.fromStoreJ += HEAP_HEAT_CAPACITY_J_PER_M3K * volumeM3 * (record.tempsBeforeK[core]! - coreK);
    account.toAirJ += model.conditions.fanWPerK.heap * (coreK - record.tempsK[model.air]!) * STEP_S;
    account.lostJ += (freeFaces * (coreK - record.tempsK[model.outside]!) + oneFace * (coreK - record.tempsK[model.deep]!)) * STEP_S;
    if (hour <= 6) account.outletsC.push(outletC(runner, record, { node: core, place: 'heap', airflowM3PerH: HEAP_FAN.airflow }));
  });
  return account;
}

describe('air through a hot compost heap, from sunset to morning', () => {
  const account = heapNight({ ...HEAP, fan: HEAP_FAN });

  it('leaves at 25 to 40 °C all night', () => {
    expect(Math.min(...account.outletsC)).toBeGreaterThan(25);
    expect(Math.max(...account.outletsC)).toBeLessThan(40);
  });

  it('takes what the heap makes and what it gives from its store, less what the heap loses: the line sums to zero', () => {
    expect(Math.abs(account.madeJ + account.fromStoreJ - account.toAirJ - account.lostJ)).toBeLessThan(1e-4 * account.toAirJ);
    for (const joules of [account.madeJ, account.fromStoreJ, account.toAirJ, account.lostJ]) expect(joules / JOULES_PER_KWH).toBeGreaterThan(1);
  });

  it('lives more on the store than on what is made: the heap cools, and a second night gives less', () => {
    expect(account.fromStoreJ).toBeGreaterThan(account.madeJ);
    expect(account.outletsC.at(-1)!).toBeLessThan(account.outletsC[0]! - 5);
  });

  it('is no longer hot through a heap of six weeks, nor for long through a third of a cubic metre', () => {
    expect(Math.max(...heapNight({ ...HEAP, started: '2026-10-10', fan: HEAP_FAN }).outletsC)).toBeLessThan(20);
    expect(heapNight({ ...HEAP, volume: 0.3, fan: HEAP_FAN }).outletsC.at(-1)!).toBeLessThan(15);
  });
});
