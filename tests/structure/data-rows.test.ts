import { describe, expect, it } from 'vitest';
import { bibliography } from './bibliography.js';
import { modulesOf, urlOf } from './project-tree.js';

/** Numbers that stand in a row beside sourced ones and belong to them. */
const OF_THE_ROW: Readonly<Record<string, string>> = {
  durationMin: 'how long the temperatures of the same row were held; part of what their source says',
};
/** How a source says that a number is ours. */
const OURS = /from memory|recalled|prior of this project|project estimate|definition/iu;

interface Row {
  readonly where: string;
  readonly source: unknown;
}

/** Every number in a value with the nearest `source` above it. */
function numbersIn(value: unknown, row: Row): readonly Row[] {
  if (typeof value === 'number') return [row];
  if (typeof value !== 'object' || value === null) return [];
  const source = 'source' in value ? value.source : row.source;
  const nameOf = (key: string, inner: unknown): string => (Array.isArray(value) && typeof inner === 'object' && inner !== null && 'id' in inner ? String(inner.id) : key);
  return Object.entries(value).flatMap(([key, inner]: [string, unknown]) => (key in OF_THE_ROW ? [] : numbersIn(inner, { where: `${row.where}.${nameOf(key, inner)}`, source })));
}

const TABLES = modulesOf('engine').filter((path) => path.startsWith('engine/data/'));
const numbers: Row[] = [];
for (const path of TABLES) {
  const module = (await import(urlOf(path).href)) as Readonly<Record<string, unknown>>;
  for (const [name, table] of Object.entries(module)) numbers.push(...numbersIn(table, { where: `${path} ${name}`, source: undefined }));
}

describe('tables of data', () => {
  it('hold numbers', () => {
    expect(TABLES.length).toBeGreaterThan(0);
    expect(numbers.length).toBeGreaterThan(0);
  });

  it('give a source for every number', () => {
    const offenders = numbers.filter(({ source }) => typeof source !== 'string' || source.trim() === '');
    expect([...new Set(offenders.map(({ where }) => where))]).toEqual([]);
  });

  it('name a key of the bibliography, or say that the number is ours', () => {
    const entries = bibliography();
    const known = (source: string): boolean => OURS.test(source) || entries.some(({ key, citation }) => new RegExp(`(?<![\\w-])${key}(?![\\w-])`, 'u').test(source) || citation.startsWith(source));
    const offenders = numbers.filter(({ source }) => typeof source === 'string' && !known(source));
    expect([...new Set(offenders.map(({ where, source }) => `${where}: ${String(source)}`))]).toEqual([]);
  });
});
