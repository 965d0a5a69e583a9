import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { PlaceSearchError, type FoundPlace } from '../../../bot/ports.js';
import { geocoder } from '../../../bot/weather/geocoding.js';
import { Transport } from '../../../bot/weather/open-meteo/transport.js';
import { error, json, reset, severed, silence, text, type Reaction } from '../../fixtures/hostile-weather.js';
import { STAND_IN_ABSENT, STAND_IN_PRESENT, startStandIn } from '../../fixtures/weather-stand-in.js';
import { startSearchService, type SearchService } from './search-service.js';

let service: SearchService;
let finder: ReturnType<typeof geocoder>;
const warnings: string[] = [];
beforeEach(async () => {
  service = await startSearchService();
  warnings.length = 0;
  const transport = new Transport({ connectMs: 500, headersMs: 100, bodyMs: 100, retryAfterMs: 5 });
  finder = geocoder({ baseUrl: service.url, contact: 'grower@example.org', log: { info: () => undefined, warn: (event) => void warnings.push(event), error: () => undefined }, transport });
});
afterEach(async () => {
  await finder.close();
  await service.close();
});

const VERMONT = { id: 702, name: 'Alder Bench', latitude: 44.3004567, longitude: -72.5, elevation: 240, timezone: 'America/New_York', country_code: 'US', country: 'United States', admin1: 'Vermont', feature_code: 'PPL' };
const COLORADO = { ...VERMONT, id: 701, latitude: 39.83, longitude: -104.65, admin1: 'Colorado' };
const answers = (...results: readonly unknown[]): Reaction => json(200, results.length === 0 ? { generationtime_ms: 0.4 } : { results, generationtime_ms: 0.4 });
const regions = (found: readonly FoundPlace[]): readonly (string | null)[] => found.map(({ region }) => region);

describe('a town that is found', () => {
  it('comes with region and country, to 3 decimals and no finer', async () => {
    service.answer(answers(VERMONT));
    expect(await finder.placesCalled('Alder Bench')).toEqual([{ name: 'Alder Bench', region: 'Vermont', country: 'United States', countryCode: 'US', latitude: 44.3, longitude: -72.5 }]);
  });

  it('is asked for politely and plainly', async () => {
    service.answer(answers(VERMONT));
    await finder.placesCalled('  Alder   Bench ');
    const { path, query, headers } = service.seen[0]!;
    expect(path).toBe('/v1/search');
    expect(Object.fromEntries(query)).toEqual({ name: 'Alder Bench', count: '20', language: 'en', format: 'json' });
    expect(headers['user-agent']).toContain('grower@example.org');
  });

  it('may lack what is zero or empty: the service leaves that out', async () => {
    service.answer(answers({ name: 'Nullness', longitude: 6.5 }));
    expect(await finder.placesCalled('Nullness')).toEqual([{ name: 'Nullness', region: null, country: null, countryCode: null, latitude: 0, longitude: 6.5 }]);
  });

  it('goes before towns that only begin so', async () => {
    service.answer(answers({ ...COLORADO, name: 'Alder Benchwood' }, VERMONT));
    expect(regions(await finder.placesCalled('alder bench'))).toEqual(['Vermont']);
  });

  it('is narrowed by its region, also where that is written without a comma', async () => {
    const withoutRegion: Reaction = (response, request) => (/vermont|vt/i.test(request.query.get('name')!.split(',')[0]!) ? answers() : answers(COLORADO, VERMONT))(response, request);
    service.answer(withoutRegion);
    expect(regions(await finder.placesCalled('Alder Bench, Vermont'))).toEqual(['Vermont']);
    expect(regions(await finder.placesCalled('alder bench vermont'))).toEqual(['Vermont']);
    expect(regions(await finder.placesCalled('Alder Bench, Vermont, USA'))).toEqual(['Vermont']);
    // A code is the service's to narrow.
    expect(regions(await finder.placesCalled('alder bench vt'))).toEqual(['Colorado', 'Vermont']);
    expect(service.seen.at(-1)!.query.get('name')).toBe('alder bench, vt');
  });
});

describe('a town that is not found', () => {
  it('is no error', async () => {
    service.answer(answers());
    expect(await finder.placesCalled('Nowhere at all')).toEqual([]);
  });

  it('is not asked for where one letter is all there is', async () => {
    expect(await finder.placesCalled('a')).toEqual([]);
    expect(service.seen).toEqual([]);
  });

  it('is not replaced by a namesake elsewhere when the region was only guessed from the words', async () => {
    service.answer((response, request) => (request.query.get('name')!.includes(',') ? answers(VERMONT) : answers())(response, request));
    expect(await finder.placesCalled('alder bench ontario')).toEqual([]);
  });
});

describe('a search that fails', () => {
  it.each<readonly [string, Reaction, string]>([
    ['broken off', severed, 'cut-off'],
    ['no connection', reset, 'network'],
    ['no answer', silence, 'time-out'],
    ['out of order', text(503, 'text/html', 'down'), 'server'],
    ['too many questions', error(429, 'Minutely API request limit exceeded.'), 'limited'],
    ['refused', error(400, 'Parameter count must be between 1 and 100.'), 'refused'],
    ['a login page', text(200, 'text/html', '<html>login</html>'), 'not-json'],
    ['half an answer', text(200, 'application/json', '{"results":[{"na'), 'cut-off'],
    ['something else', json(200, { results: [{ name: 'Wexby', latitude: 357 }] }), 'unusable'],
  ])('%s', async (_name, reaction, failure) => {
    service.answer(reaction);
    const found: unknown = await finder.placesCalled('Wexby').catch((cause: unknown) => cause);
    expect(found).toBeInstanceOf(PlaceSearchError);
    expect((found as PlaceSearchError).failure).toBe(failure);
    expect(warnings).toEqual(['place search failed']);
  });
});

describe.skipIf(!STAND_IN_PRESENT)(`against the stand-in of the service${STAND_IN_ABSENT}`, () => {
  it('finds invented towns, several of a name, and none', async () => {
    const standIn = await startStandIn('725650TYCST.csv', '2026-01-14T22:00:00Z');
    const live = geocoder({ baseUrl: standIn.url });
    try {
      expect(regions(await live.placesCalled('Alder Bench'))).toEqual(['Colorado', 'Vermont']);
      expect(regions(await live.placesCalled('Alder Bench, Vermont'))).toEqual(['Vermont']);
      expect((await live.placesCalled('wexby'))[0]).toMatchObject({ countryCode: 'GB', latitude: 57.2, longitude: -3.8 });
      expect(await live.placesCalled('Nowhere')).toEqual([]);
    } finally {
      await live.close();
      await standIn.stop();
    }
  });
});
