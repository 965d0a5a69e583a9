import { describe, expect, it } from 'vitest';
import { rangeRecord, type SaidAndRead } from '../../../engine/index.js';

const night = (readingK: number, middleK = 270): SaidAndRead => ({ middleK, q10K: middleK - 2, q90K: middleK + 2, readingK });
const many = (count: number, readingK: number): readonly SaidAndRead[] => Array.from({ length: count }, () => night(readingK));

describe('the record of stated ranges', () => {
  it('is none before the first night', () => {
    expect(rangeRecord([])).toBeNull();
  });

  it('counts, and says which way the middle leans: above zero too warm was said', () => {
    const found = rangeRecord([night(269), night(270.5), night(267)])!;
    expect(found.coverage).toMatchObject({ inside: 2, nights: 3 });
    expect(found.meanMissK).toBeCloseTo((1 + 0.5 + 3) / 3, 12);
    expect(found.lean!.meanK).toBeCloseTo((1 - 0.5 + 3) / 3, 12);
  });

  it('has no lean of a single night', () => {
    expect(rangeRecord([night(269)])!.lean).toBeNull();
  });

  it('widens the lean as nights that go together ask', () => {
    // Thirty misses of one degree either way: their sd is sqrt(30/29). Student's t at 0.95 with 29 degrees of freedom is 1.6991 (printed tables);
    // the standard error of a mean over an autoregression of 0.3 is 0.2488 sd for thirty nights (decisions reference 4.1).
    const found = rangeRecord([...many(15, 269), ...many(15, 271)])!;
    expect(found.lean!.meanK).toBeCloseTo(0, 12);
    expect(found.lean!.highK).toBeCloseTo(1.6991 * 0.2488 * Math.sqrt(30 / 29), 3);
    expect(found.lean!.lowK).toBeCloseTo(-found.lean!.highK, 12);
  });

  it('tells ranges that are too narrow, and too wide, by how unlikely the count would be', () => {
    const narrow = rangeRecord([...many(5, 270), ...many(5, 280)])!;
    expect(narrow.coverage.chanceOfSoFew).toBeLessThan(0.05);
    // All of fourteen: 0.8 to the fourteenth.
    const wide = rangeRecord(many(14, 270))!;
    expect(wide.chanceOfSoMany).toBeCloseTo(0.8 ** 14, 12);
    expect(wide.coverage.chanceOfSoFew).toBeCloseTo(1, 12);
    expect(rangeRecord(many(3, 280))!.chanceOfSoMany).toBe(1);
  });
});
