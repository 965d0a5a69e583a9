import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../../engine/errors.js';
import { brierParts, brierScore } from '../../../engine/score/brier.js';
import { binomialCdf, coverageOf, wilsonInterval } from '../../../engine/score/coverage.js';

const stated = fc.array(fc.record({ probability: fc.double({ min: 0, max: 1, noNaN: true }), happened: fc.boolean() }), { minLength: 1, maxLength: 60 });
const edges = fc.uniqueArray(fc.double({ min: 0.01, max: 0.99, noNaN: true }), { maxLength: 4 }).map((values) => [...values].sort((a, b) => a - b));

describe('Brier score', () => {
  it('is the sum of its parts, whatever the bins', () => {
    fc.assert(fc.property(stated, edges, (forecasts, innerEdges) => {
      const { reliability, resolution, uncertainty, withinBins } = brierParts(forecasts, innerEdges);
      expect(reliability - resolution + uncertainty + withinBins).toBeCloseTo(brierScore(forecasts), 12);
      expect(Math.min(reliability, resolution, uncertainty)).toBeGreaterThanOrEqual(0);
    }));
  });

  it('refuses what is no chance, and no forecasts at all', () => {
    expect(() => brierScore([])).toThrow(RangeError);
    expect(() => brierScore([{ probability: 1.2, happened: true }])).toThrow(OutOfRangeError);
    expect(() => brierParts([], [])).toThrow(RangeError);
  });
});

describe('coverage', () => {
  it('counts readings on the edge as inside', () => {
    const found = coverageOf([{ lowK: 1, highK: 3, readingK: 1 }, { lowK: 1, highK: 3, readingK: 3 }, { lowK: 1, highK: 3, readingK: 3.1 }, { lowK: 1, highK: 3, readingK: 0 }], 0.8, 0.9);
    expect(found).toMatchObject({ inside: 2, nights: 4, share: 0.5 });
    expect(found.chanceOfSoFew).toBeCloseTo(binomialCdf(2, 4, 0.8), 12);
    expect(found.chanceOfSoFew).toBeCloseTo(0.2 ** 4 + 4 * 0.8 * 0.2 ** 3 + 6 * 0.8 ** 2 * 0.2 ** 2, 12);
  });

  it('has a range that holds the share, lies within 0 and 1, and narrows with more nights', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 300 }), fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0.5, max: 0.99, noNaN: true }), (nights, share, confidence) => {
      const inside = Math.round(share * nights);
      const { low, high } = wilsonInterval(inside, nights, confidence);
      expect(low).toBeLessThanOrEqual(inside / nights + 1e-9);
      expect(high).toBeGreaterThanOrEqual(inside / nights - 1e-9);
      expect(low).toBeGreaterThanOrEqual(-1e-9);
      expect(high).toBeLessThanOrEqual(1 + 1e-9);
      const more = wilsonInterval(4 * inside, 4 * nights, confidence);
      expect(more.high - more.low).toBeLessThan(high - low);
    }));
  });

  it('has chances that rise to one', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 120 }), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (trials, chance) => {
      const chances = Array.from({ length: trials + 1 }, (_, k) => binomialCdf(k, trials, chance));
      chances.slice(1).forEach((value, k) => expect(value).toBeGreaterThanOrEqual(chances[k]!));
      expect(chances.at(-1)).toBeCloseTo(1, 9);
    }));
  });

  it('refuses impossible counts', () => {
    expect(() => wilsonInterval(1, 0, 0.9)).toThrow(RangeError);
    expect(() => wilsonInterval(5, 4, 0.9)).toThrow(RangeError);
    expect(() => binomialCdf(1, 2, 1)).toThrow(RangeError);
  });
});
