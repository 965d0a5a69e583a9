import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runBox } from '../box/box-run.js';
import { annualMeanC, extremeHour } from '../box/box-summary.js';
import { testEachRow } from '../each-row.js';
import { tables } from './cases.js';
import { describedCase, editions, type EditionYear } from './free-float.js';

export const sources = ['ASHRAE140-2017', 'ASHRAE140-2020'] as const;

testEachRow(tables);

const descriptions = readdirSync(new URL('./', import.meta.url)).flatMap((file) => {
  const named = /^(?<name>\w+)-(?<edition>2017|2020)\.json$/u.exec(file)?.groups;
  return named ? [{ name: named['name']!, edition: Number(named['edition']) as EditionYear }] : [];
});

describe('description files', () => {
  it('are there', () => {
    expect(descriptions.length).toBeGreaterThan(0);
  });

  it.each(descriptions)('$name of $edition is whole and named for its case', ({ name, edition }) => {
    expect(describedCase(name, edition).name).toBe(`${name}, edition ${edition}`);
  });
});

/** A direction needs no fine step. */
const DIRECTION_STEP_S = 3600;

// Cases for which no results lie beside the project: only the direction is known.
describe.skipIf(editions.length === 0).each(editions.map((edition) => [edition.source, edition] as const))('%s, cases without results here', (_source, edition) => {
  it.each([['650FF', '600FF'], ['950FF', '900FF']] as const)('%s: a fan by night makes the year colder than %s inside', (vented, closed) => {
    const withFan = runBox(describedCase(vented, edition.edition), edition.weather, { stepS: DIRECTION_STEP_S }).hourlyMeanC;
    const without = edition.run(closed).hourlyMeanC;
    expect(withFan[extremeHour(withFan, -1)]!).toBeLessThan(without[extremeHour(without, -1)]!);
    expect(annualMeanC(withFan)).toBeLessThan(annualMeanC(without));
    // By night the fan carries the outside in: at hour 6 the box is near it.
    const hour = edition.day.first + 5;
    expect(Math.abs(withFan[hour]! - edition.weather.dryBulbC[hour]!)).toBeLessThan(Math.abs(without[hour]! - edition.weather.dryBulbC[hour]!));
  });
});
