import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { NoWeatherError } from '../../../bot/ports.js';
import * as hostile from '../../fixtures/hostile-weather.js';
import { setHours } from '../../fixtures/weather-answer.js';
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

const FORECAST = '/v1/forecast';
const HOUR_S = 3600;
const FIRST_HOUR_S = Math.floor(START_S / HOUR_S) * HOUR_S;
const asked = (n: number): (string | null)[] => {
  const query = weather.seen.filter((request) => request.path === FORECAST)[n]?.query;
  return [query?.get('past_hours') ?? null, query?.get('forecast_hours') ?? null];
};
const good = hostile.good(() => service.clock.nowS());
const dead = hostile.text(200, 'text/html', 'down');

describe('weather that is remembered', () => {
  it('brings fifteen past days and a week ahead the first time', async () => {
    const { hours, ground, issuedAtS, source } = await service.source.weatherAt(PLACE);
    expect(asked(0)).toEqual(['360', '168']);
    expect(hours.timeS[0]).toBe(FIRST_HOUR_S - 360 * HOUR_S);
    expect(hours.timeS.at(-1)).toBe(FIRST_HOUR_S + 167 * HOUR_S);
    expect(hours.airTempSpreadK[360]).toBeCloseTo(0.8, 9);
    expect(hours.modelDifferenceK[360]).toBeCloseTo(0.5, 9);
    expect(hours.snowfallM[hours.timeS.findIndex((t) => (t / HOUR_S) % 24 === 3)]).toBeCloseTo(0.007, 9);
    expect(hours.surfacePressurePa[0]).toBe(99_000);
    expect(hours.globalShortwaveWPerM2[0]).toBe(200); // 21:00 UTC; the night's -0.2 is rounded to zero
    expect(Math.min(...hours.globalShortwaveWPerM2)).toBe(0);
    // -5 °C dew point over liquid water: 421.8 Pa (over ice it would be 401.9)
    expect(hours.vapourPressurePa[0]).toBeCloseTo(421.8, 0);
    expect(ground).toEqual({ soilTemp18cmK: 277.65, soilTemp54cmK: 279.65, yearlyMeanAirTempK: 280.15 });
    expect([issuedAtS, source]).toEqual([START_S, 'open-meteo']);
  });

  it('answers from the store for an hour, the same bytes', async () => {
    const first = await service.source.weatherAt(PLACE);
    service.clock.set(START_S + 59 * 60);
    expect(JSON.stringify(await service.source.weatherAt(PLACE))).toBe(JSON.stringify(first));
    expect(weather.seen).toHaveLength(3);
  });

  it('asks one time for callers at the same time and place, also when the places differ by a few metres', async () => {
    await Promise.all([PLACE, PLACE, { ...PLACE, latitude: PLACE.latitude + 0.0002 }].map((place) => service.source.weatherAt(place)));
    expect(weather.hits(FORECAST)).toBe(1);
  });

  it('asks later for the hours since the last issue and a margin, and keeps fifteen days', async () => {
    await service.source.weatherAt(PLACE);
    service.clock.set(START_S + 24 * HOUR_S);
    weather.script(FORECAST, hostile.good(() => service.clock.nowS(), (body) => {
      for (const suffix of ['_best_match', '_ecmwf_ifs']) body.hourly[`cloud_cover${suffix}`] = (body.hourly[`cloud_cover${suffix}`] ?? []).map(() => 100);
      return body;
    }));
    const { hours, notes } = await service.source.weatherAt(PLACE);
    expect(asked(1)).toEqual(['36', '168']);
    expect(hours.timeS[0]).toBe(FIRST_HOUR_S - 336 * HOUR_S);
    expect(hours.timeS).toHaveLength(528);
    expect(hours.timeS.every((t, i) => i === 0 || t - (hours.timeS[i - 1] ?? 0) === HOUR_S)).toBe(true);
    // Stored to 12 h before the last issue, new from there on.
    const firstNew = hours.cloudFraction.indexOf(1);
    expect(hours.timeS[firstNew]).toBe(FIRST_HOUR_S - 12 * HOUR_S);
    expect(hours.cloudFraction.slice(0, firstNew).every((c) => c === 0.5)).toBe(true);
    expect(notes).toEqual([]);
    expect(weather.hits('/v1/archive')).toBe(1);
  });

  it('asks for all fifteen days again after a long pause, or when the stored past is short', async () => {
    await service.source.weatherAt(PLACE);
    service.clock.set(START_S + 20 * 24 * HOUR_S);
    weather.script(FORECAST, hostile.good(() => service.clock.nowS(), (body) => setHours(body, service.clock.nowS(), { variable: 'cloud_cover', hours: [-101, -102, -103], value: null })));
    const short = await service.source.weatherAt(PLACE);
    expect(asked(1)).toEqual(['360', '168']);
    expect(short.notes).toEqual([{ code: 'short-history', startsAtS: FIRST_HOUR_S + (20 * 24 - 100) * HOUR_S }]);
    service.clock.set(START_S + 20 * 24 * HOUR_S + 2 * HOUR_S);
    weather.script(FORECAST, good);
    expect((await service.source.weatherAt(PLACE)).notes).toEqual([]);
    expect(asked(2)).toEqual(['360', '168']);
  });

  it('keeps places apart, and their coordinates to three decimals', async () => {
    await service.source.weatherAt({ latitude: 44.123456, longitude: -72.987654, elevationM: null });
    await service.source.weatherAt(PLACE);
    expect([...service.rows.keys()]).toEqual(['44.123,-72.988,elevation-unknown', '44.260,-72.580,187m']);
  });
});

