import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../../engine/chance/normal.js';
import { crpsMixtureK } from '../../../engine/score/crps-mixture.js';
import { crpsNormalK } from '../../../engine/score/crps-normal.js';
import { crpsSampleK } from '../../../engine/score/crps-sample.js';
import { crpsStudentTK } from '../../../engine/score/crps-student-t.js';
import { skillScore } from '../../../engine/score/skill-score.js';

const tempK = fc.double({ min: 250, max: 290, noNaN: true });
const spreadK = fc.double({ min: 0.1, max: 4, noNaN: true });
const NEARLY_NORMAL = 2001;

describe('ranked probability score', () => {
  it('of a mixture with one part is that of a Student t', () => {
    fc.assert(fc.property(tempK, spreadK, fc.integer({ min: 3, max: 15 }), tempK, (centreK, scaleK, degreesOfFreedom, observedK) => {
      expect(crpsMixtureK({ valuesK: [centreK], weights: [1], scaleK, degreesOfFreedom }, observedK)).toBeCloseTo(crpsStudentTK({ centreK, scaleK, degreesOfFreedom }, observedK), 4);
    }), { numRuns: 60 });
  });

  it('of a Student t with many degrees of freedom is that of a normal', () => {
    fc.assert(fc.property(tempK, spreadK, tempK, (centreK, scaleK, observedK) => {
      expect(Math.abs(crpsStudentTK({ centreK, scaleK, degreesOfFreedom: NEARLY_NORMAL }, observedK) - crpsNormalK({ meanK: centreK, sdK: scaleK }, observedK))).toBeLessThan(2e-3 * scaleK);
    }));
  });

  it('of many even members is that of the distribution they stand for', () => {
    const members = Array.from({ length: 2000 }, (_, i) => 270 + 1.5 * normalQuantile((i + 0.5) / 2000));
    for (const observedK of [267, 270, 271.5]) expect(crpsSampleK(members, observedK)).toBeCloseTo(crpsNormalK({ meanK: 270, sdK: 1.5 }, observedK), 3);
  });

  it('is never negative, and the distance itself for a sure forecast', () => {
    fc.assert(fc.property(fc.array(tempK, { minLength: 2, maxLength: 30 }), tempK, (members, observedK) => {
      expect(crpsSampleK(members, observedK)).toBeGreaterThanOrEqual(-1e-9);
      expect(crpsSampleK(members, observedK, 'fair')).toBeLessThanOrEqual(crpsSampleK(members, observedK) + 1e-9);
      expect(crpsSampleK([members[0]!], observedK)).toBeCloseTo(Math.abs(members[0]! - observedK), 9);
    }));
  });

  it('is best for the right spread: wider and narrower normals score worse on their own quantiles', () => {
    const readings = Array.from({ length: 500 }, (_, i) => normalQuantile((i + 0.5) / 500));
    const mean = (sdK: number): number => readings.reduce((sum, reading) => sum + crpsNormalK({ meanK: 0, sdK }, reading), 0) / readings.length;
    expect(mean(1)).toBeLessThan(Math.min(mean(0.8), mean(1.25)));
  });

  it('refuses what is no forecast', () => {
    expect(() => crpsNormalK({ meanK: 270, sdK: 0 }, 270)).toThrow(RangeError);
    expect(() => crpsStudentTK({ centreK: 270, scaleK: -1, degreesOfFreedom: 6 }, 270)).toThrow(RangeError);
    expect(() => crpsStudentTK({ centreK: 270, scaleK: 1, degreesOfFreedom: 1 }, 270)).toThrow(RangeError);
    expect(() => crpsSampleK([], 270)).toThrow(RangeError);
    expect(() => crpsSampleK([270], 270, 'fair')).toThrow(RangeError);
  });

  it('has no skill against a reference that is perfect', () => {
    expect([skillScore(1, 0), skillScore(0, 2), skillScore(2, 2), skillScore(3, 2)]).toEqual([null, 1, 0, -0.5]);
  });
});
