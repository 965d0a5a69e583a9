import type { ServerResponse } from 'node:http';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { NoWeatherError, type WeatherAnswer, type WeatherFailure } from '../../../bot/ports.js';
import { bothServices, type BothServices } from '../../fixtures/both-weather-services.js';
import * as hostile from '../../fixtures/hostile-weather.js';
import { metNorwayBody } from '../../fixtures/met-norway-answer.js';
import { page, startMetNorway, type MetNorwayStandIn } from '../../fixtures/met-norway-stand-in.js';
import { forecastBody, setHours, withUnit, type WireBody } from '../../fixtures/weather-answer.js';

const START_S = Date.parse('2026-11-23T21:20:30Z') / 1000;
const HOUR_S = 3600;
const DAY_S = 24 * HOUR_S;
const FIRST_HOUR_S = Math.floor(START_S / HOUR_S) * HOUR_S;
const PLACE = { latitude: 44.26, longitude: -72.58, elevationM: 187 };
const FORECAST = '/v1/forecast';

let first: hostile.HostileWeather;
let second: MetNorwayStandIn;
let service: BothServices;
const start = (withSecond = true): void => {
  service = bothServices({ startS: START_S, firstUrl: first.url, secondUrl: second.url, withSecond });
};
const nowS = (): number => service.clock.nowS();
const changed = (change: (body: WireBody) => unknown): hostile.Reaction => hostile.good(nowS, change);
const good = hostile.good(nowS);
const dead = hostile.text(200, 'text/html', 'down');
const ask = (): Promise<WeatherAnswer> => service.source.weatherAt(PLACE);
/** The clouds of the second service tell its hours from those of the first. */
const SECOND_CLOUD_PERCENT = 75;
const secondCloud = SECOND_CLOUD_PERCENT / 100;

beforeEach(async () => {
  first = await hostile.startHostileWeather({ nowS });
  second = await startMetNorway({
    nowS,
    body: () => {
      const made = forecastBody({ nowS: nowS(), aheadHours: 9 * 24 });
      for (const name of ['cloud_cover_best_match', 'cloud_cover_ecmwf_ifs']) made.hourly[name] = (made.hourly[name] ?? []).map(() => SECOND_CLOUD_PERCENT);
      return metNorwayBody(made, { nowS: nowS() });
    },
  });
  start();
});
afterEach(async () => {
  await service.close();
  await first.close();
  await second.close();
});

