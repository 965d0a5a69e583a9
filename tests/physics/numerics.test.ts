import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dewPointOverWaterK, frostPointK, saturationSlopeAtSurfacePaPerK, saturationVapourPressureAtSurfacePa, saturationVapourPressureOverIcePa, saturationVapourPressureOverWaterPa } from '../../engine/air/saturation-magnus.js';
import { humidityRatioKgPerKg, vapourPressureFromHumidityRatioPa } from '../../engine/air/moist-air.js';
import { planeIndex, type LongwaveEnclosure } from '../../engine/cover/longwave-enclosure.js';
import { longwaveExchangeAreasM2 } from '../../engine/cover/longwave-exchange.js';
import { waterStore } from '../../engine/mass/water-drum.js';
import { heatOfStoreJ, sensibleStore, slopeOfStoreJPerK, tempOfStoreK, type HeatStore } from '../../engine/network/enthalpy.js';
import { solveInPlace, sparseSystem } from '../../engine/network/sparse-system.js';
import { ZERO_CELSIUS_K } from '../../engine/units.js';

const STORES: readonly HeatStore[] = [waterStore(208), sensibleStore(1e5), { thawedJPerK: 2.3e6, frozenJPerK: 1.7e6, latentJ: 8e7, freezingBandK: 1 }];
const tempK = fc.double({ min: 233.15, max: 323.15, noNaN: true });
const unit = fc.double({ min: 0, max: 1, noNaN: true });

describe('saturation', () => {
  it('has a slope that finite differences confirm', () => {
    fc.assert(
      fc.property(tempK.filter((value) => Math.abs(value - ZERO_CELSIUS_K) > 0.01), (value) => {
        const stepK = 1e-3;
        const difference = (saturationVapourPressureAtSurfacePa(value + stepK) - saturationVapourPressureAtSurfacePa(value - stepK)) / (2 * stepK);
        expect(saturationSlopeAtSurfacePaPerK(value) / difference).toBeCloseTo(1, 6);
      }),
    );
  });

  it('comes back from dew point, frost point and humidity ratio', () => {
    fc.assert(
      fc.property(tempK, fc.double({ min: 70_000, max: 105_000, noNaN: true }), (value, pressurePa) => {
        const overWater = saturationVapourPressureOverWaterPa(value);
        expect(dewPointOverWaterK(overWater)).toBeCloseTo(value, 9);
        if (value < ZERO_CELSIUS_K) expect(frostPointK(saturationVapourPressureOverIcePa(value))).toBeCloseTo(value, 9);
        expect(vapourPressureFromHumidityRatioPa(humidityRatioKgPerKg(overWater, pressurePa), pressurePa) / overWater).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('heat stores that freeze', () => {
  it('give the temperature back from their heat, and their slope by finite differences', () => {
    fc.assert(
      fc.property(tempK, fc.constantFrom(...STORES), (value, store) => {
        expect(tempOfStoreK(store, heatOfStoreJ(store, value))).toBeCloseTo(value, 8);
        const stepK = 1e-4;
        const nearKink = [ZERO_CELSIUS_K, ZERO_CELSIUS_K - store.freezingBandK].some((kink) => Math.abs(value - kink) < 2 * stepK);
        const difference = (heatOfStoreJ(store, value + stepK) - heatOfStoreJ(store, value - stepK)) / (2 * stepK);
        if (!nearKink) expect(slopeOfStoreJPerK(store, value) / difference).toBeCloseTo(1, 5);
      }),
    );
  });

  it('hold more heat the warmer they are', () => {
    fc.assert(fc.property(tempK, tempK, fc.constantFrom(...STORES), (a, b, store) => (a < b ? heatOfStoreJ(store, a) < heatOfStoreJ(store, b) : true)));
  });
});

/** Plain Gaussian elimination with partial pivoting, for comparison. */
function solvedDense(matrix: readonly (readonly number[])[], rightSide: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, rightSide[i]!]);
  const size = rows.length;
  for (let k = 0; k < size; k += 1) {
    const pivot = rows.slice(k).reduce((best, row, i) => (Math.abs(row[k]!) > Math.abs(rows[best]![k]!) ? k + i : best), k);
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    for (let i = k + 1; i < size; i += 1) {
      const factor = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= size; j += 1) rows[i]![j]! -= factor * rows[k]![j]!;
    }
  }
  const solution = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i -= 1) solution[i] = (rows[i]![size]! - rows[i]!.slice(i + 1, size).reduce((sum, value, j) => sum + value * solution[i + 1 + j]!, 0)) / rows[i]![i]!;
  return solution;
}

describe('sparse system', () => {
  it('solves random networks of conductances as plain elimination does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }).chain((size) =>
          fc.record({
            size: fc.constant(size),
            couplings: fc.array(fc.record({ a: fc.nat(size - 1), b: fc.nat(size - 1), ab: fc.double({ min: 0.01, max: 500, noNaN: true }), ba: fc.double({ min: 0.01, max: 500, noNaN: true }) }), { maxLength: 3 * size }),
            own: fc.array(fc.double({ min: 0.1, max: 1e4, noNaN: true }), { minLength: size, maxLength: size }),
            rightSide: fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: size, maxLength: size }),
          }),
        ),
        ({ size, couplings, own, rightSide }) => {
          const between = couplings.filter(({ a, b }) => a !== b);
          const system = sparseSystem(size, between.map(({ a, b }) => [a, b] as const));
          system.matrix.fill(0);
          system.rightSide.fill(0);
          const dense = Array.from({ length: size }, () => new Array<number>(size).fill(0));
          const add = (i: number, j: number, value: number): void => {
            dense[i]![j]! += value;
            system.matrix[i * size + j]! += value;
          };
          own.forEach((value, i) => add(i, i, value));
          for (const { a, b, ab, ba } of between) {
            // Dominant by columns, as in the house: what leaves one node stands on its diagonal.
            add(a, b, -ab);
            add(b, b, ab);
            add(b, a, -ba);
            add(a, a, ba);
          }
          system.rightSide.set(rightSide);
          const expected = solvedDense(dense, rightSide);
          const scale = Math.max(1, ...expected.map(Math.abs));
          solveInPlace(system).forEach((value, i) => expect(Math.abs(value - expected[i]!) / scale).toBeLessThan(1e-9));
        },
      ),
    );
  });
});

