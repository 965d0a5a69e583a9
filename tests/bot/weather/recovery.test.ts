import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import * as hostile from '../../fixtures/hostile-weather.js';
import type { WireBody } from '../../fixtures/weather-answer.js';
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

describe('a service that recovers', () => {
  it.each([
    { what: 'a time-out', bad: hostile.silence, sleptS: [], hits: 2 },
    { what: 'a reset', bad: hostile.reset, sleptS: [], hits: 2 },
    { what: 'a 500', bad: hostile.error(500, 'Something went wrong.'), sleptS: [], hits: 2 },
    { what: 'truncated JSON', bad: hostile.truncated, sleptS: [], hits: 2 },
    // Twenty-nine and a half seconds to the full minute, and the jitter handed in.
    { what: '429 by the minute', bad: hostile.error(429, 'Minutely API request limit exceeded. Please try again in one minute.'), sleptS: [33], hits: 2 },
    { what: '429 concurrent', bad: hostile.error(429, 'Too many concurrent requests'), sleptS: [2], hits: 2 },
  ])('after $what answers as if nothing had been', async ({ bad, sleptS, hits }) => {
    weather.script(FORECAST, bad, hostile.good(() => service.clock.nowS()));
    const answer = await service.source.weatherAt(PLACE);
    expect(answer).toMatchObject({ stale: false, notes: [], source: 'open-meteo' });
    expect(service.sleptS).toEqual(sleptS);
    expect(weather.hits(FORECAST)).toBe(hits);
  });

  it('waits 2, 4 and 8 s while its requests collide', async () => {
    const busy = hostile.error(429, 'Too many concurrent requests');
    weather.script(FORECAST, busy, busy, busy, hostile.good(() => service.clock.nowS()));
    await service.source.weatherAt(PLACE);
    expect(service.sleptS).toEqual([2, 4, 8]);
  });
});

describe('the lesser requests', () => {
  it('does without the ensemble, and says why', async () => {
    weather.script('/v1/ensemble', hostile.error(400, 'No data is available for this location'));
    const answer = await service.source.weatherAt(PLACE);
    expect(answer.notes).toEqual([{ code: 'no-ensemble', cause: expect.stringMatching(/ensemble.*No data is available/) as string }]);
    expect(answer.hours.airTempSpreadK.every((spread) => spread === null)).toBe(true);
  });

  it('does without the ensemble when it has no spread', async () => {
    weather.script('/v1/ensemble', changed((b) => ({ ...b, hourly_units: { ...b.hourly_units, temperature_2m_spread: 'undefined' } })));
    expect((await service.source.weatherAt(PLACE)).notes).toEqual([{ code: 'no-ensemble', cause: 'the answer holds no usable temperature_2m_spread' }]);
  });

  it('does without the past year, says so, and asks for it again with the next forecast', async () => {
    weather.script('/v1/archive', hostile.error(400, 'no'), hostile.good(() => service.clock.nowS()));
    const first = await service.source.weatherAt(PLACE);
    expect(first.notes).toEqual([{ code: 'missing-variable', variable: 'mean air temperature of the past year', instead: 'not known' }]);
    service.clock.set(START_S + 2 * 3600);
    const second = await service.source.weatherAt(PLACE);
    expect(second.ground.yearlyMeanAirTempK).toBeCloseTo(280.15, 9);
    service.clock.set(START_S + 4 * 3600);
    await service.source.weatherAt(PLACE);
    expect(weather.hits('/v1/archive')).toBe(2);
  });

  it('does not take a half-empty year for its mean', async () => {
    weather.script('/v1/archive', changed((b) => ({ ...b, hourly: { ...b.hourly, temperature_2m: b.hourly['temperature_2m']?.map((t, i) => (i % 2 === 0 ? t : null)) } })));
    expect((await service.source.weatherAt(PLACE)).ground.yearlyMeanAirTempK).toBeNull();
  });
});