const OUTAGES: readonly { readonly what: string; readonly reactions: () => readonly hostile.Reaction[]; readonly failure: WeatherFailure; readonly cause: RegExp }[] = [
  { what: 'never answers', reactions: () => [hostile.silence], failure: 'time-out', cause: /expected an answer in time, got none/ },
  { what: 'resets every connection', reactions: () => [hostile.reset], failure: 'network', cause: /got no connection or a broken one/ },
  { what: 'is broken (500)', reactions: () => [hostile.error(500, 'Something went wrong.')], failure: 'server', cause: /got 500 "Something went wrong\."/ },
  { what: 'stands behind a broken gateway (502, HTML)', reactions: () => [hostile.text(502, 'text/html', '<html>bad gateway</html>')], failure: 'server', cause: /got 502/ },
  { what: 'is overloaded (503)', reactions: () => [hostile.error(503, 'The service is overloaded')], failure: 'server', cause: /got 503/ },
  { what: 'is a login page', reactions: () => [hostile.text(200, 'text/html', '<html>Log in to the hotel</html>')], failure: 'not-json', cause: /expected JSON, got text\/html/ },
  { what: 'sends on to a login page', reactions: () => [(r) => void r.writeHead(303, { location: 'https://elsewhere.example/' }).end()], failure: 'refused', cause: /got 303/ },
  { what: 'refuses (400)', reactions: () => [hostile.error(400, 'No data is available for this location')], failure: 'refused', cause: /got 400/ },
  { what: 'has had enough for today (429)', reactions: () => [hostile.error(429, 'Daily API request limit exceeded. Please try again tomorrow.')], failure: 'limited', cause: /limit: "Daily/ },
  { what: 'has had enough for this hour (429)', reactions: () => [hostile.error(429, 'Hourly API request limit exceeded. Please try again in the next hour.')], failure: 'limited', cause: /limit: "Hourly/ },
  { what: 'truncates its JSON', reactions: () => [hostile.truncated], failure: 'cut-off', cause: /expected whole JSON/ },
  { what: 'breaks off in the body', reactions: () => [hostile.severed], failure: 'cut-off', cause: /got the beginning of one/ },
  { what: 'answers with JSON of something else', reactions: () => [hostile.json(200, { generationtime_ms: 0.3 })], failure: 'unusable', cause: /expected a forecast answer/ },
  { what: 'answers an error with status 200', reactions: () => [hostile.error(200, 'boom')], failure: 'unusable', cause: /the service's error "boom"/ },
  { what: 'gives temperature in other units', reactions: () => [changed((b) => withUnit(b, 'temperature_2m', 'K'))], failure: 'unusable', cause: /unit of hourly\.temperature_2m_best_match/ },
  { what: 'answers for another place', reactions: () => [changed((b) => ({ ...b, latitude: 52.5, longitude: 13.4 }))], failure: 'unusable', cause: /expected within 0\.5 degrees/ },
  { what: 'ends before the night does', reactions: () => [changed((b) => setHours(b, nowS(), { variable: 'cloud_cover', hours: Array.from({ length: 160 }, (_, i) => i + 8), value: null }))], failure: 'unusable', cause: /reach ahead: expected at least 18 h/ },
];

describe('when the first service', () => {
  it.each(OUTAGES)('$what, the second answers, and says that it is the second and why', async ({ reactions, failure, cause }) => {
    first.script(FORECAST, ...reactions());
    const answer = await ask();
    expect(answer).toMatchObject({ source: 'met-norway', stale: false });
    expect(answer.notes[0]).toEqual({ code: 'second-service', failure, cause: expect.stringMatching(cause) as string });
    expect(answer.hours.timeS[0]).toBe(FIRST_HOUR_S);
    expect(answer.hours.cloudFraction.every((cloud) => cloud === secondCloud)).toBe(true);
    expect(second.statuses).toEqual([200]);
    expect(service.warnings).toEqual(['weather-service-failed']);
  });

  it('answers, the second is never asked: not at once, not from the store, not after it healed by itself', async () => {
    await ask();
    service.clock.set(START_S + 59 * 60);
    await ask();
    service.clock.set(START_S + 2 * HOUR_S);
    first.script(FORECAST, hostile.error(502, 'bad gateway'), good);
    expect(await ask()).toMatchObject({ source: 'open-meteo', stale: false });
    first.script('/v1/ensemble', dead);
    first.script('/v1/archive', dead);
    service.clock.set(START_S + 4 * HOUR_S);
    expect((await ask()).source).toBe('open-meteo');
    expect(second.seen).toEqual([]);
  });

  it('fails again and again, the second is not asked before its answer expires', async () => {
    first.script(FORECAST, dead);
    for (let minute = 0; minute < 90; minute += 10) {
      service.clock.set(START_S + minute * 60);
      expect((await ask()).source).toBe('met-norway');
    }
    // Half an hour each: at 0, 30 and 60 minutes.
    expect(second.seen).toHaveLength(3);
    expect(second.tooEarly).toEqual([]);
    expect((await ask()).notes[0]).toMatchObject({ code: 'second-service', failure: 'resting' });
  });
});

describe('what the second service does not know', () => {
  it('the past comes from the first one\'s stored answers, hour for hour, and the ground too', async () => {
    const before = await ask();
    first.script(FORECAST, dead);
    service.clock.set(START_S + DAY_S);
    const answer = await ask();
    expect(answer.source).toBe('met-norway');
    expect(answer.hours.timeS[0]).toBe(FIRST_HOUR_S + DAY_S - 15 * DAY_S);
    expect(answer.hours.timeS.every((t, i) => i === 0 || t - (answer.hours.timeS[i - 1] ?? 0) === HOUR_S)).toBe(true);
    const join = answer.hours.timeS.indexOf(FIRST_HOUR_S + DAY_S);
    expect(answer.hours.cloudFraction.slice(0, join).every((cloud) => cloud === 0.5)).toBe(true);
    expect(answer.hours.cloudFraction.slice(join).every((cloud) => cloud === secondCloud)).toBe(true);
    expect(answer.hours.airTempK.slice(0, join)).toEqual(before.hours.airTempK.slice(24, 24 + join));
    expect(answer.ground).toEqual(before.ground);
    expect(answer.notes.map(({ code }) => code)).toEqual(['second-service', 'coarse-steps', 'no-ensemble']);
  });

  it('is said to be missing where nothing is stored', async () => {
    first.script(FORECAST, dead);
    const answer = await ask();
    expect(answer.ground).toEqual({ soilTemp18cmK: null, soilTemp54cmK: null, yearlyMeanAirTempK: null });
    expect(answer.notes).toContainEqual({ code: 'short-history', startsAtS: FIRST_HOUR_S });
    expect(answer.notes).toContainEqual({ code: 'missing-variable', variable: 'soil temperature', instead: 'not known' });
  });

  it('does not take the soil of last month for that of tonight, but the mean of the year', async () => {
    const before = await ask();
    first.script(FORECAST, dead);
    service.clock.set(START_S + 11 * DAY_S);
    const answer = await ask();
    expect(answer.ground).toEqual({ soilTemp18cmK: null, soilTemp54cmK: null, yearlyMeanAirTempK: before.ground.yearlyMeanAirTempK });
    expect(answer.notes.map(({ code }) => code)).toEqual(['second-service', 'missing-variable', 'coarse-steps', 'no-ensemble', 'short-history']);
  });

  it('grows with its own answers through a long outage, also over a restart', async () => {
    first.script(FORECAST, dead);
    await ask();
    const { rows } = service;
    for (const hours of [30, 60, 90]) {
      await service.close();
      const store = { saveWeather: (row: { placeKey: string; issuedAtS: number; body: string }) => Promise.resolve(void rows.set(row.placeKey, row)), lastWeather: (key: string) => Promise.resolve(rows.get(key) ?? null) };
      service = bothServices({ startS: START_S + hours * HOUR_S, firstUrl: first.url, secondUrl: second.url, store });
      const answer = await ask();
      expect(answer.hours.timeS[0]).toBe(FIRST_HOUR_S);
      expect(answer.hours.timeS.at(-1)).toBeGreaterThan(FIRST_HOUR_S + (hours + 150) * HOUR_S);
    }
  });
});

describe('when the first service is back', () => {
  it('it takes up where it left off: what it missed is asked of it again, nothing is lost', async () => {
    await ask();
    first.script(FORECAST, dead);
    service.clock.set(START_S + DAY_S);
    await ask();
    first.script(FORECAST, good);
    service.clock.set(START_S + DAY_S + HOUR_S);
    const answer = await ask();
    expect(answer).toMatchObject({ source: 'open-meteo', notes: [] });
    const query = first.seen.filter(({ path }) => path === FORECAST).at(-1)?.query;
    expect(query?.get('past_hours')).toBe(String(25 + 12));
    expect(answer.hours.cloudFraction.every((cloud) => cloud === 0.5)).toBe(true);
    expect(answer.hours.timeS).toHaveLength(360 + 168);
  });
});

describe('when both services fail', () => {
  const bothDead = (): void => {
    first.script(FORECAST, dead);
    second.script(page(503, 'Service Unavailable'));
  };

  it('the newest good answer of either stands in, with its age and both causes', async () => {
    await ask();
    service.clock.set(START_S + 2 * HOUR_S);
    first.script(FORECAST, dead);
    await ask();
    bothDead();
    service.clock.set(START_S + 5 * HOUR_S);
    const answer = await ask();
    expect(answer).toMatchObject({ source: 'met-norway', stale: true, issuedAtS: START_S + 2 * HOUR_S });
    expect(answer.notes[0]).toEqual({ code: 'stale', ageS: 3 * HOUR_S, cause: expect.stringMatching(/expected JSON, got text\/html.*second weather service: expected status 200, got 503/) as string });
    expect(answer.notes[1]).toMatchObject({ code: 'second-service' });
    expect(service.warnings).toContain('second-weather-service-failed');
  });

  it('is the first one\'s when that is newer', async () => {
    first.script(FORECAST, dead);
    await ask();
    first.script(FORECAST, good);
    service.clock.set(START_S + 2 * HOUR_S);
    await ask();
    bothDead();
    service.clock.set(START_S + 5 * HOUR_S);
    expect(await ask()).toMatchObject({ source: 'open-meteo', stale: true, issuedAtS: START_S + 2 * HOUR_S });
  });

  it('and nothing is stored, all that was tried is said', async () => {
    bothDead();
    const error: unknown = await ask().catch((e: unknown) => e);
    expect(error).toBeInstanceOf(NoWeatherError);
    expect((error as Error).message).toMatch(/^No usable weather for 44\.260,-72\.580,187m\. Asked the weather service: .*text\/html.* Asked the second: .*got 503 "503 Service Unavailable".* Looked in the store: no earlier answer is stored\./);
  });

  it.each([
    ['never answers', hostile.silence],
    ['resets', hostile.reset],
    ['breaks off in its gzip', (response: ServerResponse) => void response.writeHead(200, { 'content-type': 'application/json', 'content-encoding': 'gzip' }).end(Buffer.from('1f8b0800000000000003', 'hex'))],
    ['is a login page', hostile.text(200, 'text/html', 'log in')],
    ['answers with JSON of something else', hostile.json(200, { type: 'FeatureCollection' })],
  ] as const)('the second %s: the stored answer stands in', async (_, reaction) => {
    await ask();
    first.script(FORECAST, dead);
    second.script((response) => reaction(response, { path: '', query: new URLSearchParams(), headers: {} }));
    service.clock.set(START_S + 2 * HOUR_S);
    expect(await ask()).toMatchObject({ source: 'open-meteo', stale: true });
  });
});

describe('without a contact', () => {
  it('there is no second service: the stored answer stands in, or what is missing is said', async () => {
    await service.close();
    start(false);
    first.script(FORECAST, dead);
    await expect(ask()).rejects.toThrow(/There is no second weather service while DUSKWARD_CONTACT is not set\. Looked in the store: no earlier answer is stored/);
    first.script(FORECAST, good);
    await ask();
    first.script(FORECAST, dead);
    service.clock.set(START_S + 2 * HOUR_S);
    expect(await ask()).toMatchObject({ source: 'open-meteo', stale: true });
    expect(second.seen).toEqual([]);
  });
});
