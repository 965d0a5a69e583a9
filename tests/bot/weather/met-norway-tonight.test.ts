import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Advisory } from '../../../bot/features/evening/advisory.js';
import { SECOND_WEATHER_ATTRIBUTION } from '../../../bot/text/attribution.js';
import { HELP } from '../../../bot/text/reply-text.js';
import { NO_SECOND_WEATHER } from '../../../bot/text/second-weather-text.js';
import { DEMO_PLACE } from '../../../bot/weather/demo.js';
import { BARE_TUNNEL } from '../../fixtures/greenhouse-files.js';
import * as hostile from '../../fixtures/hostile-weather.js';
import { metNorwayBody } from '../../fixtures/met-norway-answer.js';
import { page, startMetNorway, type MetNorwayStandIn } from '../../fixtures/met-norway-stand-in.js';
import { forecastBody } from '../../fixtures/weather-answer.js';
import { outsideGsm } from '../text/gsm.js';
import { runScript, type ScriptEnd } from '../../fixtures/script.js';

const AT = '2026-11-25T20:00:00Z';
const AT_S = Date.parse(AT) / 1000;
const CONTACT = { DUSKWARD_CONTACT: 'grower@example.org' };
const PLACE = { latitude: DEMO_PLACE.latitude, longitude: DEMO_PLACE.longitude };

let folder: string;
let first: hostile.HostileWeather;
let second: MetNorwayStandIn;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duskward-'));
  await writeFile(join(folder, 'house.json'), JSON.stringify({ ...BARE_TUNNEL, place: { ...PLACE, elevation: 180 } }));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});
beforeEach(async () => {
  first = await hostile.startHostileWeather({ nowS: () => AT_S });
  second = await startMetNorway({ nowS: () => AT_S, body: () => metNorwayBody(forecastBody({ nowS: AT_S, ...PLACE }), { nowS: AT_S }) });
});
afterEach(async () => {
  await first.close();
  await second.close();
});

/** The program as a user runs it, with both services on loopback. */
function duskward(words: readonly string[], env: Readonly<Record<string, string>>, input = ''): Promise<ScriptEnd> {
  const services = { DUSKWARD_WEATHER_URL: first.url, DUSKWARD_WEATHER2_URL: second.url, DUSKWARD_DATABASE: join(folder, 'talk.sqlite') };
  return runScript('bot/main.ts', words, { env: { ...services, ...env }, input });
}
const tonight = (env: Readonly<Record<string, string>>, ...more: string[]) => duskward(['tonight', '--greenhouse', join(folder, 'house.json'), '--at', AT, ...more], env);

describe('tonight, with two services', () => {
  it('stands on the first when it answers, and does not ask the second', async () => {
    const { status, out, err } = await tonight(CONTACT, '--json');
    expect([status, err]).toEqual([0, '']);
    expect((JSON.parse(out) as Advisory).weather).toMatchObject({ source: 'open-meteo', stale: false });
    expect(second.seen).toEqual([]);
  });

  // Every other kind of failure: met-norway-fallback.test.ts.
  it.each([
    { what: 'a login page', reaction: hostile.text(200, 'text/html', '<html>Log in</html>'), words: 'sent a web page instead of weather' },
    { what: 'an outage', reaction: hostile.error(503, 'The service is overloaded'), words: 'is out of order' },
  ])('stands on the second after $what, and says so with its licence', async ({ reaction, words }) => {
    first.script('/v1/forecast', reaction);
    const { status, out } = await tonight(CONTACT);
    expect(status).toBe(0);
    expect(out).toContain(`The first weather service ${words}; this stands on the second one`);
    expect(out).toContain('Weather data from MET Norway (met.no), CC BY 4.0.');
    expect(out).toContain('Only 0 hours of past weather were known');
    expect(second.statuses).toEqual([200]);
    expect(second.seen[0]?.headers['user-agent']).toBe('duskward/0.1 (grower@example.org)');
  });

  it('says what was tried when neither answers', async () => {
    first.script('/v1/forecast', hostile.error(400, 'no'));
    second.script(page(422, 'Unprocessable Entity'));
    const { status, out, err } = await tonight(CONTACT);
    expect([status, out]).toEqual([1, '']);
    expect(err).toMatch(/No usable weather .*got 400 "no".*Asked the second: second weather service: expected status 200, got 422/);
  });
});

it('the licence of the second service stands in the help, in plain characters', () => {
  expect(HELP).toContain('MET Norway (https://api.met.no/), CC BY 4.0');
  expect(outsideGsm(SECOND_WEATHER_ATTRIBUTION + NO_SECOND_WEATHER)).toEqual([]);
});

describe('without a contact', () => {
  it('tonight says on standard error that there is no second service, and does not ask it', async () => {
    const well = await tonight({});
    expect(well.status).toBe(0);
    expect(well.err.trim().startsWith(NO_SECOND_WEATHER)).toBe(true);
    first.script('/v1/forecast', hostile.error(400, 'no'));
    const ill = await tonight({});
    expect(ill.status).toBe(1);
    expect(ill.err).toContain(NO_SECOND_WEATHER);
    expect(second.seen).toEqual([]);
  });

  it('run warns in its log, with a contact it does not', async () => {
    const run = (env: Readonly<Record<string, string>>) => duskward(['run'], { DUSKWARD_GREENHOUSE: join(folder, 'house.json'), DUSKWARD_CLOCK: AT, ...env }, 'bye\n');
    const without = await run({});
    expect(without.status).toBe(0);
    expect(without.err).toContain('no second weather service: DUSKWARD_CONTACT is not set');
    expect((await run(CONTACT)).err).not.toContain('no second weather service');
  });
});
