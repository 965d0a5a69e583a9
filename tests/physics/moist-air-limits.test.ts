import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { humidityRatioKgPerKg, moistAirDensityKgPerM3, moistAirEnthalpyJPerKg } from '../../engine/air/moist-air.js';
import { saturationVapourPressureHylandWexlerPa } from '../../engine/air/saturation-hyland-wexler.js';
import { dewPointOverWaterK, frostPointK, saturationVapourPressureAtSurfacePa, saturationVapourPressureOverIcePa, saturationVapourPressureOverWaterPa, vapourPressureFromDewPointOverWaterPa } from '../../engine/air/saturation-magnus.js';
import { wetBulbK } from '../../engine/air/wet-bulb.js';
import { leakageM3PerS } from '../../engine/airflow/infiltration.js';
import { ventFlowM3PerS } from '../../engine/airflow/vent-flow.js';
import { outsideConvectionWPerM2K } from '../../engine/cover/convection.js';
import { ZERO_CELSIUS_K } from '../../engine/units.js';

const double = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const tempK = double(235, 310);
const pressurePa = double(70_000, 103_000);

describe('moist air', () => {
  it('that is saturated has a relative humidity of 1, its dew point at its own temperature and its wet bulb too', () => {
    fc.assert(fc.property(tempK, pressurePa, (airTempK, pressure) => {
      const saturatedPa = saturationVapourPressureOverWaterPa(airTempK);
      expect(vapourPressureFromDewPointOverWaterPa(airTempK) / saturatedPa).toBe(1);
      expect(dewPointOverWaterK(saturatedPa)).toBeCloseTo(airTempK, 9);
      expect(wetBulbK({ airTempK, humidityRatio: humidityRatioKgPerKg(saturationVapourPressureHylandWexlerPa(airTempK), pressure), pressurePa: pressure })).toBeCloseTo(airTempK, 6);
    }));
  });

  it('below freezing: dew point below frost point below air, ice asks for less vapour than water, and both meet at 0 °C', () => {
    fc.assert(fc.property(double(235, 273), double(0.05, 0.99), (airTempK, shareOfIce) => {
      const e = shareOfIce * saturationVapourPressureOverIcePa(airTempK);
      expect(dewPointOverWaterK(e)).toBeLessThan(frostPointK(e));
      expect(frostPointK(e)).toBeLessThan(airTempK);
      expect(saturationVapourPressureAtSurfacePa(airTempK)).toBeLessThan(saturationVapourPressureOverWaterPa(airTempK));
    }));
    expect(saturationVapourPressureOverIcePa(ZERO_CELSIUS_K)).toBeCloseTo(saturationVapourPressureOverWaterPa(ZERO_CELSIUS_K), 9);
  });

  it('has its wet bulb between frost point or dew point and air, rising with either', () => {
    fc.assert(fc.property(tempK, double(0.02, 0.98), double(0, 0.02), pressurePa, (airTempK, share, by, pressure) => {
      const e = share * saturationVapourPressureHylandWexlerPa(airTempK);
      const at = (vapourPa: number): number => wetBulbK({ airTempK, humidityRatio: humidityRatioKgPerKg(vapourPa, pressure), pressurePa: pressure });
      expect(at(e)).toBeLessThanOrEqual(airTempK);
      expect(at(e)).toBeGreaterThan(dewPointOverWaterK(e) - 0.01);
      expect(at(e * (1 + by))).toBeGreaterThanOrEqual(at(e) - 1e-9);
    }));
  });

  it('is lighter for more vapour and for warmth, and holds more heat for both', () => {
    fc.assert(fc.property(tempK, double(0, 0.02), double(0.0005, 0.01), double(0.5, 10), pressurePa, (airTempK, humidityRatio, more, warmer, pressure) => {
      const density = moistAirDensityKgPerM3({ airTempK, humidityRatio, pressurePa: pressure });
      expect(moistAirDensityKgPerM3({ airTempK, humidityRatio: humidityRatio + more, pressurePa: pressure })).toBeLessThan(density);
      expect(moistAirDensityKgPerM3({ airTempK: airTempK + warmer, humidityRatio, pressurePa: pressure })).toBeLessThan(density);
      expect(moistAirEnthalpyJPerKg(airTempK, humidityRatio + more)).toBeGreaterThan(moistAirEnthalpyJPerKg(airTempK, humidityRatio));
      expect(moistAirEnthalpyJPerKg(airTempK + warmer, humidityRatio)).toBeGreaterThan(moistAirEnthalpyJPerKg(airTempK, humidityRatio));
    }));
  });
});

describe('wind', () => {
  it('of zero has no direction: the angle at which it meets a vent changes nothing', () => {
    fc.assert(fc.property(double(0.1, 8), double(0.2, 2), tempK, tempK, double(0.05, 0.6), double(0.05, 0.6), (openAreaM2, stackHeightM, insideAirTempK, outsideAirTempK, one, other) => {
      const flow = (windEffectiveness: number): number => ventFlowM3PerS({ openAreaM2, stackHeightM }, { insideAirTempK, outsideAirTempK, windSpeedMPerS: 0, windEffectiveness });
      expect(flow(one)).toBe(flow(other));
      if (insideAirTempK === outsideAirTempK) expect(flow(one)).toBe(0);
    }));
  });

  it('never takes away from exchange or convection when it rises', () => {
    fc.assert(fc.property(double(0, 30), double(0, 10), double(0, 2), double(0, 0.5), (windMPerS, by, still, perWind) => {
      const leakage = { stillAirChangesPerHour: still, perWindAirChangesPerHour: perWind };
      expect(leakageM3PerS(leakage, 60, windMPerS + by)).toBeGreaterThanOrEqual(leakageM3PerS(leakage, 60, windMPerS));
      expect(outsideConvectionWPerM2K(windMPerS + by)).toBeGreaterThanOrEqual(outsideConvectionWPerM2K(windMPerS));
      const flow = (wind: number): number => ventFlowM3PerS({ openAreaM2: 1, stackHeightM: 1 }, { insideAirTempK: 280, outsideAirTempK: 275, windSpeedMPerS: wind });
      expect(flow(windMPerS + by)).toBeGreaterThanOrEqual(flow(windMPerS));
    }));
  });
});
