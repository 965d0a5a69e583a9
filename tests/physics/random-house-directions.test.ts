import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { AS_FORECAST, forcingFor, type WeatherDeparture } from '../../engine/night/forcing.js';
import { houseRunner, runHouse } from '../../engine/night/house-run.js';
import { placesOf, placeTempK } from '../../engine/night/places.js';
import { startState } from '../../engine/night/start-state.js';
import type { WeatherHours } from '../../engine/night/weather.js';
import { GROUND, hourOfLastNightS, houseOf, INSIDE, plainControls, type InventedWeather } from '../fixtures/houses.js';
import { randomGreenhouse, randomWeather, seededRandom } from './random-houses.js';

/** Directions that must hold in every house and every weather, through one night with vents shut. */
interface Drawn {
  readonly file: GreenhouseFile;
  readonly invented: InventedWeather;
  readonly weather: WeatherHours;
}

const drawn = fc.integer({ min: 1, max: 1e9 }).map((seed): Drawn => {
  const random = seededRandom(seed);
  const file: GreenhouseFile = { ...randomGreenhouse(random), heater: { kind: 'electric', power: 1000 + 3000 * random() } };
  return { file, ...randomWeather(random, houseOf(file)) };
});

/** Lowest inside temperature of the last night, K. */
function lowK({ file, invented, weather }: Drawn, changes: { file?: Partial<GreenhouseFile>; departure?: Partial<WeatherDeparture>; heaterOn?: boolean } = {}): number {
  const house = houseOf({ ...file, ...changes.file });
  const runner = houseRunner(house);
  const sunsetS = hourOfLastNightS(invented, -7);
  const forcing = forcingFor(house, weather, { fromS: weather.timeS[0]!, toS: weather.timeS.at(-1)! }, { ...AS_FORECAST, fromS: sunsetS, ...changes.departure });
  const inside = placesOf(runner).find(({ place }) => place === INSIDE.place)!;
  let lowest = Number.POSITIVE_INFINITY;
  const controls = plainControls(house, invented, (timeS) => ({ ventsMayOpen: false, heaterOn: timeS > sunsetS && (changes.heaterOn ?? false) }));
  runHouse(runner, startState(runner, weather, GROUND).state, forcing, controls, (record) => {
    if (record.timeS > sunsetS) lowest = Math.min(lowest, placeTempK(runner, record, inside));
  });
  return lowest;
}

const RUNS = { numRuns: 12 };
/** The step settles to 1e-5 K; a film that dries a step earlier or later moves the low by more than that. */
const HAIR_K = 0.02;

describe('any house through any night', () => {
  it('is not colder for more cloud', () => {
    fc.assert(fc.property(drawn, fc.double({ min: 0.1, max: 1, noNaN: true }), (night, cloudFraction) => {
      expect(lowK(night, { departure: { cloudFraction } })).toBeGreaterThan(lowK(night) - HAIR_K);
    }), RUNS);
  });

  it('is not colder for warmer air outside', () => {
    fc.assert(fc.property(drawn, fc.double({ min: 0.5, max: 6, noNaN: true }), (night, airTempK) => {
      expect(lowK(night, { departure: { airTempK } })).toBeGreaterThan(lowK(night) - HAIR_K);
    }), RUNS);
  });

  it('is warmer with its heater on, and not colder with a larger one', () => {
    fc.assert(fc.property(drawn, (night) => {
      const heated = lowK(night, { heaterOn: true });
      expect(heated).toBeGreaterThan(lowK(night));
      expect(lowK(night, { heaterOn: true, file: { heater: { kind: 'electric', power: 6000 } } })).toBeGreaterThan(heated - HAIR_K);
    }), RUNS);
  });

  it('is not colder for less open sky', () => {
    fc.assert(fc.property(drawn, fc.double({ min: 0.2, max: 0.9, noNaN: true }), (night, share) => {
      const openSky = night.file.place.openSky!;
      expect(lowK(night, { file: { place: { ...night.file.place, openSky: Math.max(0.2, share * openSky) } } })).toBeGreaterThan(lowK(night) - HAIR_K);
    }), RUNS);
  });
});
