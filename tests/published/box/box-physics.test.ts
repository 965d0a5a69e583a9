import { describe, expect, it } from 'vitest';
import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import { checkBoxCase, type BoxCase } from './box-case.js';
import { boxModel, type BoxModel } from './box-model.js';
import { boxWeatherAt, type BoxWeather } from './box-weather.js';
import { EXAMPLE_BOX } from './example-box.js';
import { glazingOptics } from './glazing-optics.js';
import { evenYearCsv } from './invented-weather.js';
import { sunAt } from './sun-clock.js';
import { csvColumns, readWeatherYear } from './weather-year.js';

function boxOf(changes: Partial<typeof EXAMPLE_BOX>): BoxCase {
  const check = checkBoxCase({ ...EXAMPLE_BOX, ...changes });
  if (!check.ok) throw new Error(check.faults.join('\n'));
  return check.boxCase;
}

const OUTSIDE_C = 5;
const PRESSURE_PA = 100_000;
const overcast = boxWeatherAt(readWeatherYear(csvColumns(evenYearCsv(OUTSIDE_C))), 12);
/** So long that nothing is left of the start. */
const FOREVER_S = 1e12;

/** Temperatures that a box comes to in weather that never changes. */
function settled(model: BoxModel, weather: BoxWeather, powerW: Float64Array): Float64Array {
  const { network, firstBoundary } = model;
  const tempsK = new Float64Array(network.nodes.length + network.boundaries.length).fill(celsiusToKelvin(20));
  tempsK.set([weather.outsideAirTempK, weather.aboveRoofK, weather.beforeWallK], firstBoundary);
  model.setHour(weather, 12);
  stepImplicit({ network, tempsK, stepS: FOREVER_S, sources: emptySources(network.nodes.length), updateSources: (_, out) => void out.powerW.set(powerW) });
  return tempsK;
}

/** Heat that leaves over the boundaries. */
function lossW({ network, firstBoundary }: BoxModel, tempsK: Float64Array): number {
  const conducted = network.conductors.filter(({ a, b }) => a >= firstBoundary || b >= firstBoundary).map(({ a, b, conductanceWPerK }) => Math.sign(b - a) * conductanceWPerK(tempsK[a]!, tempsK[b]!) * (tempsK[a]! - tempsK[b]!));
  const radiated = network.radiators.filter(({ a, b }) => a >= firstBoundary || b >= firstBoundary).map(({ a, b, exchangeAreaM2 }) => Math.sign(b - a) * exchangeAreaM2 * STEFAN_BOLTZMANN_W_PER_M2K4 * (tempsK[a]! ** 4 - tempsK[b]! ** 4));
  return [...conducted, ...radiated].reduce((sum, flow) => sum + flow, 0);
}

describe('a box', () => {
  it('without gains comes to the temperature of weather that has one', () => {
    const model = boxModel(boxOf({ gains: { convectiveW: 0, radiativeW: 0 } }), PRESSURE_PA);
    const tempsK = settled(model, overcast, model.gainsW);
    for (const tempK of tempsK.subarray(0, model.firstBoundary)) expect(kelvinToCelsius(tempK)).toBeCloseTo(OUTSIDE_C, 4);
  });

  it('loses in the end what it is given', () => {
    const model = boxModel(boxOf({}), PRESSURE_PA);
    const tempsK = settled(model, overcast, model.gainsW);
    expect(kelvinToCelsius(tempsK[model.air]!)).toBeGreaterThan(OUTSIDE_C);
    expect(lossW(model, tempsK)).toBeCloseTo(100, 2);
  });

  it('lets no sunlight vanish: what its bodies absorb and what goes out again is what came in', () => {
    // Black inside, white outside: all that passes is absorbed within, so the sum is known from areas and optics alone.
    const finish = { ...EXAMPLE_BOX.finish, solarAbsorptanceOutside: 0, solarAbsorptanceInside: 1 };
    const boxCase = boxOf({ finish });
    const model = boxModel(boxCase, PRESSURE_PA);
    const powerW = new Float64Array(model.network.nodes.length);
    const sun = sunAt(boxCase, 12);
    const light = { sun, beamNormalWPerM2: 600, diffuseWPerM2: 0, globalWPerM2: 0 };
    const passedW = model.sun.absorb(light, powerW);
    const cosine = Math.cos(sun.altitudeRad) * -Math.cos(sun.azimuthRad);
    const { passed, absorbed } = glazingOptics(boxCase.glazing!).beam(Math.acos(cosine));
    const ontoWindowW = 600 * 2 * 1.2 * cosine;
    expect(passedW).toBeCloseTo(passed * ontoWindowW, 6);
    expect(powerW.reduce((sum, watts) => sum + watts, 0)).toBeCloseTo((passed + absorbed.reduce((sum, share) => sum + share, 0)) * ontoWindowW, 6);
  });

  it('is colder with a fan that runs, and only while it runs', () => {
    const gains = { convectiveW: 500, radiativeW: 0 };
    const airC = (ventilation: typeof EXAMPLE_BOX.ventilation): number => {
      const model = boxModel(boxOf({ gains, ventilation }), PRESSURE_PA);
      return settled(model, overcast, model.gainsW)[model.air]!;
    };
    const closed = airC([]);
    expect(airC([{ fromHour: 9, toHour: 17, airflowM3PerH: 300 }])).toBeLessThan(closed - 1);
    expect(airC([{ fromHour: 18, toHour: 7, airflowM3PerH: 300 }])).toBe(closed);
    expect(airC([{ fromHour: 18, toHour: 13, airflowM3PerH: 300 }])).toBeLessThan(closed - 1);
  });

  it('carries less heat with the thin air of a high place', () => {
    const airK = (airDensity: 'site' | 'sea-level'): number => {
      const model = boxModel(boxOf({ infiltration: { airChangesPerHour: 2, airDensity } }), PRESSURE_PA);
      return settled(model, { ...overcast, airJPerM3K: 0.8 * overcast.airJPerM3K }, model.gainsW)[model.air]!;
    };
    expect(airK('site')).toBeGreaterThan(airK('sea-level'));
  });
});

describe('the clock of the sun', () => {
  it('by solar time has the sun due south at 12 on every day', () => {
    const boxCase = boxOf({ weather: { sunClock: 'solar', diffuse: 'given' } });
    for (const day of [10, 45, 130, 300, 330]) expect(sunAt(boxCase, 24 * day + 12).azimuthRad).toBeCloseTo(Math.PI, 3);
  });
});

describe('glazing', () => {
  it('shares light between panes and room without making any', () => {
    const { beam } = glazingOptics(boxOf({}).glazing!);
    for (const degrees of [0, 20, 40, 60, 75, 85]) {
      const { passed, absorbed } = beam((degrees * Math.PI) / 180);
      expect(passed).toBeGreaterThan(0);
      for (const share of absorbed) expect(share).toBeGreaterThan(0);
      expect(passed + absorbed.reduce((sum, share) => sum + share, 0)).toBeLessThan(1);
    }
  });

  it('passes straight on what two panes pass with all reflections between them', () => {
    // T^2 / (1 - R^2) for two equal panes.
    expect(glazingOptics(boxOf({}).glazing!).beam(0).passed).toBeCloseTo(0.82 ** 2 / (1 - 0.075 ** 2), 2);
  });
});
