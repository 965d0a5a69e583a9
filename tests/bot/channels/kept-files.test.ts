import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { keptIn } from '../../../bot/channels/console/kept-files.js';

const WORDS = { picture: (path: string): string => `picture ${path}`, document: (path: string): string => `file ${path}` };
const PNG = Buffer.from('89504e470d0a1a0a', 'hex');

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'duskward-kept-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

it('puts a picture and documents into the folder, and says where', async () => {
  const keep = keptIn(join(folder, 'new'), WORDS);
  const said = await keep({ text: 'x', picturePng: PNG.toString('base64'), documents: [{ name: 'readings.csv', text: 'Süd,-3' }, { name: 'deeds.csv', text: 'a' }] });
  const at = (name: string): string => join(folder, 'new', name);
  expect(said?.split('\n')).toEqual([`picture ${at('picture.png')}`, `file ${at('readings.csv')}`, `file ${at('deeds.csv')}`]);
  expect(readFileSync(at('picture.png'))).toEqual(PNG);
  expect(readFileSync(at('readings.csv'), 'utf8')).toBe('Süd,-3');
});

it('puts the newest in the place of the one before', async () => {
  const keep = keptIn(folder, WORDS);
  for (const text of ['old and long', 'new']) await keep({ text: 'x', documents: [{ name: 'readings.csv', text }] });
  expect(readFileSync(join(folder, 'readings.csv'), 'utf8')).toBe('new');
});

it('says nothing of a message that is words alone', async () => {
  expect(await keptIn(join(folder, 'new'), WORDS)({ text: 'x' })).toBeNull();
});