describe('longwave exchange', () => {
  // No plane is a perfect mirror: between two of those light would go to and fro for ever.
  const LEAST_EMISSIVITY = 0.02;
  const optics = fc.tuple(unit, unit).map(([a, b]) => {
    const transmittance = a * (1 - LEAST_EMISSIVITY);
    return { transmittance, emissivity: LEAST_EMISSIVITY + b * (1 - transmittance - LEAST_EMISSIVITY) };
  });
  const enclosure = fc
    .record({ films: fc.array(optics, { minLength: 1, maxLength: 5 }), curtain: fc.option(optics), wallShare: fc.option(fc.double({ min: 0.05, max: 1, noNaN: true })), floorShare: fc.double({ min: 0.3, max: 1, noNaN: true }), patches: fc.array(fc.record({ areaM2: fc.double({ min: 0.5, max: 30, noNaN: true }), emissivity: fc.double({ min: 0.7, max: 1, noNaN: true }), covers: fc.array(optics, { maxLength: 2 }) }), { minLength: 1, maxLength: 4 }) })
    .map(({ films, curtain, wallShare, floorShare, patches }): LongwaveEnclosure => {
      const floorM2 = patches.reduce((sum, patch) => sum + patch.areaM2, 0);
      const openingAreaM2 = floorM2 * Math.hypot(1, wallShare ?? 0);
      return { films, curtain, patches, wall: wallShare === null ? null : { areaM2: wallShare * floorM2, emissivity: 0.9, openingAreaM2 }, coverAreaM2: openingAreaM2 / floorShare };
    });

  it('is mutual, never negative, and no plane takes more than its area lets it', () => {
    fc.assert(
      fc.property(enclosure, (given) => {
        const { count, surroundings } = planeIndex(given);
        const areas = longwaveExchangeAreasM2(given);
        for (let n = 0; n < count; n += 1) {
          let taken = 0;
          for (let m = 0; m < count; m += 1) {
            expect(areas[n * count + m]).toBe(areas[m * count + n]);
            expect(areas[n * count + m]!).toBeGreaterThanOrEqual(-1e-9);
            taken += areas[n * count + m]!;
          }
          if (n !== surroundings) expect(taken).toBeLessThanOrEqual(2 * given.coverAreaM2 + 1e-6);
        }
      }),
    );
  });
});
