import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ServiceCallError } from '../../../bot/weather/open-meteo/errors.js';
import { weatherHosts } from '../../../bot/weather/open-meteo/hosts.js';
import { adviceOnLimit } from '../../../bot/weather/open-meteo/limits.js';
import { ensembleRequest, forecastRequest, yearRequest } from '../../../bot/weather/open-meteo/request.js';
import * as hostile from '../../fixtures/hostile-weather.js';
import { PLACE, START_S, startTestService, type TestService } from './service.js';

let service: TestService;
let weather: hostile.HostileWeather;
beforeEach(async () => {
  weather = await hostile.startHostileWeather({ nowS: () => START_S, delayMs: 15 });
  service = startTestService(weather.url);
});
afterEach(async () => {
  await service.close();
  await weather.close();
});

const FORECAST = '/v1/forecast';
const WIDE = { pastHours: 360, aheadHours: 168 };
const ask = (longitude = -72.5): Promise<unknown> => service.client.getJson(forecastRequest(weatherHosts({ baseUrl: weather.url, withKey: false }), { ...PLACE, longitude }, WIDE));
const failure = async (promise: Promise<unknown>): Promise<ServiceCallError> => {
  const error: unknown = await promise.catch((e: unknown) => e);
  if (error instanceof ServiceCallError) return error;
  throw new Error(`expected ServiceCallError, got ${String(error)}`);
};

describe('one request at a time', () => {
  it('over six parallel calls for six places', async () => {
    await Promise.all([1, 2, 3, 4, 5, 6].map((n) => ask(-72 - n / 10)));
    expect(weather.hits(FORECAST)).toBe(6);
    expect(weather.mostInFlight()).toBe(1);
  });

  it('over six places with all their requests, and over services', async () => {
    await Promise.all([1, 2, 3, 4, 5, 6].map((n) => service.source.weatherAt({ ...PLACE, longitude: -72 - n / 10 })));
    expect(weather.seen).toHaveLength(18);
    expect(weather.mostInFlight()).toBe(1);
  });

  it('goes on after one that failed', async () => {
    weather.script(FORECAST, hostile.error(400, 'no'), hostile.good(() => START_S));
    const results = await Promise.allSettled([ask(), ask()]);
    expect(results.map((r) => r.status)).toEqual(['rejected', 'fulfilled']);
  });
});

describe('rest', () => {
  it('after three failures in a row leaves the service alone for 15 minutes, then tries once', async () => {
    weather.script(FORECAST, hostile.text(200, 'text/html', 'down'));
    for (let i = 0; i < 3; i += 1) expect((await failure(ask())).kind).toBe('not-json');
    const resting = await failure(ask());
    expect(resting.kind).toBe('resting');
    expect(resting.message).toMatch(/not asked before 2026-11-23T21:35:30.*3 failures in a row, the last: .*text\/html/);
    expect(weather.hits(FORECAST)).toBe(3);
    service.clock.set(START_S + 15 * 60);
    expect((await failure(ask())).kind).toBe('not-json');
    expect((await failure(ask())).kind).toBe('resting');
    expect(weather.hits(FORECAST)).toBe(4);
    service.clock.set(START_S + 31 * 60);
    weather.script(FORECAST, hostile.good(() => START_S));
    await ask();
    weather.script(FORECAST, hostile.text(200, 'text/html', 'down'));
    expect((await failure(ask())).kind).toBe('not-json');
    expect((await failure(ask())).kind).toBe('not-json');
    expect(weather.hits(FORECAST)).toBe(7);
  });

  it('does not begin because requests are wrong: one odd place must not silence the others', async () => {
    weather.script(FORECAST, hostile.error(400, 'No data is available for this location'));
    for (let i = 0; i < 5; i += 1) expect((await failure(ask())).kind).toBe('refused');
    expect(weather.hits(FORECAST)).toBe(5);
  });

  it('is kept for each service: a dead ensemble does not stop the forecast', async () => {
    weather.script('/v1/ensemble', hostile.text(200, 'text/html', 'down'));
    for (let i = 0; i < 5; i += 1) await service.source.weatherAt({ ...PLACE, longitude: -72 - i / 10 });
    expect(weather.hits('/v1/ensemble')).toBe(3);
    expect(weather.hits(FORECAST)).toBe(5);
  });

  it('lasts to the next hour after an hourly limit', async () => {
    weather.script(FORECAST, hostile.error(429, 'Hourly API request limit exceeded. Please try again in the next hour.'), hostile.good(() => START_S));
    expect((await failure(ask())).kind).toBe('limited');
    service.clock.set(Date.parse('2026-11-23T21:59:59Z') / 1000);
    expect((await failure(ask())).kind).toBe('resting');
    expect(weather.hits(FORECAST)).toBe(1);
    service.clock.set(Date.parse('2026-11-23T22:00:00Z') / 1000);
    await ask();
    expect(weather.hits(FORECAST)).toBe(2);
    expect(service.sleptS).toEqual([]);
  });
});

