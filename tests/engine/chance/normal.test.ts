import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalDensity, normalQuantile } from '../../../engine/chance/normal.js';

/** AbramowitzStegun1964 table 26.1 (from memory, cut to ten decimals). */
const TABLE_26_1 = [
  [0, 0.5], [0.5, 0.6914624613], [1, 0.8413447461], [1.5, 0.9331927987], [2, 0.9772498681], [2.5, 0.9937903347], [3, 0.9986501020], [4, 0.9999683288],
] as const;
/** AbramowitzStegun1964 table 26.1, density (from memory). */
const DENSITY = [[0, 0.3989422804], [1, 0.2419707245], [2, 0.0539909665], [3, 0.0044318484]] as const;
/** AbramowitzStegun1964 table 26.5, quantiles by upper tail (from memory, five decimals). */
const QUANTILES = [[0.5, 0], [0.75, 0.67449], [0.9, 1.28155], [0.95, 1.64485], [0.975, 1.95996], [0.99, 2.32635], [0.995, 2.57583], [0.999, 3.09023]] as const;
/** AbramowitzStegun1964 table 26.2, -log10 of the upper tail (from memory, five decimals). */
const TAIL_LOGS = [[5, 6.54265], [6, 9.00586], [7, 11.89285], [8, 15.20614], [9, 18.94746], [10, 23.11805]] as const;

describe('normal distribution, AbramowitzStegun1964', () => {
  it.each(TABLE_26_1)('P(%f) = %f', (z, p) => {
    expect(Math.abs(normalCdf(z) - p)).toBeLessThan(1e-10);
    expect(Math.abs(normalCdf(-z) - (1 - p))).toBeLessThan(1e-10);
  });

  it.each(DENSITY)('Z(%f) = %f', (z, density) => {
    expect(Math.abs(normalDensity(z) - density)).toBeLessThan(6e-11);
  });

  it.each(QUANTILES)('quantile of %f is %f', (p, z) => {
    expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(6e-6);
    expect(Math.abs(normalQuantile(1 - p) + z)).toBeLessThan(6e-6);
  });

  it.each(TAIL_LOGS)('-log10 of the tail beyond %f is %f', (z, log) => {
    expect(Math.abs(-Math.log10(normalCdf(-z)) - log)).toBeLessThan(z === 6 || z === 5 ? 1e-4 : 2e-4);
  });

  it('is smooth where the series gives way to the asymptotic tail', () => {
    expect(Math.abs(normalCdf(-6) - normalCdf(-6 - 1e-9))).toBeLessThan(1e-12);
    expect(Math.abs(normalCdf(6) - normalCdf(6 + 1e-9))).toBeLessThan(1e-12);
  });

  it('rises, is symmetric and stays within 0 and 1', () => {
    const number = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(fc.property(number, fc.double({ min: 0, max: 5, noNaN: true }), (z, step) => {
      const p = normalCdf(z);
      expect(p).toBeGreaterThanOrEqual(0);
      expect(p).toBeLessThanOrEqual(1);
      expect(normalCdf(z + step)).toBeGreaterThanOrEqual(p - 1e-12);
      expect(normalCdf(-z)).toBeCloseTo(1 - p, 11);
    }));
  });

  it('goes there and back', () => {
    fc.assert(fc.property(fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }), (p) => {
      expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 11);
    }));
  });

  it.each([0, 1, -0.1, 1.1, Number.NaN])('has no quantile of %f', (p) => {
    expect(() => normalQuantile(p)).toThrow(RangeError);
  });
});
