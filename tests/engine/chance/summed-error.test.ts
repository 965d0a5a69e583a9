import { describe, expect, it } from 'vitest';
import { summedError } from '../../../engine/chance/summed-error.js';

const ESTIMATED = { scaleK: 0.8, degreesOfFreedom: 6 };

describe('an estimated error with a known one', () => {
  it('is itself where nothing is added', () => {
    expect(summedError(ESTIMATED, 0)).toEqual(ESTIMATED);
  });

  it('adds variances', () => {
    expect(summedError({ scaleK: 3, degreesOfFreedom: 6 }, 4).scaleK).toBeCloseTo(5, 12);
  });

  // Two equal parts: half of the variance is an estimate, so that the sum is known as by 6 x 2^2 readings.
  it('of the same size has four times the degrees of freedom', () => {
    expect(summedError(ESTIMATED, ESTIMATED.scaleK).degreesOfFreedom).toBe(24);
  });

  it('loses its heavy tails where the known one is by far the larger, and keeps those that it had none to lose', () => {
    expect(summedError(ESTIMATED, 50).degreesOfFreedom).toBe(100);
    expect(summedError({ ...ESTIMATED, degreesOfFreedom: 300 }, 50).degreesOfFreedom).toBe(300);
  });

  it('has a whole number of degrees of freedom, which grows with what is known', () => {
    const of = [0, 0.3, 0.6, 0.9, 1.2].map((sdK) => summedError(ESTIMATED, sdK).degreesOfFreedom);
    for (const [i, value] of of.entries()) {
      expect(Number.isInteger(value)).toBe(true);
      if (i > 0) expect(value).toBeGreaterThan(of[i - 1]!);
    }
  });
});
