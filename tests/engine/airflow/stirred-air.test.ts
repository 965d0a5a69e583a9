import { describe, expect, it } from 'vitest';
import { mixedWPerM2K, plateForcedWPerM2K, stirredSpeedMPerS } from '../../../engine/airflow/stirred-air.js';
import { OutOfRangeError } from '../../../engine/errors.js';

describe('stirred air', () => {
  it('moves at about 0.3 m/s with 0.01 m3/s of fan for each m2 of floor, twice as fast with four times as much, never faster than 1 m/s', () => {
    expect(stirredSpeedMPerS(0.32, 32)).toBeCloseTo(0.3, 9);
    expect(stirredSpeedMPerS(1.28, 32)).toBeCloseTo(0.6, 9);
    expect(stirredSpeedMPerS(50, 32)).toBe(1);
    expect(stirredSpeedMPerS(0, 32)).toBe(0);
  });

  it('sweeps a plate by the laminar law: four times the speed doubles it, four times the length halves it', () => {
    expect(plateForcedWPerM2K(0.8, 1) / plateForcedWPerM2K(0.2, 1)).toBeCloseTo(2, 9);
    expect(plateForcedWPerM2K(0.2, 4) / plateForcedWPerM2K(0.2, 1)).toBeCloseTo(0.5, 9);
    expect(plateForcedWPerM2K(0, 1)).toBe(0);
    expect(() => plateForcedWPerM2K(5, 1)).toThrow(OutOfRangeError);
  });

  it('adds to natural convection by cubes: never less than either, never more than both', () => {
    for (const [natural, forced] of [[3, 4], [0, 2], [5, 0.1]] as const) {
      const mixed = mixedWPerM2K(natural, forced);
      expect(mixed).toBeGreaterThanOrEqual(Math.max(natural, forced));
      expect(mixed).toBeLessThanOrEqual(natural + forced);
      expect(mixed ** 3).toBeCloseTo(natural ** 3 + forced ** 3, 9);
    }
    expect(mixedWPerM2K(3, 0)).toBe(3);
  });
});
