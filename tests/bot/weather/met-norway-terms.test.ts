import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { completeAddress, completeRequest } from '../../../bot/weather/met-norway/request.js';
import { expiresAtS } from '../../../bot/weather/met-norway/expiry.js';
import { DEMO_PLACE, demoAnswerBody } from '../../../bot/weather/demo.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { bothServices, CONTACT, type BothServices } from '../../fixtures/both-weather-services.js';
import { metNorwayBody, type MetBody } from '../../fixtures/met-norway-answer.js';
import { MET_PATH, page, startMetNorway, type MetNorwayStandIn, type MetReaction } from '../../fixtures/met-norway-stand-in.js';
import type { WireBody } from '../../fixtures/weather-answer.js';

const START_S = Date.parse('2026-11-23T21:20:30Z') / 1000;
const MINUTE_S = 60;
const HOUR_S = 3600;
const NOWHERE = 'http://127.0.0.1:9';

const made = (nowS: number): MetBody => metNorwayBody(demoAnswerBody(DEMO_PLACE, nowS) as WireBody, { nowS });

let weather: MetNorwayStandIn;
let service: BothServices;
const modified = { atS: START_S - HOUR_S };
const wired = (options: { contact?: string; store?: Parameters<typeof bothServices>[0]['store'] } = {}): BothServices => bothServices({ startS: START_S, firstUrl: NOWHERE, secondUrl: weather.url, ...options });
const ask = (place: { latitude?: number; longitude?: number } = {}): ReturnType<BothServices['askSecond']> => service.askSecond({ ...DEMO_PLACE, ...place });
const failure = async (promise: Promise<unknown>): Promise<{ kind?: string; message: string }> => {
  const error: unknown = await promise.catch((e: unknown) => e);
  if (error instanceof Error) return error;
  throw new Error('expected a failure, got an answer');
};

beforeEach(async () => {
  modified.atS = START_S - HOUR_S;
  weather = await startMetNorway({ nowS: () => service.clock.nowS(), modifiedAtS: () => modified.atS, body: ({ query }) => ({ ...made(service.clock.nowS()), geometry: { type: 'Point', coordinates: [Number(query.get('lon')), Number(query.get('lat')), 180] } }) });
  service = wired();
});
afterEach(async () => {
  await service.close();
  await weather.close();
});

describe('what is asked of the second service', () => {
  it('is the product "complete" of the place, with at most four decimals and the height in whole metres', async () => {
    await service.askSecond({ latitude: 45.123456789, longitude: -72.987654321, elevationM: 180.4 });
    const [request] = weather.seen;
    expect(request?.path).toBe(MET_PATH);
    expect(Object.fromEntries(request?.query ?? [])).toEqual({ lat: '45.123', lon: '-72.988', altitude: '180' });
    for (const name of ['lat', 'lon']) expect(request?.query.get(name)).toMatch(/^-?\d+(\.\d{1,4})?$/);
  });

  it('leaves the height to the service where it is not known', () => {
    expect(completeRequest(completeAddress(null), { latitude: 45.1, longitude: -72.2, elevationM: null })).toBe('https://api.met.no/weatherapi/locationforecast/2.0/complete?lat=45.100&lon=-72.200');
  });

  it.each([
    ['http://127.0.0.1:8760/', `http://127.0.0.1:8760${MET_PATH}`],
    ['http://127.0.0.1:8760/weatherapi/locationforecast/2.0', `http://127.0.0.1:8760${MET_PATH}`],
    [`http://127.0.0.1:8760${MET_PATH}`, `http://127.0.0.1:8760${MET_PATH}`],
  ])('%s is asked at %s', (base, address) => {
    expect(completeAddress(base)).toBe(address);
  });

  it('says what is wrong with an address', () => {
    expect(() => completeAddress('api.met.no')).toThrow(/DUSKWARD_WEATHER2_URL: expected an address such as .*, got "api\.met\.no"/);
  });

  it('names the program and the contact, and offers gzip', async () => {
    await ask();
    expect(weather.seen[0]?.headers).toMatchObject({ 'user-agent': `duskward/0.1 (${CONTACT})`, 'accept-encoding': 'gzip' });
    expect(weather.statuses).toEqual([200]);
  });

  it('refuses a contact that no header can carry', () => {
    expect(() => wired({ contact: 'grower\u00e9@example.org' })).toThrow(/DUSKWARD_CONTACT: expected a mail or web address in plain characters/);
    expect(() => wired({ contact: 'a\r\nx-evil: 1' })).toThrow(/DUSKWARD_CONTACT/);
  });
});

