import { describe, expect, it } from 'vitest';
import { CROP_ROWS } from '../../engine/data/crops.js';
import type { CropNumber } from '../../engine/crops/crop-row.js';
import { bibliography } from './bibliography.js';
import { citedByTest, citedInComments, citedInTexts, type Citation } from './cited-keys.js';
import { parsedModule } from './parsed-module.js';
import { modulesOf } from './project-tree.js';

const ENTRIES = bibliography();
const KEYS = new Set(ENTRIES.map(({ key }) => key));

const cropNumbers: readonly { readonly id: string; readonly number: CropNumber }[] = CROP_ROWS.flatMap(({ id, hardened, soft, chill }) =>
  [hardened?.damage, hardened?.kill, soft?.damage, soft?.kill, chill].flatMap((number) => (number ? [{ id, number }] : [])),
);

const CITATIONS: readonly Citation[] = [
  ...modulesOf('engine').flatMap(citedInComments),
  ...modulesOf('engine').filter((path) => path.startsWith('engine/data/') && !path.startsWith('engine/data/crops/')).flatMap(citedInTexts),
  ...cropNumbers.map(({ id, number }) => ({ key: number.sourceKey, where: `crop ${id}` })),
  ...modulesOf('tests').filter((path) => /^tests\/published\/.*(?:cases|\.test)\.ts$/u.test(path)).flatMap(citedByTest),
];

describe('engine/SOURCES.md', () => {
  it('has citations to check', () => {
    expect(KEYS.size).toBeGreaterThan(0);
    expect(CITATIONS.length).toBeGreaterThan(0);
  });

  it('holds every key that is cited', () => {
    expect([...new Set(CITATIONS.filter(({ key }) => !KEYS.has(key)).map(({ key, where }) => `${where} cites ${key}`))]).toEqual([]);
  });

  it('holds no key that nobody cites', () => {
    const cited = new Set(CITATIONS.map(({ key }) => key));
    // Words such as EnergyPlusEngRef have no shape of their own: for these any mention in a comment counts.
    const comments = modulesOf('engine').map((path) => parsedModule(path).text).join('\n');
    const isNamed = (key: string): boolean => /^(?:[A-Z][a-z]+){3,}$/u.test(key) && new RegExp(`(?:\\*|//).*\\b${key}\\b`, 'u').test(comments);
    expect(ENTRIES.filter(({ key }) => !cited.has(key) && !isNamed(key)).map(({ key, line }) => `engine/SOURCES.md:${line} ${key}`)).toEqual([]);
  });

  it('names each key once, with a citation', () => {
    expect(ENTRIES.map(({ key }) => key).filter((key, i, all) => all.indexOf(key) !== i)).toEqual([]);
    expect(ENTRIES.filter(({ citation }) => citation.length < 15 || !citation.endsWith('.')).map(({ key, citation }) => `${key}: ${citation}`)).toEqual([]);
  });

  it('says of every crop source what the crop table says', () => {
    const citationOf = new Map(ENTRIES.map(({ key, citation }) => [key, citation]));
    const differing = cropNumbers
      .filter(({ number }) => !citationOf.get(number.sourceKey)?.startsWith(number.source))
      .map(({ number: { sourceKey, source } }) => `${sourceKey}: table "${source}", bibliography "${citationOf.get(sourceKey) ?? 'nothing'}"`);
    expect([...new Set(differing)]).toEqual([]);
  });

  it('is in order of keys under each heading', () => {
    const offenders = ENTRIES.filter(({ key, line }, i) => {
      const before = ENTRIES[i - 1];
      return before !== undefined && before.line === line - 1 && before.key > key;
    });
    expect(offenders.map(({ key, line }) => `engine/SOURCES.md:${line} ${key}`)).toEqual([]);
  });
});
