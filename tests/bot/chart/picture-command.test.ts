import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoAnswerBody } from '../../../bot/weather/demo.js';
import { BARE_TUNNEL } from '../../fixtures/greenhouse-files.js';
import { runScript, type ScriptEnd } from '../../fixtures/script.js';

const AT = '2026-11-25T20:00:00Z';
const PLACE = { latitude: 45.1, longitude: -72.2 };

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duskward-picture-'));
  await writeFile(join(folder, 'house.json'), JSON.stringify({ ...BARE_TUNNEL, place: { ...PLACE, elevation: 180 } }));
  await writeFile(join(folder, 'weather.json'), JSON.stringify(demoAnswerBody({ ...PLACE, elevationM: 180 }, Date.parse(AT) / 1000)));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** `tonight` as a user runs it, with a picture. */
const tonightWithPicture = (file: string): Promise<ScriptEnd> =>
  runScript('bot/main.ts', ['tonight', '--greenhouse', join(folder, 'house.json'), '--weather', join(folder, 'weather.json'), '--at', AT, '--picture', file]);

describe('tonight --picture', () => {
  it('writes the picture beside the words, and ends', async () => {
    const { status, out } = await tonightWithPicture(join(folder, 'night.png'));
    expect(status).toBe(0);
    expect(out).toContain('Tonight, Wed 25 Nov');
    expect(PNG.sync.read(await readFile(join(folder, 'night.png'))).width).toBe(1080);
  });

  it('says so when the file cannot be written', async () => {
    const { status, err } = await tonightWithPicture(join(folder, 'nowhere', 'night.png'));
    expect(status).toBe(1);
    expect(err).toContain('ENOENT');
    expect(err).not.toContain('at async');
  });
});
