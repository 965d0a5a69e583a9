import { describe, expect, it } from 'vitest';
import type { CropNumber, CropRow } from '../../../engine/crops/crop-row.js';
import { hasDifferentOrgans, judgedAt, REFERS_TO_TEXTS } from '../../../engine/crops/judged-at.js';
import { CROP_ROWS } from '../../../engine/data/crops.js';
import { published } from '../../../engine/data/crops/sources.js';

const numbersOf = (row: CropRow): CropNumber[] =>
  [row.hardened?.damage, row.hardened?.kill, row.soft?.damage, row.soft?.kill, row.chill].filter((value) => value !== null && value !== undefined);
const allNumbers = CROP_ROWS.flatMap(numbersOf);
const ids = (rows: readonly CropRow[]): string[] => rows.map((row) => row.id).sort();

// Sums of the 115, 114, 97, 97 and 19 printed values, so that no single digit changes unseen.
const SUMS_C = { hardenedDamage: -555.7, hardenedKill: -1111.3, softDamage: -162.2, softKill: -409.0, chill: 197.3 };

describe('crop table', () => {
  it('holds 134 rows with different ids', () => {
    expect(CROP_ROWS).toHaveLength(134);
    expect(new Set(ids(CROP_ROWS)).size).toBe(134);
  });

  it('holds 442 numbers: 163 published, 54 secondary, 225 from memory', () => {
    const count = (grade: string): number => allNumbers.filter((value) => value.grade === grade).length;
    expect([allNumbers.length, count('published'), count('secondary'), count('from memory')]).toEqual([442, 163, 54, 225]);
  });

  it('sums to the printed values, field by field', () => {
    const sumC = (values: readonly (CropNumber | null | undefined)[]): number =>
      Number(values.reduce((sum, value) => sum + (value?.valueC ?? 0), 0).toFixed(1));
    expect(sumC(CROP_ROWS.map((row) => row.hardened?.damage))).toBe(SUMS_C.hardenedDamage);
    expect(sumC(CROP_ROWS.map((row) => row.hardened?.kill))).toBe(SUMS_C.hardenedKill);
    expect(sumC(CROP_ROWS.map((row) => row.soft?.damage))).toBe(SUMS_C.softDamage);
    expect(sumC(CROP_ROWS.map((row) => row.soft?.kill))).toBe(SUMS_C.softKill);
    expect(sumC(CROP_ROWS.map((row) => row.chill))).toBe(SUMS_C.chill);
  });

  it('gives every number a source and a plausible temperature', () => {
    for (const value of allNumbers) {
      expect(value.source).not.toBe('');
      expect(value.valueC).toBeGreaterThanOrEqual(-30);
      expect(value.valueC).toBeLessThanOrEqual(13);
    }
  });

  it('does not let a number be written without a source, or graded above it', () => {
    // @ts-expect-error a number needs its source
    const unsourced: CropNumber = { valueC: -3, grade: 'published' };
    // @ts-expect-error what is recalled is not published
    const overgraded = published(-3, 'ProjectEstimate');
    expect([unsourced.source, overgraded.source]).toEqual([undefined, undefined]);
  });

  it('kills no warmer than it damages, and hardens to no less than the soft state', () => {
    for (const row of CROP_ROWS) {
      for (const pair of [row.hardened, row.soft]) {
        if (pair?.kill) expect(pair.kill.valueC, row.id).toBeLessThan(pair.damage.valueC);
      }
      if (row.hardened === null || row.soft === null) continue;
      expect(row.hardened.damage.valueC, row.id).toBeLessThan(row.soft.damage.valueC);
      if (row.hardened.kill && row.soft.kill) expect(row.hardened.kill.valueC, row.id).toBeLessThan(row.soft.kill.valueC);
    }
  });

  it('lacks a kill temperature for fava pods alone', () => {
    expect(ids(CROP_ROWS.filter((row) => [row.hardened, row.soft].some((pair) => pair?.kill === null)))).toEqual(['fava_pods']);
  });

  it('hardens every row with two pairs that is not tender, and no other', () => {
    const canHarden = CROP_ROWS.filter((row) => row.hardened !== null && row.soft !== null && row.hardinessClass !== 'tender');
    expect(ids(CROP_ROWS.filter((row) => row.hardening !== 'none'))).toEqual(ids(canHarden));
    expect(ids(CROP_ROWS.filter((row) => row.hardening === 'slow'))).toEqual([
      'chives', 'fig', 'garlic', 'leek_summer', 'leek_winter', 'mandarin', 'mint', 'onion', 'oregano', 'rosemary', 'sage', 'satsuma',
      'scallion', 'seedling_allium', 'sorrel', 'strawberry_crown', 'sweet_william', 'thyme',
    ]);
  });

  it('harvests early what freezing ruins and leaves what stands', () => {
    const early = new Set(ids(CROP_ROWS.filter((row) => row.harvestEarly)));
    for (const id of ['basil', 'cucumber', 'squash_summer', 'squash_winter', 'tomato', 'pepper', 'bean', 'pak_choi', 'napa', 'lettuce_iceberg', 'broccoli_head', 'cauliflower_curd', 'fennel', 'citrus_fruit']) expect(early, id).toContain(id);
    for (const id of ['kale_curly', 'collards', 'spinach', 'mache', 'leek_winter', 'parsnip', 'carrot', 'brussels_sprouts']) expect(early, id).not.toContain(id);
  });
});

describe('where a crop is judged', () => {
  it('reads every text of the table, and lists none that no row has', () => {
    expect(new Set(CROP_ROWS.map((row) => row.refersTo))).toEqual(new Set(REFERS_TO_TEXTS));
  });

  it.each([
    ['kale_curly', 'air-at-plant', 'air-at-plant'],
    ['fava_pods', 'air-at-plant', 'air-at-plant'],
    ['spinach', 'leaf', 'leaf'],
    ['cauliflower_curd', 'leaf', 'leaf'],
    ['apple_full_bloom', 'leaf', 'leaf'],
    ['potted_roots', 'soil', 'soil'],
    ['strawberry_crown', 'soil', 'soil'],
    ['parsnip', 'leaf', 'soil'],
    ['mint', 'leaf', 'soil'],
  ])('%s: damage by %s, kill by %s', (id, damage, kill) => {
    const row = CROP_ROWS.find((one) => one.id === id)!;
    expect(judgedAt(row)).toEqual({ damage, kill });
  });

  it('sees different organs in six crops', () => {
    expect(ids(CROP_ROWS.filter(hasDifferentOrgans))).toEqual(['chives', 'mint', 'oregano', 'parsnip', 'sage', 'thyme']);
  });
});
