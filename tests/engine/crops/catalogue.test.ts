import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classCrop, cropById, cropFamilies, cropFamilyOf, cropRows, findCrop, normaliseCropWords } from '../../../engine/crops/catalogue.js';

const idOf = (words: string): string | undefined => findCrop(words)?.row.id;

describe('finding a crop', () => {
  it('finds every row by its id, its common name and each alias', () => {
    for (const row of cropRows) {
      for (const words of [row.id, row.commonName, ...row.aliases]) expect(idOf(words), words).toBe(row.id);
    }
  });

  it('gives no name to two rows, plurals and hyphens aside', () => {
    const owner = new Map<string, string>();
    for (const row of cropRows) {
      for (const words of [row.commonName, ...row.aliases]) {
        const plain = normaliseCropWords(words);
        expect(owner.get(plain) ?? row.id, words).toBe(row.id);
        owner.set(plain, row.id);
      }
    }
  });

  it.each([
    ['Kale', 'kale_curly'],
    ['  BABY   bok-choy ', 'pak_choi'],
    ['tomatoes', 'tomato'],
    ['Miner’s lettuce', 'claytonia'],
    ['mâche', 'mache'],
    ['strawberries', 'strawberry_crown'],
    ['radishes', 'radish'],
    ['snap peas', 'pea'],
    ['brussel-sprout', 'brussels_sprouts'],
    ['asian green', 'mizuna'],
    ['kale_lacinato', 'kale_lacinato'],
  ])('%s is %s', (words, id) => {
    expect(idOf(words)).toBe(id);
  });

  it('knows nothing of what is not in the table', () => {
    for (const words of ['', '   ', '!?', 'dragonfruit', 'kalee', 'constructor', '__proto__']) expect(findCrop(words), words).toBeNull();
    expect(cropById('dragonfruit')).toBeNull();
    expect(cropFamilyOf('dragonfruit')).toBeNull();
  });

  it('says which family a plain name may mean, and none where the kind was named', () => {
    expect(findCrop('lettuces')?.familyMeant?.memberIds).toContain('lettuce_romaine');
    expect(findCrop('romaine')?.familyMeant).toBeNull();
    expect(cropFamilyOf('lettuce_romaine')?.name).toBe('lettuce');
  });

  it('takes any text without throwing, and any case of it alike', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme' }), (words) => {
      const plain = normaliseCropWords(words);
      expect(normaliseCropWords(`  ${words} `)).toBe(plain);
      findCrop(words);
    }));
  });
});

describe('families', () => {
  it('have members that exist, belong to no other family, and include the default', () => {
    const all = cropFamilies.flatMap((family) => family.memberIds);
    expect(new Set(all).size).toBe(all.length);
    for (const family of cropFamilies) {
      expect(family.memberIds).toContain(family.defaultId);
      for (const id of family.memberIds) expect(cropById(id), id).not.toBeNull();
      expect(idOf(family.name), family.name).toBe(family.defaultId);
    }
  });
});

describe('an unknown crop', () => {
  it.each([
    ['tender', 'class_tender'],
    ['half-hardy', 'class_half_hardy'],
    ['hardy', 'class_hardy'],
    ['very hardy', 'class_very_hardy'],
  ] as const)('%s falls to %s and says so', (hardinessClass, id) => {
    expect(classCrop(hardinessClass)).toMatchObject({ row: { id, hardinessClass }, isClassFallback: true });
  });

  it('is told from a known one however it was found', () => {
    expect(findCrop('brassicas')?.isClassFallback).toBe(true);
    expect(findCrop('kale')?.isClassFallback).toBe(false);
  });
});
