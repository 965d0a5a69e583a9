import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PLACE, demoAnswerBody } from '../../../bot/weather/demo.js';
import { DOUBLE_WITH_HEAT } from '../../fixtures/greenhouse-files.js';
import { runScript, type ScriptEnd } from '../../fixtures/script.js';

const AT = '2026-11-25T20:00:00Z';
const AT_S = Date.parse(AT) / 1000;

let folder: string;
const path = (name: string): string => join(folder, name);

/** The program as a user runs it, with an environment of its own. */
function duskward(words: readonly string[], options: { input?: string; env?: Record<string, string> } = {}): Promise<ScriptEnd> {
  return runScript('bot/main.ts', words, { ...options, env: { DUSKWARD_DATABASE: path('talk.sqlite'), ...options.env } });
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duskward-'));
  const place = { latitude: DEMO_PLACE.latitude, longitude: DEMO_PLACE.longitude, elevationM: 180 };
  await writeFile(path('house.json'), JSON.stringify({ ...DOUBLE_WITH_HEAT, place: { latitude: place.latitude, longitude: place.longitude, elevation: 180 } }));
  await writeFile(path('weather.json'), JSON.stringify(demoAnswerBody(place, AT_S)));
  await writeFile(path('wrong.json'), JSON.stringify({ place: { latitude: 95, longitude: 0 }, size: { width: 'wide', length: 8, height: 2 }, layers: [] }));
  await writeFile(path('plan.json'), JSON.stringify([{ action: 'cover', target: 'long bed', by: AT }]));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

describe('the command line', () => {
  it('gives one advisory as data from a saved forecast', async () => {
    const { status, out } = await duskward(['tonight', '--greenhouse', path('house.json'), '--weather', path('weather.json'), '--at', AT, '--json']);
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ night: '2026-11-25', weather: { source: 'file', stale: false } });
  });

  it('simulates hour by hour with a plan and closes its energy balance', async () => {
    const words = ['simulate', '--greenhouse', path('house.json'), '--weather', path('weather.json'), '--from', AT, '--to', '2026-11-26T14:00:00Z', '--json'];
    const [open, covered] = await Promise.all([duskward(words), duskward([...words, '--plan', path('plan.json')])]);
    expect([open.status, covered.status]).toEqual([0, 0]);
    const [a, b] = [open, covered].map(({ out }) => JSON.parse(out) as { hours: { places: { place: string; c: number }[] }[]; energyBalance: { errorShare: number } });
    expect(a!.hours).toHaveLength(18);
    expect(a!.energyBalance.errorShare).toBeLessThan(0.005);
    const low = (run: typeof a, place: string): number => Math.min(...run!.hours.flatMap(({ places }) => places.filter((p) => p.place === place).map(({ c }) => c)));
    expect(low(b, 'cover')).toBeGreaterThan(low(a, 'cover') + 1);
    expect(low(b, 'inside')).toBeLessThan(low(a, 'inside'));
  });

  it('prints an example that passes its own check, and a schema', async () => {
    const example = await duskward(['greenhouse', '--example']);
    await writeFile(path('example.json'), example.out);
    expect((await duskward(['greenhouse', '--check', path('example.json')])).status).toBe(0);
    expect(JSON.parse((await duskward(['greenhouse', '--schema'])).out)).toMatchObject({ type: 'object', required: ['place', 'size', 'layers'] });
  });

  it('names every fault of a greenhouse file with an example', async () => {
    const { status, err } = await duskward(['greenhouse', '--check', path('wrong.json')]);
    expect(status).toBe(1);
    expect(err).toContain('place.latitude');
    expect(err).toContain('size.width');
    expect(err).toContain('layers');
    expect(err.match(/for example/gu)!.length).toBeGreaterThanOrEqual(3);
  });

  it('understands one message a line', async () => {
    const { status, out } = await duskward(['understand', '--units', 'F', '--at', '2026-01-15T07:30:00-05:00', '--zone', 'America/New_York'], { input: '28F inside\nwill the kale survive tonight\n' });
    expect(status).toBe(0);
    const [reading, crop] = out.trim().split('\n').map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(reading).toMatchObject({ kind: 'reading', readings: [{ c: -2.22, place: 'inside' }] });
    expect(crop).toMatchObject({ kind: 'crop', crop: 'kale' });
  });

  it('talks on the console: advisory, reading, deed, crop, good-bye', async () => {
    const input = ['low was -2C inside', 'covered the beds', 'will the kale survive tonight', 'help', 'qwertz uiop', 'bye'].join('\n');
    const { status, out } = await duskward(['run'], { input, env: { DUSKWARD_CLOCK: AT } });
    expect(status).toBe(0);
    for (const words of ['Tonight, Wed 25 Nov', 'INVENTED WEATHER', 'Noted: -2C inside', 'Kale in the north bed', 'What I can do', 'Good night.']) expect(out).toContain(words);
    expect(out.indexOf('Do\n')).toBeLessThan(out.indexOf('How cold'));
  });

  it.each([
    ['no such command', ['frost'], 'no such command: frost'],
    ['a missing option', ['tonight'], '--greenhouse is missing'],
    ['an unknown option', ['tonight', '--house', 'x'], "Unknown option '--house'"],
    ['a missing file', ['tonight', '--greenhouse', 'nowhere.json'], 'ENOENT'],
    ['a time without offset', ['tonight', '--greenhouse', 'config/demo/greenhouse.json', '--at', '2026-01-14 16:00'], 'expected an instant with offset'],
  ])('refuses %s on standard error, without a stack', async (_, words, message) => {
    const { status, out, err } = await duskward(words);
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(err).toContain(message);
    expect(err).not.toContain('at async');
  });
});