describe('an answer of the second service', () => {
  it('is not asked for again before it expires', async () => {
    const first = await ask();
    service.clock.set(START_S + 30 * MINUTE_S - 1);
    const again = await ask();
    expect(weather.seen).toHaveLength(1);
    expect(again.hours).toEqual(first.hours);
    expect(again.issuedAtS).toBe(START_S);
  });

  it('is asked for with the date of the copy after that, and stands on a 304', async () => {
    const first = await ask();
    service.clock.set(START_S + 31 * MINUTE_S);
    const again = await ask();
    expect(weather.statuses).toEqual([200, 304]);
    expect(weather.seen[1]?.headers['if-modified-since']).toBe('Mon, 23 Nov 2026 20:20:30 GMT');
    expect(again.hours.airTempK).toEqual(first.hours.airTempK);
    expect(again.issuedAtS).toBe(START_S + 31 * MINUTE_S);
    // The 304 brought a new date of expiry.
    service.clock.set(START_S + 60 * MINUTE_S);
    await ask();
    expect(weather.seen).toHaveLength(2);
    expect(weather.tooEarly).toEqual([]);
  });

  it('is taken anew when there is a newer forecast', async () => {
    await ask();
    service.clock.set(START_S + HOUR_S);
    modified.atS = START_S + 45 * MINUTE_S;
    const { hours } = await ask();
    expect(weather.statuses).toEqual([200, 200]);
    expect(hours.timeS[0]).toBe(Date.parse('2026-11-23T22:00:00Z') / 1000);
  });

  it('lives through a restart with the store: no request before its expiry, the date of the copy after it', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'duskward-'));
    const path = join(folder, 'weather.sqlite');
    try {
      let store = await openSqliteStore({ path });
      await service.close();
      service = wired({ store });
      const before = await ask();
      await store.close();
      await service.close();
      store = await openSqliteStore({ path });
      service = wired({ store });
      service.clock.set(START_S + 29 * MINUTE_S);
      expect((await ask()).hours).toEqual(before.hours);
      expect(weather.seen).toHaveLength(1);
      service.clock.set(START_S + 31 * MINUTE_S);
      expect((await ask()).hours).toEqual(before.hours);
      expect(weather.statuses).toEqual([200, 304]);
      await store.close();
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });

  it('that cannot be used is not asked for again before it expires either, and then without a date', async () => {
    weather.script((response) => {
      const body = made(START_S);
      body.properties.meta.units['wind_speed'] = 'knots';
      response.writeHead(200, { 'content-type': 'application/json', expires: new Date((START_S + HOUR_S) * 1000).toUTCString(), 'last-modified': 'Mon, 23 Nov 2026 20:20:30 GMT' }).end(JSON.stringify(body));
    });
    for (let i = 0; i < 3; i += 1) expect((await failure(ask())).message).toMatch(/unit of wind_speed: expected "m\/s", got "knots"/);
    expect(weather.seen).toHaveLength(1);
    service.clock.set(START_S + HOUR_S);
    weather.script();
    await ask();
    expect(weather.seen[1]?.headers['if-modified-since']).toBeUndefined();
  });

  it('comes from the store only where the store is sound, and does without where it cannot be written', async () => {
    await ask();
    const [key, row] = [...service.rows][0] ?? [];
    if (key === undefined || row === undefined) throw new Error('expected a kept copy, got none');
    expect(key).toBe('met-norway copy 45.100,-72.200,180m');
    for (const body of ['{', 'null', '{"expiresAtS":1}']) {
      service.rows.set(key, { ...row, body });
      await ask();
    }
    expect(service.warnings).toEqual(Array(3).fill('second-weather-copy-unusable'));
    service.clock.set(START_S - 48 * HOUR_S);
    modified.atS = START_S - 49 * HOUR_S;
    await ask();
    expect(weather.statuses).toEqual([200, 200, 200, 200, 200]);
    service.rows.set = () => {
      throw new Error('disk full');
    };
    service.clock.set(START_S);
    modified.atS = START_S;
    await ask();
    expect(service.warnings.at(-1)).toBe('second-weather-copy-not-stored');
  });

  it('is warned of when its version will end, and used', async () => {
    await weather.close();
    weather = await startMetNorway({ nowS: () => service.clock.nowS(), status: 203, body: () => made(service.clock.nowS()) });
    await service.close();
    service = wired();
    expect((await ask()).hours.timeS.length).toBeGreaterThan(150);
    expect(service.warnings).toEqual(['second-weather-service-deprecated']);
  });

  it('may come without gzip', async () => {
    weather.script((response) => void response.writeHead(200, { 'content-type': 'application/geo+json' }).end(JSON.stringify(made(START_S))));
    expect((await ask()).hours.timeS.length).toBeGreaterThan(150);
  });
});

