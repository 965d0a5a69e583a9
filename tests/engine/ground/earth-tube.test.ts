import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../../engine/errors.js';
import { earthTubeEffectiveness, RING_COUNT, ringMiddleRadiusM, ringOuterRadiusM, tubeWallWPerM2K } from '../../../engine/ground/earth-tube.js';

const TUBE = { airflowM3PerS: 0.02, diameterM: 0.1, lengthM: 10, soilConductivityWPerMK: 1.2, airDensityKgPerM3: 1.27 };
const effectiveness = (changes: Partial<typeof TUBE>): number => earthTubeEffectiveness({ ...TUBE, ...changes });
const rising = (values: readonly number[]): void => values.slice(1).forEach((value, i) => expect(value).toBeGreaterThan(values[i]!));

describe('air through a buried tube', () => {
  it('comes nearer to the ground the longer the tube, the slower the air, the better the soil conducts', () => {
    rising([2, 5, 10, 20, 40].map((lengthM) => effectiveness({ lengthM })));
    rising([0.08, 0.04, 0.02, 0.01].map((airflowM3PerS) => effectiveness({ airflowM3PerS })));
    rising([0.2, 0.6, 1.2, 2.4].map((soilConductivityWPerMK) => effectiveness({ soilConductivityWPerMK })));
    expect(effectiveness({ lengthM: 500 })).toBeLessThanOrEqual(1);
  });

  it('two tubes behind each other leave the product of what each leaves', () => {
    expect(1 - effectiveness({ lengthM: 20 })).toBeCloseTo((1 - effectiveness({ lengthM: 10 })) ** 2, 9);
  });

  it('has a wall that passes from laminar to turbulent flow without a jump', () => {
    // Re 2300 and 4000 in a tube of 10 cm.
    for (const reynolds of [2300, 4000]) {
      const flowAt = (re: number): number => ((re * 1.42e-5) / 0.1) * ((Math.PI * 0.1 ** 2) / 4);
      expect(tubeWallWPerM2K(flowAt(reynolds * 1.001), 0.1) / tubeWallWPerM2K(flowAt(reynolds * 0.999), 0.1)).toBeCloseTo(1, 2);
    }
    rising([500, 3000, 8000, 30_000].map((reynolds) => tubeWallWPerM2K(((reynolds * 1.42e-5) / 0.1) * ((Math.PI * 0.1 ** 2) / 4), 0.1)));
  });

  it('refuses a storm in a straw', () => {
    expect(() => tubeWallWPerM2K(0.5, 0.1)).toThrow(OutOfRangeError);
    expect(() => tubeWallWPerM2K(0.01, 2)).toThrow(OutOfRangeError);
  });
});

describe('rings of soil around a tube', () => {
  it('begin at its wall and stand at the middle of their resistance', () => {
    expect(ringOuterRadiusM(0.05, -1)).toBeCloseTo(0.05, 12);
    for (let ring = 0; ring < RING_COUNT; ring += 1) {
      const [inner, middle, outer] = [ringOuterRadiusM(0.05, ring - 1), ringMiddleRadiusM(0.05, ring), ringOuterRadiusM(0.05, ring)];
      expect(Math.log(middle / inner)).toBeCloseTo(Math.log(outer / middle), 9);
    }
  });
});
