import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLE_BOX } from './example-box.js';
import { evenYearCsv } from './invented-weather.js';
import { runScript, type ScriptEnd } from '../../fixtures/script.js';

const OUTSIDE_C = 5;

let folder: string;
const path = (name: string): string => join(folder, name);

const validate = (words: readonly string[]): Promise<ScriptEnd> => runScript('tests/published/validate.ts', words);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duskward-box-'));
  await writeFile(path('box.json'), JSON.stringify({ ...EXAMPLE_BOX, gains: { convectiveW: 0, radiativeW: 0 } }));
  await writeFile(path('wrong.json'), JSON.stringify({ ...EXAMPLE_BOX, roof: 'straw' }));
  await writeFile(path('text.json'), 'a box of boards');
  await writeFile(path('weather.csv'), evenYearCsv(OUTSIDE_C));
  await writeFile(path('short.csv'), evenYearCsv(OUTSIDE_C).split('\n').slice(0, 50).join('\n'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

describe('validate --box', () => {
  it('gives year and day as data', async () => {
    const { status, out } = await validate(['--box', path('box.json'), '--weather', path('weather.csv'), '--day', '01-04', '--json']);
    expect(status).toBe(0);
    const summary = JSON.parse(out) as { annual: { minC: number; meanC: number; maxC: number }; day: { date: string; hourlyMeanC: number[] } };
    // Even weather, no gains: the box is as warm as the outside all year.
    expect(summary.annual).toMatchObject({ minC: OUTSIDE_C, meanC: OUTSIDE_C, maxC: OUTSIDE_C });
    expect(summary.day).toEqual({ date: '01-04', hourlyMeanC: Array.from({ length: 24 }, () => OUTSIDE_C) });
  });

  it.each([
    ['a description that does not hold together', ['--box', 'wrong.json', '--weather', 'weather.csv'], 1, 'roof: no construction is called "straw"'],
    ['a description that is no JSON', ['--box', 'text.json', '--weather', 'weather.csv'], 1, 'not JSON'],
    ['a missing file', ['--box', 'none.json', '--weather', 'weather.csv'], 1, 'cannot read'],
    ['half a weather file', ['--box', 'box.json', '--weather', 'short.csv'], 1, '49 hours; expected the 8760'],
    ['no weather', ['--box', 'box.json'], 2, '--weather is missing'],
    ['no description', ['--weather', 'weather.csv'], 2, '--box is missing'],
  ])('fails with a reason for %s', async (_what, words, status, reason) => {
    const outcome = await validate(words.map((word) => (word.startsWith('--') ? word : path(word))));
    expect(outcome.status).toBe(status);
    expect(outcome.err).toContain(reason);
    expect(outcome.out).toBe('');
  });

  it('fails with a reason for a day that does not exist', async () => {
    const outcome = await validate(['--box', path('box.json'), '--weather', path('weather.csv'), '--day', '02-30']);
    expect(outcome.status).toBe(1);
    expect(outcome.err).toContain('--day 02-30: no such day');
  });
});
