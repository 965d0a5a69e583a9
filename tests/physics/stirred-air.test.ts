import { describe, expect, it } from 'vitest';
import { mixedWPerM2K, plateForcedWPerM2K, stirredSpeedMPerS } from '../../engine/airflow/stirred-air.js';
import { OutOfRangeError } from '../../engine/errors.js';

describe('speed of air that a fan stirs', () => {
  it('is 0.3 m/s at 0.01 m3/s for each m2 of floor (the trade rule)', () => {
    expect(stirredSpeedMPerS(0.5, 50)).toBeCloseTo(0.3, 12);
  });

  it('doubles with four times the flow, or a quarter of the floor', () => {
    expect(stirredSpeedMPerS(0.4, 40) / stirredSpeedMPerS(0.1, 40)).toBeCloseTo(2, 12);
    expect(stirredSpeedMPerS(0.1, 10) / stirredSpeedMPerS(0.1, 40)).toBeCloseTo(2, 12);
  });

  it('is nothing without flow, and never above 1 m/s', () => {
    expect(stirredSpeedMPerS(0, 40)).toBe(0);
    expect(stirredSpeedMPerS(1000, 40)).toBe(1);
  });
});

describe('forced convection on a plate', () => {
  // Nu = 0.664 Re^(1/2) Pr^(1/3), worked by hand: Re 0.3 x 1 / 1.37e-5 = 21898, root 147.98; cube root of 0.71 = 0.8921; k 0.0243.
  it('is 2.13 W/(m2 K) along 1 m at 0.3 m/s', () => {
    expect(plateForcedWPerM2K(0.3, 1)).toBeCloseTo(2.13, 2);
  });

  it('doubles with four times the speed, and halves along four times the length', () => {
    expect(plateForcedWPerM2K(1.2, 0.5) / plateForcedWPerM2K(0.3, 0.5)).toBeCloseTo(2, 12);
    expect(plateForcedWPerM2K(0.3, 2) / plateForcedWPerM2K(0.3, 0.5)).toBeCloseTo(0.5, 12);
  });

  it('is nothing in still air, and refuses a wind', () => {
    expect(plateForcedWPerM2K(0, 0.5)).toBe(0);
    expect(() => plateForcedWPerM2K(3.1, 0.5)).toThrow(OutOfRangeError);
  });
});

describe('natural and forced convection together', () => {
  it('add as cubes: 27 + 64 + 125 = 216', () => {
    expect(mixedWPerM2K(mixedWPerM2K(3, 4), 5)).toBeCloseTo(6, 12);
  });

  it('are one where the other is nothing', () => {
    expect(mixedWPerM2K(2.5, 0)).toBe(2.5);
    expect(mixedWPerM2K(0, 2.5)).toBeCloseTo(2.5, 12);
  });
});
