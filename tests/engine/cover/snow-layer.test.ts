import { describe, expect, it } from 'vitest';
import { snowConductanceWPerM2K, snowHoldingShare, sunThroughSnow } from '../../../engine/cover/snow-layer.js';
import { houseGeometry } from '../../../engine/cover/shape.js';
import { OutOfRangeError } from '../../../engine/errors.js';

const gable = (rise: number): ReturnType<typeof houseGeometry>['facets'] => houseGeometry({ kind: 'gable', widthM: 4, lengthM: 8, heightM: 1 + rise, sideHeightM: 1, ridgeAzimuthRad: 0 }).facets;

describe('snow on the roof', () => {
  it('stays on slopes below 55 degrees: of a 3-4-5 gable the two roofs', () => {
    const roofM2 = 2 * 8 * 2.5;
    const othersM2 = 2 * 8 + 2 * 4 * 1.75;
    expect(snowHoldingShare(gable(1.5))).toBeCloseTo(roofM2 / (roofM2 + othersM2), 9);
    expect(snowHoldingShare(gable(3))).toBe(0);
  });

  it('conducts as its depth says where it lies everywhere: 0.15 W/(m K)', () => {
    for (const depthM of [0.02, 0.1, 0.5]) expect(snowConductanceWPerM2K(depthM, 1)).toBeCloseTo(0.15 / depthM, 9);
  });

  it('lets through less heat and less light the deeper it lies, and all of both where there is none', () => {
    for (const share of [0.3, 0.7, 1]) {
      const depths = [0, 0.01, 0.05, 0.2, 1];
      depths.slice(1).forEach((depthM, i) => {
        expect(snowConductanceWPerM2K(depthM, share)).toBeLessThan(snowConductanceWPerM2K(depths[i]!, share));
        expect(sunThroughSnow(depthM, share)).toBeLessThan(sunThroughSnow(depths[i]!, share));
      });
      expect(sunThroughSnow(0, share)).toBe(1);
      expect(sunThroughSnow(1, share)).toBeCloseTo(1 - share, 9);
    }
    expect(sunThroughSnow(0.03, 1)).toBeCloseTo(Math.exp(-1), 9);
  });

  it('refuses a depth that no roof bears', () => {
    expect(() => snowConductanceWPerM2K(5, 1)).toThrow(OutOfRangeError);
    expect(() => snowConductanceWPerM2K(-0.1, 1)).toThrow(OutOfRangeError);
  });
});
