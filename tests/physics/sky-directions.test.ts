import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { saturationVapourPressureOverWaterPa } from '../../engine/air/saturation-magnus.js';
import { cloudReach } from '../../engine/sky/cloud-reach.js';
import { CLOUD_LONGWAVE_WEIGHT, surroundingsRadiantTempK, type SkyState } from '../../engine/sky/downwelling-longwave.js';
import { OutOfRangeError } from '../../engine/errors.js';

const double = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const unit = double(0, 1);
const sky: fc.Arbitrary<SkyState> = fc.record({ airTempK: double(240, 300), humidity: double(0.05, 1), cloudFraction: unit, cloudWeight: unit, skyViewFraction: unit })
  .map(({ humidity, ...rest }) => ({ ...rest, vapourPressurePa: humidity * saturationVapourPressureOverWaterPa(rest.airTempK) }));
const HAIR_K = 1e-9;

describe('sky and surroundings', () => {
  it('are never warmer than the air, and never colder than the clear sky alone', () => {
    fc.assert(fc.property(sky, (state) => {
      const found = surroundingsRadiantTempK(state);
      expect(found).toBeLessThanOrEqual(state.airTempK + HAIR_K);
      expect(found).toBeGreaterThanOrEqual(surroundingsRadiantTempK({ ...state, cloudFraction: 0, skyViewFraction: 1 }) - HAIR_K);
    }));
  });

  it('are never colder for more cloud, more weight of it, damper or warmer air, or less open sky', () => {
    fc.assert(fc.property(sky, unit, (state, by) => {
      const before = surroundingsRadiantTempK(state);
      const up = (value: number): number => value + by * (1 - value);
      const saturatedPa = saturationVapourPressureOverWaterPa(state.airTempK);
      const warmer: readonly SkyState[] = [
        { ...state, cloudFraction: up(state.cloudFraction) },
        { ...state, cloudWeight: up(state.cloudWeight) },
        { ...state, vapourPressurePa: state.vapourPressurePa + by * (saturatedPa - state.vapourPressurePa) },
        { ...state, airTempK: state.airTempK + 10 * by },
        { ...state, skyViewFraction: (1 - by) * state.skyViewFraction },
      ];
      for (const changed of warmer) expect(surroundingsRadiantTempK(changed)).toBeGreaterThanOrEqual(before - HAIR_K);
    }));
  });

  it('have the temperature of the air under full cloud in fog, and where no sky is seen', () => {
    fc.assert(fc.property(sky, (state) => {
      const fog = { ...state, vapourPressurePa: saturationVapourPressureOverWaterPa(state.airTempK), cloudFraction: 1, cloudWeight: CLOUD_LONGWAVE_WEIGHT };
      expect(surroundingsRadiantTempK(fog)).toBeCloseTo(state.airTempK, 9);
      expect(surroundingsRadiantTempK({ ...state, skyViewFraction: 0 })).toBeCloseTo(state.airTempK, 9);
    }));
  });

  it('stay colder than the air under full cloud over dry air, which is high and thin', () => {
    for (const airTempK of [250, 270, 290]) {
      const halfSaturated = { airTempK, vapourPressurePa: 0.5 * saturationVapourPressureOverWaterPa(airTempK), cloudFraction: 1, cloudWeight: CLOUD_LONGWAVE_WEIGHT, skyViewFraction: 1 };
      expect(surroundingsRadiantTempK(halfSaturated)).toBeLessThan(airTempK - 1);
    }
  });

  it('take air above saturation as saturated, for the cloud', () => {
    expect(cloudReach(1)).toBe(1);
    expect(cloudReach(0)).toBe(0);
    expect(() => surroundingsRadiantTempK({ airTempK: 270, vapourPressurePa: 1.02 * saturationVapourPressureOverWaterPa(270), cloudFraction: 1, cloudWeight: 1, skyViewFraction: 1 })).not.toThrow();
    for (const humidity of [-0.01, 1.01, Number.NaN]) expect(() => cloudReach(humidity)).toThrow(OutOfRangeError);
  });
});
