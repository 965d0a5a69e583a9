import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { damageCurve, damageFractionAt, damageFractionOn, organCurves, STEEPEST_SLOPE_K, thresholdSdK } from '../../../engine/crops/damage.js';
import { OutOfRangeError } from '../../../engine/errors.js';
import { celsiusToKelvin } from '../../../engine/units.js';

const KALE = { damageBeginsK: celsiusToKelvin(-6.7), killedK: celsiusToKelvin(-15) };
const FLOOR_BINDS_BELOW_K = 2 * Math.log(9) * STEEPEST_SLOPE_K;
const begins = fc.double({ min: 250, max: 280, noNaN: true });
const gap = fc.double({ min: 0, max: 20, noNaN: true });

describe('damage curve', () => {
  it('is a tenth where damage begins and nine tenths at kill, unless the slope floor binds', () => {
    fc.assert(fc.property(begins, gap, (damageBeginsK, gapK) => {
      const pair = { damageBeginsK, killedK: damageBeginsK - gapK };
      const [atBegin, atKill] = [pair.damageBeginsK, pair.killedK].map((tempK) => damageFractionAt({ ...pair, tempK }));
      if (gapK >= FLOOR_BINDS_BELOW_K) {
        expect(atBegin).toBeCloseTo(0.1, 9);
        expect(atKill).toBeCloseTo(0.9, 9);
      } else {
        expect(damageCurve(pair).slopeK).toBe(STEEPEST_SLOPE_K);
        expect(atBegin).toBeGreaterThan(0.1 - 1e-9);
        expect(atKill).toBeLessThan(0.9 + 1e-9);
      }
    }));
  });

  it('never falls as it gets colder, and stays within 0 and 1', () => {
    fc.assert(fc.property(begins, gap, fc.double({ min: 200, max: 330, noNaN: true }), fc.double({ min: 0, max: 50, noNaN: true }), (damageBeginsK, gapK, tempK, byK) => {
      const pair = { damageBeginsK, killedK: damageBeginsK - gapK };
      const warmer = damageFractionAt({ ...pair, tempK });
      const colder = damageFractionAt({ ...pair, tempK: tempK - byK });
      expect(colder).toBeGreaterThanOrEqual(warmer);
      expect(warmer).toBeGreaterThanOrEqual(0);
      expect(colder).toBeLessThanOrEqual(1);
    }));
  });

  it('reads T10, T50 and T90 back', () => {
    const curve = damageCurve(KALE);
    expect(curve.t10K).toBeCloseTo(KALE.damageBeginsK, 9);
    expect(curve.t90K).toBeCloseTo(KALE.killedK, 9);
    expect(damageFractionOn(curve, curve.t50K)).toBeCloseTo(0.5, 12);
  });

  it('takes the steepest slope where no kill temperature is known', () => {
    const curve = damageCurve({ damageBeginsK: 270, killedK: null });
    expect(curve.slopeK).toBe(STEEPEST_SLOPE_K);
    expect(curve.t10K).toBeCloseTo(270, 9);
  });

  it('does not overflow far from the threshold', () => {
    expect(damageFractionAt({ ...KALE, tempK: 1e6 })).toBe(0);
    expect(damageFractionAt({ ...KALE, tempK: -1e6 })).toBe(1);
  });

  it('refuses a kill temperature above the one where damage begins, and what is no number', () => {
    expect(() => damageCurve({ damageBeginsK: 260, killedK: 261 })).toThrow(/at most damageBeginsK/);
    expect(() => damageFractionAt({ ...KALE, tempK: Number.NaN })).toThrow(OutOfRangeError);
  });
});

describe('organs', () => {
  it('share one curve when the numbers are of one organ', () => {
    const { damage, kill } = organCurves({ ...KALE, differentOrgans: false });
    expect(kill).toEqual(damage);
  });

  it('have a curve each, 0.6 K steep, when they are not', () => {
    const { damage, kill } = organCurves({ ...KALE, differentOrgans: true });
    expect([damage.slopeK, kill.slopeK]).toEqual([0.6, 0.6]);
    expect(damageFractionOn(damage, KALE.damageBeginsK)).toBeCloseTo(0.1, 9);
    expect(damageFractionOn(kill, KALE.killedK)).toBeCloseTo(0.9, 9);
    expect(damageFractionOn(kill, KALE.damageBeginsK)).toBeLessThan(0.001);
  });
});

it('trusts a threshold the less the weaker its grade', () => {
  expect([thresholdSdK('published'), thresholdSdK('secondary'), thresholdSdK('from memory')]).toEqual([1, 1.5, 2]);
});
