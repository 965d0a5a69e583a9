import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceBelow, meanOver, mixtureMeanK, mixtureQuantileK, type Mixture } from '../../../engine/chance/mixture.js';
import { studentTCdf, studentTQuantile } from '../../../engine/chance/student-t.js';

const mixtures: fc.Arbitrary<Mixture> = fc.record({
  members: fc.array(fc.record({ valueK: fc.double({ min: 250, max: 290, noNaN: true }), share: fc.double({ min: 0.05, max: 1, noNaN: true }) }), { minLength: 1, maxLength: 9 }),
  scaleK: fc.double({ min: 0.1, max: 4, noNaN: true }),
  degreesOfFreedom: fc.integer({ min: 3, max: 12 }),
}).map(({ members, ...rest }) => {
  const total = members.reduce((sum, { share }) => sum + share, 0);
  return { ...rest, valuesK: members.map(({ valueK }) => valueK), weights: members.map(({ share }) => share / total) };
});
const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe('mixture of dressed scenarios', () => {
  it('of one scenario is Student t itself', () => {
    const one: Mixture = { valuesK: [270], weights: [1], scaleK: 2, degreesOfFreedom: 6 };
    expect(chanceBelow(one, 268)).toBeCloseTo(studentTCdf(-1, 6), 14);
    expect(mixtureQuantileK(one, 0.9)).toBeCloseTo(270 + 2 * studentTQuantile(0.9, 6), 9);
  });

  it('lies between its parts: two scenarios far apart have a quarter below the lower one', () => {
    const two: Mixture = { valuesK: [255, 285], weights: [0.5, 0.5], scaleK: 0.2, degreesOfFreedom: 6 };
    expect(chanceBelow(two, 255)).toBeCloseTo(0.25, 6);
    expect(chanceBelow(two, 270)).toBeCloseTo(0.5, 6);
    expect(mixtureMeanK(two)).toBeCloseTo(270, 12);
  });

  it('goes there and back', () => {
    fc.assert(fc.property(mixtures, chance, (mixture, p) => {
      expect(chanceBelow(mixture, mixtureQuantileK(mixture, p))).toBeCloseTo(p, 9);
    }));
  });

  it('has quantiles that rise with the chance and move with the values', () => {
    fc.assert(fc.property(mixtures, chance, chance, fc.double({ min: -10, max: 10, noNaN: true }), (mixture, p, q, byK) => {
      expect(mixtureQuantileK(mixture, Math.min(p, q))).toBeLessThanOrEqual(mixtureQuantileK(mixture, Math.max(p, q)) + 1e-9);
      const moved = { ...mixture, valuesK: mixture.valuesK.map((value) => value + byK) };
      expect(mixtureQuantileK(moved, p)).toBeCloseTo(mixtureQuantileK(mixture, p) + byK, 8);
    }));
  });

  it('has the mean of its scenarios', () => {
    fc.assert(fc.property(mixtures, (mixture) => {
      expect(meanOver(mixture, (valueK) => valueK)).toBeCloseTo(mixtureMeanK(mixture), 8);
    }));
  });

  it('has a mean of a step that is the chance below it, to one node of 51', () => {
    fc.assert(fc.property(mixtures, fc.double({ min: 250, max: 290, noNaN: true }), (mixture, thresholdK) => {
      expect(Math.abs(meanOver(mixture, (valueK) => (valueK < thresholdK ? 1 : 0)) - chanceBelow(mixture, thresholdK))).toBeLessThan(1 / 51);
    }));
  });

  it('has no quantile of 0 and 1', () => {
    const one: Mixture = { valuesK: [270], weights: [1], scaleK: 2, degreesOfFreedom: 6 };
    expect(() => mixtureQuantileK(one, 0)).toThrow(RangeError);
    expect(() => mixtureQuantileK(one, 1)).toThrow(RangeError);
  });
});
