import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cropById, cropRows } from '../../../engine/crops/catalogue.js';
import { runningMeanMinimumK, windowMinFor } from '../../../engine/crops/exposure-window.js';
import { OutOfRangeError } from '../../../engine/errors.js';

const STEP_S = 600;

describe('how long a dip must last', () => {
  it.each([
    ['tomato', 1, 30],
    ['apple_full_bloom', 1, 30],
    ['strawberry_bloom', 0, 30],
    ['kale_curly', 0, 30],
    ['kale_curly', 0.5, 45],
    ['kale_curly', 1, 60],
    ['citrus_fruit', 0, 240],
    ['cauliflower_curd', 0, 240],
    ['fava_pods', 0, 240],
    ['potted_roots', 1, 30],
  ])('%s at hardening %s: %s min', (id, effectiveFraction, windowMin) => {
    expect(windowMinFor(cropById(id)!, effectiveFraction)).toBe(windowMin);
  });

  it('is the printed duration for every bud stage', () => {
    for (const row of cropRows) if (row.hardinessClass === 'bud stage') expect(windowMinFor(row, 0)).toBe(row.durationMin);
  });
});

describe('lowest running mean', () => {
  const dip = [275, 275, 275, 269, 275, 275, 275];

  it('averages a short dip away and keeps a long one', () => {
    expect(runningMeanMinimumK({ tempK: dip, stepS: STEP_S, windowMin: 10 })).toBe(269);
    expect(runningMeanMinimumK({ tempK: dip, stepS: STEP_S, windowMin: 30 })).toBe(273);
    expect(runningMeanMinimumK({ tempK: [275, 269, 269, 269, 275], stepS: STEP_S, windowMin: 30 })).toBe(269);
  });

  it('finds a dip at either end', () => {
    expect(runningMeanMinimumK({ tempK: [268, 269, 270, 280, 280], stepS: STEP_S, windowMin: 30 })).toBe(269);
    expect(runningMeanMinimumK({ tempK: [280, 280, 270, 269, 268], stepS: STEP_S, windowMin: 30 })).toBe(269);
  });

  it('gives the mean of a series shorter than the window, and a sample when the step is longer', () => {
    expect(runningMeanMinimumK({ tempK: [270, 272], stepS: STEP_S, windowMin: 240 })).toBe(271);
    expect(runningMeanMinimumK({ tempK: [270, 272], stepS: 3600, windowMin: 30 })).toBe(270);
  });

  it('lies between the lowest and the highest temperature and grows no colder with a multiple of the window', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 240, max: 320, noNaN: true }), { minLength: 12, maxLength: 80 }), (tempK) => {
      const lowestK = (windowMin: number): number => runningMeanMinimumK({ tempK, stepS: STEP_S, windowMin });
      expect(lowestK(10)).toBe(Math.min(...tempK));
      expect(lowestK(60)).toBeGreaterThanOrEqual(lowestK(30) - 1e-9);
      expect(lowestK(120)).toBeLessThanOrEqual(Math.max(...tempK) + 1e-9);
    }));
  });

  it('refuses an empty series, a bad step and a bad temperature', () => {
    for (const series of [
      { tempK: [], stepS: STEP_S, windowMin: 30 },
      { tempK: dip, stepS: 0, windowMin: 30 },
      { tempK: dip, stepS: STEP_S, windowMin: 0 },
      { tempK: [Number.NaN], stepS: STEP_S, windowMin: 30 },
    ]) expect(() => runningMeanMinimumK(series)).toThrow(OutOfRangeError);
  });
});
