import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { worthOfWaiting } from '../../../engine/plan/wait-or-decide.js';
import { isFeasible } from '../../../engine/plan/choose.js';
import { clockS, DUSK_S, PLANS } from './worked-night.js';

/** Rows of the decision rule, worked out apart from this code: cost 10, loss 100 below 0 degrees, spread 1.5 K now and 1.0 K later. */
const TOLERANCE = 0.01;
const CASE = { thresholdK: 0, sdNowK: 1.5, sdLaterK: 1, cost: 10, loss: 100 };

describe('worth of waiting for the next forecast', () => {
  it.each([
    [0.5, 10, 8.5469, 1.4531],
    [1.5, 10, 5.816, 4.184],
    [1.92, 10, 4.4116, 5.5884],
    [3, 2.275, 1.4758, 0.7992],
    [5, 0.0429, 0.0398, 0.0031],
  ])('mean %f K: now %f, later %f, worth %f', (meanK, lossNow, lossLater, worth) => {
    const waiting = worthOfWaiting({ ...CASE, meanK });
    expect(Math.abs(waiting.lossNow - lossNow)).toBeLessThan(TOLERANCE);
    expect(Math.abs(waiting.lossLater - lossLater)).toBeLessThan(TOLERANCE);
    expect(Math.abs(waiting.worth - worth)).toBeLessThan(TOLERANCE);
  });

  it('is never negative: news can be ignored', () => {
    fc.assert(fc.property(fc.double({ min: -8, max: 8, noNaN: true }), fc.double({ min: 0.2, max: 3, noNaN: true }), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (meanK, sdNowK, share) => {
      expect(worthOfWaiting({ ...CASE, meanK, sdNowK, sdLaterK: share * sdNowK }).worth).toBeGreaterThan(-1e-6);
    }), { numRuns: 60 });
  });

  it.each([0, -1, 1.5, 2, Number.NaN])('refuses a later spread of %f K', (sdLaterK) => {
    expect(() => worthOfWaiting({ ...CASE, meanK: 0, sdLaterK })).toThrow(RangeError);
  });
});

describe('latest start', () => {
  it('covers of 20 minutes by dusk at 18:40: until 18:15', () => {
    expect(DUSK_S).toBe(clockS(18, 40));
    expect([clockS(18, 15), clockS(18, 15, 1)].map((nowS) => isFeasible(PLANS.covers, nowS))).toEqual([true, false]);
  });

  it('heater of 5 minutes by bedtime at 21:30: until 21:23:45', () => {
    expect([clockS(21, 23, 45), clockS(21, 23, 46)].map((nowS) => isFeasible(PLANS.heater, nowS))).toEqual([true, false]);
  });

  it('what is done, or needs no hand, is never too late', () => {
    expect(isFeasible({ ...PLANS.covers, done: true }, clockS(23))).toBe(true);
    expect(isFeasible(PLANS.none, clockS(23))).toBe(true);
  });
});