describe('when an answer expires', () => {
  const at = (text: string): string => new Date(Date.parse(text)).toUTCString();
  it.each([
    ['at its own instant', at('2026-11-23T21:52:30Z'), null, 32 * MINUTE_S],
    ['as long from now as from their date, when their clock is behind', at('2026-11-23T21:45:30Z'), at('2026-11-23T21:10:30Z'), 35 * MINUTE_S],
    ['at its own instant, when their clock is ahead', at('2026-11-23T22:20:30Z'), at('2026-11-23T21:30:30Z'), HOUR_S],
    ['in half an hour without a header', null, at('2026-11-23T21:20:30Z'), 30 * MINUTE_S],
    ['in half an hour with a header that is none', 'soon', null, 30 * MINUTE_S],
    ['in half an hour with one long past', at('2020-01-01T00:00:00Z'), null, 30 * MINUTE_S],
    ['in half an hour with one for next year', at('2027-11-23T00:00:00Z'), null, 30 * MINUTE_S],
  ])('%s', (_, expires, date, lifeS) => {
    expect(expiresAtS({ expires, date }, START_S)).toBe(START_S + lifeS);
  });
});

describe('requests to the second service', () => {
  it('go out one at a time and at most four a second, over places that are asked for at once', async () => {
    await Promise.all([1, 2, 3, 4, 5, 6].map((n) => ask({ longitude: -72 - n / 10 })));
    expect(weather.seen).toHaveLength(6);
    expect(weather.mostInFlight()).toBe(1);
    expect(service.pacedS).toEqual([0.25, 0.25, 0.25, 0.25, 0.25]);
  });

  it('follow a redirection, but not round and round', async () => {
    const onward = (location: string): MetReaction => (response) => void response.writeHead(307, { location }).end();
    const whole: MetReaction = (response) => void response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(made(START_S)));
    weather.script(onward('/elsewhere'), onward('/further'), whole);
    expect((await ask()).hours.timeS.length).toBeGreaterThan(150);
    expect(weather.seen.map(({ path }) => path)).toEqual([MET_PATH, '/elsewhere', '/further']);
    expect(weather.seen[2]?.headers['user-agent']).toContain(CONTACT);
    let turn = 0;
    weather.script((response, request) => onward(`/round/${(turn += 1)}`)(response, request));
    expect(await failure(ask({ longitude: -71 }))).toMatchObject({ kind: 'refused', message: expect.stringMatching(/got 307.*sent on to \/round\/4/) as string });
    expect(weather.seen).toHaveLength(3 + 4);
  });

  it('without a contact in them are refused, and not repeated for an hour', async () => {
    await service.close();
    service = wired({ contact: 'nobody' });
    expect(await failure(ask())).toMatchObject({ kind: 'refused', message: expect.stringMatching(/expected status 200, got 403 "403 Forbidden: identify yourself.*Check DUSKWARD_CONTACT/) as string });
    service.clock.set(START_S + HOUR_S - 1);
    expect((await failure(ask())).kind).toBe('resting');
    expect(weather.seen).toHaveLength(1);
    service.clock.set(START_S + HOUR_S);
    expect((await failure(ask())).kind).toBe('refused');
    expect(weather.seen).toHaveLength(2);
  });

  it('outside the area are refused for that place alone', async () => {
    weather.script(page(422, 'Unprocessable Entity'));
    expect(await failure(ask())).toMatchObject({ kind: 'refused', message: expect.stringMatching(/got 422 "422 Unprocessable Entity"/) as string });
    weather.script();
    await ask({ longitude: -71 });
    expect(weather.statuses).toEqual([422, 200]);
  });

  it.each([
    ['for a quarter of an hour', undefined, 15 * MINUTE_S],
    ['as long as it says', '7200', 2 * HOUR_S],
    ['for a quarter of an hour when it says less', '3', 15 * MINUTE_S],
  ])('rest after a 429 %s', async (_, retryAfter, restS) => {
    weather.script((response) => void response.writeHead(429, { 'content-type': 'text/html', ...(retryAfter === undefined ? {} : { 'retry-after': retryAfter }) }).end('<h1>Too many</h1>'));
    expect(await failure(ask())).toMatchObject({ kind: 'limited', message: expect.stringMatching(/got 429 "Too many"/) as string });
    weather.script();
    service.clock.set(START_S + restS - 1);
    expect((await failure(ask({ longitude: -71 }))).kind).toBe('resting');
    service.clock.set(START_S + restS);
    await ask({ longitude: -71 });
    expect(weather.statuses).toEqual([429, 200]);
  });

  it('rest after three failures in a row', async () => {
    weather.script(page(200, 'hotel'));
    for (let i = 0; i < 3; i += 1) expect((await failure(ask())).kind).toBe('not-json');
    expect((await failure(ask())).kind).toBe('resting');
    expect(weather.seen).toHaveLength(3);
  });
});