describe('the budget of a request', () => {
  it('ends it as a whole, retries included', async () => {
    await service.close();
    service = startTestService(weather.url, { budgetMs: 80 });
    weather.script(FORECAST, hostile.silence);
    const error = await failure(ask());
    expect(error.kind).toBe('time-out');
    expect(error.message).toMatch(/expected an answer within 80 ms in all, got none/);
  });
});

describe('limits', () => {
  const nowS = Date.parse('2026-11-23T21:20:30Z') / 1000;
  const at = (text: string): number => Date.parse(text) / 1000;
  it.each([
    ['Minutely API request limit exceeded. Please try again in one minute.', 0, { kind: 'wait', waitS: 32 }],
    ['Minutely API request limit exceeded. Please try again in one minute.', 2, { kind: 'stay-away', untilS: at('2026-11-23T21:21:00Z') }],
    ['Too many concurrent requests', 0, { kind: 'wait', waitS: 2 }],
    ['Too many concurrent requests', 2, { kind: 'wait', waitS: 8 }],
    ['Too many concurrent requests', 3, { kind: 'stay-away', untilS: at('2026-11-23T21:21:00Z') }],
    ['Hourly API request limit exceeded. Please try again in the next hour.', 0, { kind: 'stay-away', untilS: at('2026-11-23T22:00:00Z') }],
    ['Daily API request limit exceeded. Please try again tomorrow.', 0, { kind: 'stay-away', untilS: at('2026-11-24T00:00:00Z') }],
    ['something new', 0, { kind: 'stay-away', untilS: at('2026-11-23T21:35:30Z') }],
  ] as const)('"%s", refused %i times before', (reason, refusals, advice) => {
    expect(adviceOnLimit(reason, { nowS, refusals, jitterS: 2 })).toEqual(advice);
  });
});

describe('what is asked', () => {
  const hosts = weatherHosts({ baseUrl: null, withKey: false });
  it('of the forecast', () => {
    const url = new URL(forecastRequest(hosts, { latitude: 44.26006, longitude: -0.00012, elevationM: 187.4 }, { pastHours: 20, aheadHours: 168 }).url);
    expect(url.origin + url.pathname).toBe('https://api.open-meteo.com/v1/forecast');
    expect(Object.fromEntries(url.searchParams)).toEqual({
      latitude: '44.260', longitude: '0.000', elevation: '187', models: 'best_match,ecmwf_ifs', timeformat: 'unixtime', wind_speed_unit: 'ms',
      cell_selection: 'nearest', past_hours: '20', forecast_hours: '168',
      hourly:
        'temperature_2m,dew_point_2m,relative_humidity_2m,wind_speed_10m,wind_gusts_10m,cloud_cover,cloud_cover_low,cloud_cover_mid,cloud_cover_high,' +
        'shortwave_radiation,direct_radiation,diffuse_radiation,surface_pressure,precipitation,snowfall,soil_temperature_18cm,soil_temperature_54cm',
    });
  });

  it('of the ensemble', () => {
    const url = new URL(ensembleRequest(hosts, { ...PLACE, elevationM: null }, WIDE).url);
    expect(url.origin + url.pathname).toBe('https://ensemble-api.open-meteo.com/v1/ensemble');
    expect(url.searchParams.get('models')).toBe('ecmwf_ifs025_ensemble_mean');
    expect(url.searchParams.get('hourly')).toBe('temperature_2m,temperature_2m_spread');
    expect(url.searchParams.has('elevation')).toBe(false);
  });

  it('of the archive: the full year that ends six days ago', () => {
    const url = new URL(yearRequest(hosts, PLACE, START_S).url);
    expect(url.origin + url.pathname).toBe('https://archive-api.open-meteo.com/v1/archive');
    expect(url.searchParams.get('start_date')).toBe('2025-11-18');
    expect(url.searchParams.get('end_date')).toBe('2026-11-17');
    expect(url.searchParams.get('hourly')).toBe('temperature_2m');
  });

  it('of whom: the paying hosts with a key, one address when one is set', () => {
    expect(weatherHosts({ baseUrl: null, withKey: true }).ensemble).toBe('https://customer-ensemble-api.open-meteo.com');
    expect(weatherHosts({ baseUrl: 'http://127.0.0.1:8750/', withKey: true })).toEqual({ forecast: 'http://127.0.0.1:8750', ensemble: 'http://127.0.0.1:8750', archive: 'http://127.0.0.1:8750' });
    expect(() => weatherHosts({ baseUrl: '127.0.0.1:8750', withKey: false })).toThrow(/DUSKWARD_WEATHER_URL: expected an address such as .*, got "127\.0\.0\.1:8750"/);
  });

  it('by whom: our own name, the contact when there is one, the key when there is one', async () => {
    await ask();
    expect(weather.seen[0]?.headers['user-agent']).toBe('duskward/0.1');
    expect(weather.seen[0]?.headers['x-api-key']).toBeUndefined();
    await service.close();
    service = startTestService(weather.url, { apiKey: 'k1', contact: 'grower@example.org' });
    await ask();
    expect(weather.seen[1]?.headers['user-agent']).toBe('duskward/0.1 (grower@example.org)');
    expect(weather.seen[1]?.headers['x-api-key']).toBe('k1');
  });
});
