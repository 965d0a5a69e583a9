import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { WeatherAnswer, WeatherNote } from '../../../bot/ports.js';
import * as hostile from '../../fixtures/hostile-weather.js';
import { eachValue, setHours, withUnit, without, type WireBody } from '../../fixtures/weather-answer.js';
import { PLACE, START_S, startTestService, type TestService } from './service.js';

let service: TestService;
let weather: hostile.HostileWeather;
beforeEach(async () => {
  weather = await hostile.startHostileWeather({ nowS: () => service.clock.nowS() });
  service = startTestService(weather.url);
});
afterEach(async () => {
  await service.close();
  await weather.close();
});

const changed = (change: (body: WireBody) => unknown): hostile.Reaction => hostile.good(() => service.clock.nowS(), change);
const FORECAST = '/v1/forecast';
const MODELS = ['_best_match', '_ecmwf_ifs'];

interface Blemish {
  readonly what: string;
  readonly change: (body: WireBody) => unknown;
  readonly notes: readonly WeatherNote[];
  readonly check?: (answer: WeatherAnswer) => void;
}

const kelvinAt = (answer: WeatherAnswer, hour: number): number => answer.hours.airTempK[360 + hour] ?? Number.NaN;

const BLEMISHES: readonly Blemish[] = [
  { what: 'nothing wrong', change: (b) => b, notes: [] },
  {
    what: 'nulls of two hours in both models mid-series',
    change: (b) => setHours(b, START_S, { variable: 'temperature_2m', hours: [4, 5], value: null }),
    notes: [{ code: 'filled-gap', variable: 'temperature_2m', hours: 2 }],
    check: (a) => expect(kelvinAt(a, 4)).toBeCloseTo((2 * kelvinAt(a, 3) + kelvinAt(a, 6)) / 3, 9),
  },
  {
    what: 'nulls of the preferred model alone',
    change: (b) => setHours(b, START_S, { variable: 'temperature_2m', hours: [4, 5, 6, 7], value: null, suffixes: ['_best_match'] }),
    notes: [{ code: 'second-model-used', variable: 'temperature_2m' }],
    check: (a) => expect(a.hours.modelDifferenceK[364]).toBeNull(),
  },
  {
    what: 'a null gap of three hours ahead',
    change: (b) => setHours(b, START_S, { variable: 'wind_speed_10m', hours: [30, 31, 32], value: null }),
    notes: [{ code: 'short-horizon', endsAtS: Date.parse('2026-11-25T02:00Z') / 1000 }],
  },
  {
    what: 'a null gap of three hours in the past',
    change: (b) => setHours(b, START_S, { variable: 'wind_speed_10m', hours: [-30, -31, -32], value: null }),
    notes: [{ code: 'short-history', startsAtS: Date.parse('2026-11-22T16:00Z') / 1000 }],
  },
  {
    what: 'an absurd spike of temperature and of dew point',
    change: (b) => setHours(setHours(b, START_S, { variable: 'temperature_2m', hours: [4], value: -273 }), START_S, { variable: 'dew_point_2m', hours: [6], value: 400 }),
    notes: [
      { code: 'filled-gap', variable: 'temperature_2m', hours: 1 },
      { code: 'missing-variable', variable: 'dew_point_2m', instead: 'computed from relative_humidity_2m, over liquid water (hours: 1)' },
    ],
  },
  {
    what: 'a whole variable null with the unit "undefined"',
    change: (b) => withUnit(eachValue(b, 'surface_pressure', () => null), 'surface_pressure', 'undefined'),
    notes: [{ code: 'missing-variable', variable: 'surface_pressure', instead: 'standard atmosphere at 187 m' }],
    check: (a) => expect(a.hours.surfacePressurePa[0]).toBeCloseTo(99_095, -2),
  },
  {
    what: 'a column without a unit',
    change: (b) => {
      for (const suffix of MODELS) delete b.hourly_units[`snowfall${suffix}`];
      return b;
    },
    notes: [{ code: 'missing-variable', variable: 'snowfall', instead: 'no new snow assumed' }],
  },
  {
    what: 'no dew point',
    change: (b) => without(b, 'dew_point_2m'),
    notes: [{ code: 'missing-variable', variable: 'dew_point_2m', instead: 'computed from relative_humidity_2m, over liquid water (hours: 528)' }],
  },
  {
    what: 'no diffuse sunlight',
    change: (b) => without(b, 'diffuse_radiation'),
    notes: [{ code: 'missing-variable', variable: 'diffuse_radiation', instead: 'global sunlight less direct_radiation' }],
    check: (a) => expect(Math.max(...a.hours.diffuseShortwaveWPerM2)).toBe(80),
  },
  {
    what: 'no sunlight at all',
    change: (b) => without(b, 'shortwave_radiation', 'direct_radiation', 'diffuse_radiation'),
    notes: [
      { code: 'missing-variable', variable: 'shortwave_radiation', instead: 'estimated from the height of the sun and the cloud cover' },
      { code: 'missing-variable', variable: 'diffuse_radiation', instead: 'split from the global sunlight by the height of the sun' },
    ],
    check: (a) => expect(Math.max(...a.hours.globalShortwaveWPerM2)).toBeGreaterThan(250),
  },
  {
    what: 'no soil temperature',
    change: (b) => without(b, 'soil_temperature_18cm', 'soil_temperature_54cm'),
    notes: [
      { code: 'missing-variable', variable: 'soil_temperature_18cm', instead: 'not known' },
      { code: 'missing-variable', variable: 'soil_temperature_54cm', instead: 'not known' },
    ],
    check: (a) => expect(a.ground.soilTemp18cmK).toBeNull(),
  },
  {
    what: 'the second model missing, and with it every suffix',
    change: (b) => {
      const named = (record: Record<string, unknown>): Record<string, unknown> =>
        Object.fromEntries(Object.entries(record).filter(([k]) => !k.endsWith('_ecmwf_ifs')).map(([k, v]) => [k.replace('_best_match', ''), v]));
      return { ...b, hourly_units: named(b.hourly_units), hourly: named(b.hourly) };
    },
    notes: [{ code: 'missing-variable', variable: 'second forecast model', instead: 'no difference between models known' }],
    check: (a) => expect(a.hours.modelDifferenceK.every((d) => d === null)).toBe(true),
  },
  {
    what: 'the second model there in name only, all null and "undefined"',
    change: (b) => {
      for (const name of Object.keys(b.hourly).filter((key) => key.endsWith('_ecmwf_ifs'))) {
        b.hourly[name] = (b.hourly[name] ?? []).map(() => null);
        b.hourly_units[name] = 'undefined';
      }
      return b;
    },
    notes: [{ code: 'missing-variable', variable: 'second forecast model', instead: 'no difference between models known' }],
  },
  {
    what: 'a short series of one day past and two days ahead',
    change: (b) => {
      const kept = (values: readonly (number | null)[]): (number | null)[] => values.slice(360 - 24, 360 + 48);
      return { ...b, hourly: Object.fromEntries(Object.entries(b.hourly).map(([k, v]) => [k, kept(v)])) };
    },
    notes: [
      { code: 'short-history', startsAtS: Date.parse('2026-11-22T21:00Z') / 1000 },
      { code: 'short-horizon', endsAtS: Date.parse('2026-11-25T20:00Z') / 1000 },
    ],
  },
  {
    what: 'cloud of 101 % and humidity of 0 %, as rounding makes them',
    change: (b) => setHours(setHours(b, START_S, { variable: 'cloud_cover', hours: [3], value: 101 }), START_S, { variable: 'relative_humidity_2m', hours: [3], value: 0 }),
    notes: [],
    check: (a) => expect(a.hours.cloudFraction[363]).toBe(1),
  },
  {
    what: 'a dew point above the temperature',
    change: (b) => eachValue(b, 'dew_point_2m', () => 20),
    notes: [],
    check: (a) => expect(Math.max(...a.hours.vapourPressurePa)).toBeLessThan(1200),
  },
];

/** What is not known of the doubt about a forecast is null. */
const MAY_LACK = ['modelDifferenceK', 'airTempSpreadK', 'cloudSpread', 'airTempCloudCorrelation'];

describe('a service with blemishes', () => {
  it.each(BLEMISHES)('$what: answered, with a note', async ({ change, notes, check }) => {
    weather.script(FORECAST, changed(change));
    const answer = await service.source.weatherAt(PLACE);
    expect(answer.notes).toEqual(notes);
    expect(answer.stale).toBe(false);
    for (const column of Object.values(answer.hours)) expect(column).toHaveLength(answer.hours.timeS.length);
    for (const [name, column] of Object.entries(answer.hours)) {
      if (!MAY_LACK.includes(name)) expect((column as number[]).every(Number.isFinite), name).toBe(true);
    }
    check?.(answer);
  });
});
