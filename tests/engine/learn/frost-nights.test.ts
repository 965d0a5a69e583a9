import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../../engine/errors.js';
import { fitFrostNights, frostNightLowK, type FrostNight } from '../../../engine/learn/frost-night-regression.js';
import { frostNightTrendK } from '../../../engine/learn/frost-night-trend.js';

const evening = fc.record({ eveningAirTempK: fc.double({ min: 268, max: 285, noNaN: true }), eveningDewPointK: fc.double({ min: 255, max: 275, noNaN: true }) });

describe('rule of frost nights', () => {
  it('finds a line in the air temperature that is there', () => {
    // Nights that differ by no more than rounding, or in both together, hold no line that doubles could find to a millikelvin.
    const evenings = fc.array(evening, { minLength: 3, maxLength: 20 }).filter((nights) => {
      const about = (values: readonly number[]): number[] => values.map((value) => value - values.reduce((sum, one) => sum + one, 0) / values.length);
      const dot = (one: readonly number[], other: readonly number[]): number => one.reduce((sum, value, i) => sum + value * other[i]!, 0);
      const [air, dew] = [about(nights.map((one) => one.eveningAirTempK)), about(nights.map((one) => one.eveningDewPointK))];
      return dot(air, air) > 1 && dot(dew, dew) > 1 && dot(air, dew) ** 2 < 0.99 * dot(air, air) * dot(dew, dew);
    });
    fc.assert(fc.property(evenings, fc.double({ min: 0.2, max: 1.2, noNaN: true }), fc.double({ min: -20, max: 0, noNaN: true }), evening, (nights, slope, fallK, tonight) => {
      const lowOf = (airK: number): number => 273.15 + slope * (airK - 273.15) + fallK;
      const site = fitFrostNights(nights.map((one): FrostNight => ({ ...one, lowK: lowOf(one.eveningAirTempK) })));
      expect(frostNightLowK(site, tonight)).toBeCloseTo(lowOf(tonight.eveningAirTempK), 3);
    }));
  });

  it('needs three nights that differ', () => {
    const night = { eveningAirTempK: 275, eveningDewPointK: 270, lowK: 268 };
    expect(() => fitFrostNights([night, night])).toThrow(RangeError);
    expect(() => fitFrostNights([night, night, night])).toThrow(RangeError);
  });
});

describe('trend of a frost night', () => {
  it('falls all night, ever slower, from the start to the low', () => {
    fc.assert(fc.property(fc.double({ min: 268, max: 283, noNaN: true }), fc.double({ min: 0.5, max: 15, noNaN: true }), fc.integer({ min: 6, max: 18 }), (startTempK, fallK, nightHours) => {
      const hours = Array.from({ length: nightHours - 1 }, (_, i) => frostNightTrendK({ startTempK, lowK: startTempK - fallK, nightHours }, 2 + i));
      expect(hours[0]).toBeCloseTo(startTempK, 9);
      expect(hours.at(-1)).toBeCloseTo(startTempK - fallK, 9);
      const falls = hours.slice(1).map((value, i) => hours[i]! - value);
      falls.forEach((fall, i) => expect(fall).toBeLessThan(i === 0 ? Number.POSITIVE_INFINITY : falls[i - 1]!));
      expect(Math.min(...falls)).toBeGreaterThan(0);
    }));
  });

  it('says nothing of the first two hours, nor of the day', () => {
    const night = { startTempK: 275, lowK: 268, nightHours: 14 };
    expect(() => frostNightTrendK(night, 1.9)).toThrow(OutOfRangeError);
    expect(() => frostNightTrendK(night, 14.1)).toThrow(OutOfRangeError);
  });
});
