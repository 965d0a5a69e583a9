import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../../engine/chance/normal.js';
import { studentTCdf, studentTQuantile } from '../../../engine/chance/student-t.js';

/** AbramowitzStegun1964 table 26.10, quantiles of Student's t (from memory, three decimals as printed): [degrees of freedom, 0.9, 0.95, 0.975, 0.99, 0.995]. */
const TABLE_26_10 = [
  [1, 3.078, 6.314, 12.706, 31.821, 63.657],
  [2, 1.886, 2.92, 4.303, 6.965, 9.925],
  [3, 1.638, 2.353, 3.182, 4.541, 5.841],
  [4, 1.533, 2.132, 2.776, 3.747, 4.604],
  [5, 1.476, 2.015, 2.571, 3.365, 4.032],
  [6, 1.44, 1.943, 2.447, 3.143, 3.707],
  [10, 1.372, 1.812, 2.228, 2.764, 3.169],
  [20, 1.325, 1.725, 2.086, 2.528, 2.845],
  [30, 1.31, 1.697, 2.042, 2.457, 2.75],
  [120, 1.289, 1.658, 1.98, 2.358, 2.617],
] as const;
const CHANCES = [0.9, 0.95, 0.975, 0.99, 0.995] as const;
const HALF_OF_LAST_DIGIT = 0.00051;

describe('Student t, AbramowitzStegun1964 table 26.10', () => {
  const rows = TABLE_26_10.flatMap(([freedom, ...quantiles]) => quantiles.map((t, i) => [CHANCES[i]!, freedom, t] as const));

  it.each(rows)('t of %f with %d degrees of freedom is %f', (p, freedom, t) => {
    expect(Math.abs(studentTQuantile(p, freedom) - t)).toBeLessThan(HALF_OF_LAST_DIGIT);
    expect(Math.abs(studentTQuantile(1 - p, freedom) + t)).toBeLessThan(HALF_OF_LAST_DIGIT);
  });

  it('has closed forms for 1 and 2 degrees of freedom', () => {
    for (const t of [-30, -2, -0.3, 0, 0.7, 5]) {
      expect(studentTCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
      expect(studentTCdf(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 13);
    }
  });

  it('becomes normal with many degrees of freedom', () => {
    for (const t of [-3, -1, 0, 0.5, 2]) expect(Math.abs(studentTCdf(t, 5001) - normalCdf(t))).toBeLessThan(1e-4);
  });

  it('rises, is symmetric, and goes there and back', () => {
    const freedom = fc.integer({ min: 1, max: 40 });
    fc.assert(fc.property(fc.double({ min: -60, max: 60, noNaN: true }), fc.double({ min: 0, max: 5, noNaN: true }), freedom, (t, step, nu) => {
      expect(studentTCdf(t + step, nu)).toBeGreaterThanOrEqual(studentTCdf(t, nu) - 1e-13);
      expect(studentTCdf(-t, nu)).toBeCloseTo(1 - studentTCdf(t, nu), 12);
    }));
    fc.assert(fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), freedom, (p, nu) => {
      expect(studentTCdf(studentTQuantile(p, nu), nu)).toBeCloseTo(p, 10);
    }));
  });

  it.each([0, -1, 2.5, Number.NaN, Number.POSITIVE_INFINITY])('refuses %f degrees of freedom', (freedom) => {
    expect(() => studentTCdf(1, freedom)).toThrow(RangeError);
  });
});
