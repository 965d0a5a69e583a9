import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { csvText } from '../../../bot/text/csv.js';
import { outsideGsm } from '../text/gsm.js';
import { HOUSE, readingRig, type ReadingRig } from '../reading/reading-rig.js';

const BOM = '\uFEFF';

let rig: ReadingRig;
afterEach(() => rig.close());

/** Lines of the file of that name that was answered with. */
function linesOf(name: string): readonly string[] {
  const text = rig.answered().flatMap(({ documents = [] }) => documents).find((document) => document.name === name)?.text;
  if (text === undefined) throw new Error(`expected a file ${name}`);
  expect(text.startsWith(BOM)).toBe(true);
  return text.slice(BOM.length).split('\r\n').slice(0, -1);
}
const names = (): readonly string[] => rig.answered().flatMap(({ documents = [] }) => documents.map(({ name }) => name));

describe('what is kept, for somebody who uses Fahrenheit', () => {
  beforeEach(async () => {
    rig = await readingRig();
    await rig.forecasts('2026-01-13', { inside: { lowC: -2 }, outside: { lowC: -10, halfC: 3 } });
    await rig.says('low was 25F, "cold", inside', '2026-01-14T08:00');
    await rig.says('no, 27F', '2026-01-14T08:05');
    await rig.says('covered north', '2026-01-14T16:30');
  });

  it('comes as files, and a word on what is in them', async () => {
    const said = await rig.says('export', '2026-01-15T09:00');
    expect(said).toContain('1 forecast');
    expect(said).toContain('2 readings');
    expect(outsideGsm(said)).toEqual([]);
    expect(names()).toEqual(['duskward-readings.csv', 'duskward-deeds.csv', 'duskward-forecasts.csv']);
  });

  it('has every reading with what became of it, in both units, on the clock of the place', async () => {
    await rig.memory.withdrawReading(2, Date.parse('2026-01-14T08:10:00-05:00') / 1000);
    await rig.says('export', '2026-01-15T09:00');
    const [header, wrong, taken] = linesOf('duskward-readings.csv');
    expect(header?.split(',')).toEqual(expect.arrayContaining(['received (ISO 8601)', 'temperature (C)', 'temperature (F)']));
    // (25 - 32) / 1.8 and (27 - 32) / 1.8.
    expect(wrong).toBe('1,2026-01-14T08:00:00-05:00,2026-01-14T08:00:00-05:00,2026-01-13,inside,,low,-3.89,25,good,2,,"low was 25F, ""cold"", inside"');
    expect(taken).toBe('2,2026-01-14T08:05:00-05:00,2026-01-14T08:00:00-05:00,2026-01-13,inside,,low,-2.78,27,good,,2026-01-14T08:10:00-05:00,"no, 27F"');
  });

  it('has the deeds and a line for each place of each forecast', async () => {
    await rig.says('export', '2026-01-15T09:00');
    expect(linesOf('duskward-deeds.csv')[1]).toBe('2026-01-14T16:30:00-05:00,2026-01-14,cover,north,,,yes,covered north');
    const forecasts = linesOf('duskward-forecasts.csv');
    expect(forecasts).toHaveLength(3);
    expect(forecasts[0]).toContain('1 in 10 colder (C),1 in 10 colder (F)');
    // -2, -4, -2, 0 degrees C are 28.4, 24.8, 28.4, 32 degrees F.
    expect(forecasts[1]).toContain(',inside,,2026-01-13T16:00:00-05:00,-2,28.4,-4,24.8,-2,28.4,0,32');
  });
});

describe('what is kept, for somebody who uses Celsius', () => {
  it('has one column for each temperature', async () => {
    rig = await readingRig({ ...HOUSE, grower: { units: 'C' } });
    await rig.says('-3 inside', '2026-01-14T08:00');
    await rig.says('export', '2026-01-14T09:00');
    expect(linesOf('duskward-readings.csv')[0]).not.toContain('(F)');
  });

  it('says so when there is nothing', async () => {
    rig = await readingRig();
    expect(await rig.says('export')).toContain('nothing to keep yet');
    expect(names()).toEqual([]);
  });

  it('has all forecasts of a winter, each once', async () => {
    rig = await readingRig({ ...HOUSE, grower: { units: 'C' } });
    const nights = Array.from({ length: 120 }, (_, n) => new Date(Date.UTC(2025, 9, 1 + n)).toISOString().slice(0, 10));
    for (const night of nights) await rig.forecasts(night, { inside: { lowC: 1 } });
    expect(await rig.says('export', '2026-03-01T09:00')).toContain('120 forecasts');
    expect(linesOf('duskward-forecasts.csv').slice(1).map((line) => line.split(',')[1])).toEqual(nights);
  });
});

describe('a table', () => {
  it('lets no words of a grower become a formula, and leaves numbers as they are', () => {
    expect(csvText(['words', 'low (C)'], [['=1+1', -3.5], ['-2 in the tunnel', null]])).toBe(`${BOM}words,low (C)\r\n'=1+1,-3.5\r\n'-2 in the tunnel,\r\n`);
  });
});
