import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { NoWeatherError } from '../../../bot/ports.js';
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
const hoursFromNow = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);

interface Outage {
  readonly what: string;
  readonly reactions: () => readonly hostile.Reaction[];
  readonly cause: RegExp;
  /** Requests that reach the service: never more than the policy allows. */
  readonly hits: number;
}

const OUTAGES: readonly Outage[] = [
  { what: 'never answers (time-out)', reactions: () => [hostile.silence], cause: /expected an answer in time, got none.*UND_ERR_HEADERS_TIMEOUT/, hits: 3 },
  { what: 'resets every connection', reactions: () => [hostile.reset], cause: /got no connection or a broken one/, hits: 3 },
  { what: 'truncates its JSON every time', reactions: () => [hostile.truncated], cause: /expected whole JSON, got \d+ characters that end in ".*streaming data: disk"/, hits: 3 },
  { what: 'severs the connection in the body every time', reactions: () => [hostile.severed], cause: /expected a whole answer, got the beginning of one/, hits: 6 },
  { what: 'answers 502 with HTML', reactions: () => [hostile.text(502, 'text/html', '<html>bad gateway</html>')], cause: /expected status 200, got 502 "<html>bad gateway<\/html>", also after retries/, hits: 3 },
  { what: 'is overloaded (503)', reactions: () => [hostile.error(503, 'The service is overloaded')], cause: /got 503 "The service is overloaded"/, hits: 3 },
  { what: 'answers 200 with a web page', reactions: () => [hostile.text(200, 'text/html', '<html>Log in to the hotel</html>')], cause: /expected JSON, got text\/html "<html>Log in.*login page/, hits: 1 },
  { what: 'sends on to another host (303)', reactions: () => [(r) => void r.writeHead(303, { location: 'https://elsewhere.example/' }).end()], cause: /got 303.*sent on to https:\/\/elsewhere\.example\//, hits: 1 },
  { what: 'refuses with 400 and a reason', reactions: () => [hostile.error(400, 'No data is available for this location')], cause: /got 400 "No data is available for this location"/, hits: 1 },
  { what: 'has no such path (404, HTML)', reactions: () => [hostile.text(404, 'text/html', 'Not Found')], cause: /got 404 "Not Found".*DUSKWARD_WEATHER_URL/, hits: 1 },
  { what: '429 by the hour', reactions: () => [hostile.error(429, 'Hourly API request limit exceeded. Please try again in the next hour.')], cause: /limit: "Hourly.*Not asked again before 2026-11-23T22:00:00/, hits: 1 },
  { what: '429 by the day', reactions: () => [hostile.error(429, 'Daily API request limit exceeded. Please try again tomorrow.')], cause: /limit: "Daily.*Not asked again before 2026-11-24T00:00:00/, hits: 1 },
  { what: '429 by the minute for ever', reactions: () => [hostile.error(429, 'Minutely API request limit exceeded. Please try again in one minute.')], cause: /limit: "Minutely/, hits: 3 },
  { what: '429 concurrent for ever', reactions: () => [hostile.error(429, 'Too many concurrent requests')], cause: /limit: "Too many concurrent requests"/, hits: 4 },
  { what: '429 of an unknown kind', reactions: () => [hostile.text(429, 'text/html', '<b>slow down</b>')], cause: /limit: "<b>slow down<\/b>"/, hits: 1 },
  { what: 'answers an error with status 200', reactions: () => [hostile.error(200, 'boom')], cause: /expected hourly weather, got the service's error "boom"/, hits: 1 },
  { what: 'answers JSON that is not weather', reactions: () => [hostile.json(200, { generationtime_ms: 0.3 })], cause: /expected a forecast answer with "hourly" and "hourly_units", got an object with generationtime_ms/, hits: 1 },
  { what: 'answers a JSON string', reactions: () => [hostile.json(200, 'fine weather')], cause: /got JSON that is a string/, hits: 1 },
  { what: 'answers an array of places', reactions: () => [changed((b) => [b, b])], cause: /expected one place \(a JSON object\), got an array of 2 places/, hits: 1 },
  { what: 'answers for another place', reactions: () => [changed((b) => ({ ...b, latitude: 52.5, longitude: 13.4 }))], cause: /expected within 0\.5 degrees of 44\.26, -72\.58, got 52\.5, 13\.4/, hits: 1 },
  { what: 'gives wind in km/h', reactions: () => [changed((b) => withUnit(b, 'wind_speed_10m', 'km/h'))], cause: /unit of hourly\.wind_speed_10m_best_match: expected "m\/s", got "km\/h"/, hits: 1 },
  { what: 'gives temperature in °F', reactions: () => [changed((b) => withUnit(b, 'temperature_2m', '°F'))], cause: /unit of hourly\.temperature_2m_best_match: expected "°C", got "°F"/, hits: 1 },
  { what: 'gives the second model alone in °F', reactions: () => [changed((b) => (b.hourly_units['temperature_2m_ecmwf_ifs'] = '°F', b))], cause: /temperature_2m_ecmwf_ifs: expected "°C", got "°F"/, hits: 1 },
  { what: 'gives local ISO times', reactions: () => [changed((b) => ({ ...b, hourly_units: { ...b.hourly_units, time: 'iso8601' } }))], cause: /unit of hourly\.time: expected "unixtime" \(epoch seconds\), got "iso8601"/, hits: 1 },
  { what: 'has a half-hour offset', reactions: () => [changed((b) => ({ ...b, utc_offset_seconds: -12600 }))], cause: /utc_offset_seconds: expected 0, got -12600 s/, hits: 1 },
  { what: 'skips an hour', reactions: () => [changed((b) => ({ ...b, hourly: Object.fromEntries(Object.entries(b.hourly).map(([k, v]) => [k, v.filter((_, i) => i !== 5)])) }))], cause: /hourly\.time\[5\]: expected full hours in steps of 3600 s/, hits: 1 },
  { what: 'gives ragged arrays', reactions: () => [changed((b) => (b.hourly['cloud_cover_best_match']?.pop(), b))], cause: /hourly\.cloud_cover_best_match: expected 528 values, one for each hour, got 527/, hits: 1 },
  { what: 'gives words for numbers', reactions: () => [changed((b) => ({ ...b, hourly: { ...b.hourly, temperature_2m_best_match: ['cold'] } }))], cause: /hourly\.temperature_2m_best_match\.0/, hits: 1 },
  { what: 'prints NaN into its JSON', reactions: () => [(r) => void r.writeHead(200, { 'content-type': 'application/json' }).end('{"hourly":{"time":[NaN]}}')], cause: /expected whole JSON/, hits: 3 },
  { what: 'prints a number too great for any float', reactions: () => [(r) => void r.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify({ latitude: 44.25, longitude: -72.5, utc_offset_seconds: 0, hourly_units: { time: 'unixtime', temperature_2m: '°C' }, hourly: { time: [0], temperature_2m: [7] } }).replace('[7]', '[1e999]'))], cause: /hourly\.temperature_2m\.0/, hits: 1 },
  { what: 'reaches 17 h ahead only', reactions: () => [changed((b) => setHours(b, START_S, { variable: 'cloud_cover', hours: hoursFromNow(18, 168), value: null }))], cause: /expected at least 18 h of temperature, humidity, wind and cloud after 2026-11-23T21:20Z, got 17 h/, hits: 1 },
  { what: 'is all in the past (stale series)', reactions: () => [changed((b) => ({ ...b, hourly: { ...b.hourly, time: b.hourly['time']?.map((t) => (t ?? 0) - 30 * 86400) } }))], cause: /time span: expected hours around 2026-11-23T21:20Z, got 2026-10-09T21:00Z to 2026-10-31T20:00Z/, hits: 1 },
  { what: 'has no temperature of any model', reactions: () => [changed((b) => withUnit(eachValue(b, 'temperature_2m', () => null), 'temperature_2m', 'undefined'))], cause: /hourly\.temperature_2m: expected values, got none that can be true/, hits: 1 },
  { what: 'has absurd temperatures throughout', reactions: () => [changed((b) => eachValue(b, 'temperature_2m', () => 9999))], cause: /hourly\.temperature_2m: expected values, got none that can be true/, hits: 1 },
  { what: 'has neither dew point nor humidity', reactions: () => [changed((b) => without(b, 'dew_point_2m', 'relative_humidity_2m'))], cause: /dew_point_2m and relative_humidity_2m: expected values in one of them/, hits: 1 },
];

describe('a service that cannot be used', () => {
  it.each(OUTAGES)('$what: says so when nothing is stored, and lives on the last good answer when one is', async ({ reactions, cause, hits }) => {
    weather.script(FORECAST, ...reactions());
    const error: unknown = await service.source.weatherAt(PLACE).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(NoWeatherError);
    expect((error as NoWeatherError).message).toMatch(cause);
    expect((error as NoWeatherError).message).toMatch(/^No usable weather for 44\.260,-72\.580,187m\. .*no earlier answer is stored\. Check the connection and DUSKWARD_WEATHER_URL, or give a saved answer/);
    expect(weather.hits(FORECAST)).toBe(hits);

    await service.close();
    service = startTestService(weather.url);
    weather.script(FORECAST, hostile.good(() => service.clock.nowS()));
    const first = await service.source.weatherAt(PLACE);
    service.clock.set(START_S + 2 * 3600);
    weather.script(FORECAST, ...reactions());
    const stale = await service.source.weatherAt(PLACE);
    expect(stale.stale).toBe(true);
    expect(stale.issuedAtS).toBe(first.issuedAtS);
    expect(stale.hours).toEqual(first.hours);
    const note = stale.notes[0];
    expect(note).toMatchObject({ code: 'stale' });
    // A minute-limit was waited out before giving up, so the age may have grown a little.
    expect(note?.code === 'stale' && note.ageS >= 7200 && note.ageS < 7400).toBe(true);
    expect(service.warnings).toContain('weather-service-failed');
  });
});
