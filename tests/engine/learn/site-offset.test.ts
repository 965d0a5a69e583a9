import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offsetAfterReading, SITE_OFFSET_NOISE, steadyGain, UNKNOWN_SITE_OFFSET, type SiteOffset } from '../../../engine/learn/site-offset.js';

const missK = fc.double({ min: -8, max: 8, noNaN: true });
const days = fc.integer({ min: 0, max: 40 });

describe('offset of a site', () => {
  it('moves towards each reading without passing it, and is never surer than no reading would leave it', () => {
    fc.assert(fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.double({ min: 0, max: 9, noNaN: true }), missK, days, (offsetK, varianceK2, miss, since) => {
      const after = offsetAfterReading({ offsetK, varianceK2 }, { missK: miss, days: since });
      expect(after.gain).toBeGreaterThanOrEqual(0);
      expect(after.gain).toBeLessThan(1);
      expect(Math.abs(miss - after.offsetK)).toBeLessThanOrEqual(Math.abs(miss - offsetK) + 1e-12);
      expect(after.varianceK2).toBeLessThanOrEqual(varianceK2 + SITE_OFFSET_NOISE.driftK2PerDay * since + 1e-12);
      expect(after.varianceK2).toBeLessThanOrEqual(SITE_OFFSET_NOISE.readingK2);
    }));
  });

  it('without drift is the mean of the readings, weighted with the start', () => {
    fc.assert(fc.property(fc.array(missK, { minLength: 1, maxLength: 20 }), (misses) => {
      const noise = { driftK2PerDay: 0, readingK2: 2.25 };
      const found = misses.reduce<SiteOffset>((state, miss) => offsetAfterReading(state, { missK: miss, days: 1 }, noise), UNKNOWN_SITE_OFFSET);
      const precision = 1 / UNKNOWN_SITE_OFFSET.varianceK2 + misses.length / noise.readingK2;
      expect(found.offsetK).toBeCloseTo(misses.reduce((sum, miss) => sum + miss, 0) / noise.readingK2 / precision, 9);
      expect(found.varianceK2).toBeCloseTo(1 / precision, 9);
    }));
  });

  it('believes the first reading after a gap more than one after a night', () => {
    const known = { offsetK: 1, varianceK2: 0.5 };
    expect(offsetAfterReading(known, { missK: 3, days: 20 }).gain).toBeGreaterThan(offsetAfterReading(known, { missK: 3, days: 1 }).gain);
  });

  it('settles to the steady gain', () => {
    fc.assert(fc.property(fc.double({ min: 0.005, max: 0.5, noNaN: true }), (ratio) => {
      const noise = { driftK2PerDay: ratio * 2.25, readingK2: 2.25 };
      let state: SiteOffset & { gain: number } = { ...UNKNOWN_SITE_OFFSET, gain: 0 };
      for (let night = 0; night < 400; night += 1) state = offsetAfterReading(state, { missK: 1, days: 1 }, noise);
      expect(state.gain).toBeCloseTo(steadyGain(ratio), 9);
    }));
  });

  it('refuses impossible noise', () => {
    expect(() => offsetAfterReading(UNKNOWN_SITE_OFFSET, { missK: 1, days: -1 })).toThrow(RangeError);
    expect(() => offsetAfterReading(UNKNOWN_SITE_OFFSET, { missK: 1, days: 1 }, { driftK2PerDay: 0, readingK2: 0 })).toThrow(RangeError);
    expect(() => steadyGain(-0.1)).toThrow(RangeError);
  });
});