describe('when the service fails', () => {
  it('answers with the last good weather up to 36 h old, saying how old and why', async () => {
    await service.source.weatherAt(PLACE);
    service.clock.set(START_S + 36 * HOUR_S);
    weather.script(FORECAST, dead);
    const answer = await service.source.weatherAt(PLACE);
    expect(answer).toMatchObject({ stale: true, issuedAtS: START_S });
    expect(answer.notes).toEqual([{ code: 'stale', ageS: 36 * HOUR_S, cause: expect.stringMatching(/expected JSON, got text\/html/) as string }]);
  });

  it('says what was tried when the last good weather is older', async () => {
    await service.source.weatherAt(PLACE);
    service.clock.set(START_S + 36 * HOUR_S + 60);
    weather.script(FORECAST, dead);
    await expect(service.source.weatherAt(PLACE)).rejects.toThrow(/expected JSON, got text\/html.*the last stored answer is 36\.0 h old and reaches 130\.6 h ahead \(needed: at most 36\.0 h old, at least 12\.0 h ahead\)/);
  });

  it('says what was tried when the last good weather ends before the night does', async () => {
    weather.script(FORECAST, hostile.good(() => service.clock.nowS(), (body) => setHours(body, START_S, { variable: 'cloud_cover', hours: [30, 31, 32], value: null })));
    await service.source.weatherAt(PLACE);
    weather.script(FORECAST, dead);
    service.clock.set(START_S + 15 * HOUR_S);
    expect((await service.source.weatherAt(PLACE)).stale).toBe(true);
    service.clock.set(START_S + 20 * HOUR_S);
    await expect(service.source.weatherAt(PLACE)).rejects.toThrow(/reaches 8\.7 h ahead/);
  });

  it('at one of several places, the others get theirs', async () => {
    const wrong = { ...PLACE, latitude: 70 };
    weather.script(FORECAST, (response, request) => (request.query.get('latitude') === '70.000' ? hostile.error(400, 'No data is available for this location') : good)(response, request));
    const places = [PLACE, wrong, { ...PLACE, latitude: 45 }, { ...PLACE, latitude: 46 }];
    const results = await Promise.allSettled(places.map((place) => service.source.weatherAt(place)));
    expect(results.map((result) => result.status)).toEqual(['fulfilled', 'rejected', 'fulfilled', 'fulfilled']);
    const [, failed] = results;
    expect(failed?.status === 'rejected' && failed.reason).toBeInstanceOf(NoWeatherError);
    expect(String(failed?.status === 'rejected' && failed.reason)).toMatch(/No usable weather for 70\.000,-72\.580,187m\..*No data is available for this location/);
  });

  it('asks again at the next call, and is fresh again when it works', async () => {
    await service.source.weatherAt(PLACE);
    service.clock.set(START_S + 2 * HOUR_S);
    weather.script(FORECAST, dead, good);
    expect((await service.source.weatherAt(PLACE)).stale).toBe(true);
    expect(await service.source.weatherAt(PLACE)).toMatchObject({ stale: false, notes: [], issuedAtS: START_S + 2 * HOUR_S });
  });
});

describe('a store that is not as expected', () => {
  it('an unreadable row is asked anew', async () => {
    await service.source.weatherAt(PLACE);
    for (const body of ['{', '{"hours":{}}', 'null']) {
      const [key, row] = [...service.rows][0] ?? [];
      if (key === undefined || row === undefined) throw new Error('expected a stored row, got none');
      service.rows.set(key, { ...row, body });
      expect((await service.source.weatherAt(PLACE)).stale).toBe(false);
    }
    expect(service.warnings).toEqual(['stored-weather-unreadable', 'stored-weather-unreadable', 'stored-weather-unreadable']);
    expect(weather.hits(FORECAST)).toBe(4);
  });

  it('a row of a version that knew no members of the ensemble is answered with in an outage, what they would say as not known', async () => {
    const { hours } = await service.source.weatherAt(PLACE);
    const [key, row] = [...service.rows][0]!;
    const older = JSON.parse(row.body) as { hours: Record<string, unknown> };
    delete older.hours['cloudSpread'];
    delete older.hours['airTempCloudCorrelation'];
    service.rows.set(key, { ...row, body: JSON.stringify(older) });
    service.clock.set(START_S + 2 * HOUR_S);
    weather.script(FORECAST, dead);
    const answer = await service.source.weatherAt(PLACE);
    const unknown = hours.timeS.map(() => null);
    expect(answer).toMatchObject({ stale: true, issuedAtS: START_S });
    expect(answer.hours).toEqual({ ...hours, cloudSpread: unknown, airTempCloudCorrelation: unknown });
    expect(service.warnings).not.toContain('stored-weather-unreadable');
  });

  it('a row from the future (a clock that was put back) is asked anew', async () => {
    await service.source.weatherAt(PLACE);
    service.clock.set(START_S - 48 * HOUR_S);
    expect((await service.source.weatherAt(PLACE)).issuedAtS).toBe(START_S - 48 * HOUR_S);
    expect(service.warnings).toEqual(['stored-weather-from-the-future']);
  });

  it('a row that cannot be written does not cost the answer', async () => {
    service.rows.set = () => {
      throw new Error('disk full');
    };
    await expect(service.source.weatherAt(PLACE)).resolves.toMatchObject({ stale: false });
    expect(service.warnings).toEqual(['weather-not-stored']);
  });
});
