import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { savedAnswer, savedFileSource } from '../../../bot/weather/saved-file.js';
import { forecastBody, without, type WireBody } from '../../fixtures/weather-answer.js';
import { PLACE, START_S } from './service.js';

const asGiven = (): WireBody => forecastBody({ nowS: START_S, pastHours: 72, aheadHours: 41, suffixes: [''] });
const read = (body: unknown, atS = START_S): ReturnType<typeof savedAnswer> => savedAnswer(body, { place: PLACE, atS });

let folder: string;
beforeAll(async () => void (folder = await mkdtemp(join(tmpdir(), 'duskward-weather-'))));
afterAll(() => rm(folder, { recursive: true }));

describe('a saved answer', () => {
  it('of one model with spread is used as it was issued', async () => {
    const body = asGiven();
    body.hourly_units['temperature_2m_spread'] = '°C';
    body.hourly['temperature_2m_spread'] = (body.hourly['time'] ?? []).map(() => 1.2);
    const path = join(folder, 'saved.json');
    await writeFile(path, JSON.stringify(body));
    const answer = await savedFileSource({ path, atS: START_S }).weatherAt(PLACE);
    expect(answer).toMatchObject({ source: 'file', issuedAtS: START_S, stale: false });
    expect(answer.hours.airTempSpreadK).toEqual(answer.hours.timeS.map(() => 1.2));
    expect(answer.notes.map((note) => note.code)).toEqual(['missing-variable', 'short-history', 'short-horizon']);
  });

  it('may carry the suffix of a single model, or those of two', () => {
    expect(read(forecastBody({ nowS: START_S, suffixes: ['_gfs_seamless'] })).hours.airTempK).toEqual(read(forecastBody({ nowS: START_S, suffixes: [''] })).hours.airTempK);
    expect(read(forecastBody({ nowS: START_S })).hours.modelDifferenceK[0]).toBeCloseTo(0.5, 9);
  });

  it('may lack what the night can do without, each with a note', () => {
    const body = without(asGiven(), 'diffuse_radiation', 'direct_radiation', 'soil_temperature_18cm', 'soil_temperature_54cm', 'snowfall', 'surface_pressure', 'dew_point_2m');
    expect(read(body).notes.map((note) => ('variable' in note ? note.variable : note.code))).toEqual([
      'dew_point_2m', 'diffuse_radiation', 'surface_pressure', 'snowfall', 'no-ensemble',
      'soil_temperature_18cm', 'soil_temperature_54cm', 'mean air temperature of the past year', 'short-history', 'short-horizon',
    ]);
  });

  it('of another place is used, and says so', () => {
    expect(read({ ...asGiven(), latitude: 39.88, longitude: -104.67 }).notes[0]).toEqual({ code: 'missing-variable', variable: 'weather at the greenhouse', instead: 'the saved answer is for 39.88, -104.67' });
  });

  it('counts longitude the short way around', () => {
    const body = { ...asGiven(), latitude: -17, longitude: 179.9 };
    expect(savedAnswer(body, { place: { latitude: -17, longitude: -179.9, elevationM: 3 }, atS: START_S }).notes[0]).not.toMatchObject({ variable: 'weather at the greenhouse' });
  });

  it.each([
    ['local times', { ...asGiven(), hourly_units: { ...asGiven().hourly_units, time: 'iso8601' } }, /expected "unixtime" \(epoch seconds\), got "iso8601"\..*timeformat=unixtime/],
    ['imperial units', { ...asGiven(), hourly_units: { ...asGiven().hourly_units, temperature_2m: '°F' } }, /hourly\.temperature_2m: expected "°C", got "°F"/],
    ['miles an hour', { ...asGiven(), hourly_units: { ...asGiven().hourly_units, wind_speed_10m: 'mp/h' } }, /expected "m\/s", got "mp\/h"/],
    ['several places', [asGiven(), asGiven()], /expected one place \(a JSON object\), got an array of 2 places/],
    ['an error', { error: true, reason: 'Invalid timezone' }, /got the service's error "Invalid timezone"/],
    ['something else', { hello: 1 }, /got an object with hello/],
    ['nothing', null, /got JSON that is null/],
  ])('with %s is refused with a way out', (_, body, message) => {
    expect(() => read(body)).toThrow(message);
    expect(() => read(body)).toThrow(/A saved answer is one place, hourly/);
  });

  it('of another time is refused, and says which time it holds', () => {
    expect(() => read(asGiven(), START_S + 7 * 86400)).toThrow(/expected hours around 2026-11-30T21:20Z, got 2026-11-20T21:00Z to 2026-11-25T13:00Z\..*for a saved answer give the time it was made for/);
  });

  it('names the file when it is missing or no JSON', async () => {
    const path = join(folder, 'broken.json');
    await writeFile(path, '<html>');
    await expect(savedFileSource({ path, atS: START_S }).weatherAt(PLACE)).rejects.toThrow(/broken\.json: expected JSON, got "<html>"/);
    await expect(savedFileSource({ path: join(folder, 'none.json'), atS: START_S }).weatherAt(PLACE)).rejects.toThrow(/none\.json: expected a readable file, got ENOENT/);
  });
});

const SEASONS = fileURLToPath(new URL('../../../../shared/validation/seasons/', import.meta.url));
const hasSeasons = existsSync(SEASONS);

describe('the evenings of past seasons', () => {
  it.skipIf(!hasSeasons)(`every saved evening of ../shared/validation/seasons is usable${hasSeasons ? '' : ' (NOT RUN: the folder is absent; invented winters, see its README)'}`, () => {
    const seasons = readdirSync(SEASONS).filter((name) => existsSync(join(SEASONS, name, 'forecasts.json')));
    expect(seasons.length).toBeGreaterThan(0);
    for (const season of seasons) {
      const evenings = JSON.parse(readFileSync(join(SEASONS, season, 'forecasts.json'), 'utf8')) as { issued_unix: number; response: WireBody }[];
      for (const { issued_unix: atS, response } of evenings) {
        const answer = savedAnswer(response, { place: { latitude: response.latitude, longitude: response.longitude, elevationM: 1643 }, atS });
        expect(answer.hours.timeS).toHaveLength(response.hourly['time']?.length ?? 0);
        expect(answer.hours.airTempSpreadK.every((spread) => spread !== null)).toBe(true);
        expect(new Set(answer.notes.map((note) => ('variable' in note ? note.variable : note.code)))).toEqual(
          new Set(['snowfall', 'soil_temperature_18cm', 'soil_temperature_54cm', 'mean air temperature of the past year', 'short-history', 'short-horizon']),
        );
      }
    }
  });
});
