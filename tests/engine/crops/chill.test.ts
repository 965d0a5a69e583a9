import { describe, expect, it } from 'vitest';
import { cropById, cropRows } from '../../../engine/crops/catalogue.js';
import { chillVerdict } from '../../../engine/crops/chill.js';
import { OutOfRangeError } from '../../../engine/errors.js';
import { celsiusToKelvin, SECONDS_PER_HOUR } from '../../../engine/units.js';
import { hoursK } from './histories.js';

const night = (id: string, plantTempK: readonly number[]) => chillVerdict({ row: cropById(id)!, plantTempK, stepS: SECONDS_PER_HOUR });

describe('chill', () => {
  it('counts the hours and the depth below the threshold', () => {
    const verdict = night('basil', hoursK([4, 12], [6, 8], [2, 10]));
    expect(verdict).toMatchObject({ kind: 'chilled', thresholdK: celsiusToKelvin(10), grade: 'published', timeBelowS: 6 * SECONDS_PER_HOUR, timeFrozenS: 0 });
    if (verdict.kind === 'chilled') expect(verdict.exposureKS).toBeCloseTo(6 * 2 * SECONDS_PER_HOUR, 6);
  });

  it('tells time at or below freezing apart', () => {
    expect(night('tomato', hoursK([3, 5], [2, -1]))).toMatchObject({ kind: 'chilled', timeBelowS: 5 * SECONDS_PER_HOUR, timeFrozenS: 2 * SECONDS_PER_HOUR, lowestK: celsiusToKelvin(-1) });
  });

  it('is none at the threshold itself', () => {
    expect(night('cucumber', hoursK([8, 12.8]))).toMatchObject({ kind: 'no-chill', timeBelowS: 0, exposureKS: 0 });
  });

  it('says nothing of growing plants from figures for stored produce', () => {
    for (const id of ['bean', 'lemon', 'orange']) expect(night(id, hoursK([8, 2]))).toEqual({ kind: 'not-known', reason: 'stored-produce-only' });
  });

  it('does not take a tender crop without a figure for one that stands the cold', () => {
    expect(night('potato', hoursK([8, 2]))).toEqual({ kind: 'not-known', reason: 'no-figure' });
    expect(night('kale_curly', hoursK([8, 2]))).toEqual({ kind: 'not-chill-sensitive' });
  });

  it('answers for every row', () => {
    for (const row of cropRows) expect(night(row.id, hoursK([1, 5])).kind).toMatch(/^(?:not-chill-sensitive|not-known|chilled|no-chill)$/);
  });

  it('refuses an empty night', () => {
    expect(() => night('basil', [])).toThrow(OutOfRangeError);
  });
});
