import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../../engine/errors.js';
import { heapConductancesWPerK, heapFaceM2, heapSteadyTempK, metabolicHeatW } from '../../../engine/heat/compost-heap.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';

const heatW = (volumeM3: number, ageDays: number, coreC: number): number => metabolicHeatW({ volumeM3, ageDays, coreTempK: celsiusToKelvin(coreC) }).powerW;

describe('heat that a heap makes', () => {
  it('is none before it is heaped up, frozen, or too hot to live', () => {
    expect([heatW(1, -3, 40), heatW(1, 0, 40), heatW(1, 10, 0), heatW(1, 10, -5), heatW(1, 10, 72), heatW(1, 10, 90)]).toEqual([0, 0, 0, 0, 0, 0]);
  });

  it('goes with the volume, rises through its first days and halves every twenty', () => {
    expect(heatW(3, 10, 40)).toBeCloseTo(3 * heatW(1, 10, 40), 9);
    expect(heatW(1, 3, 40)).toBeGreaterThan(heatW(1, 1, 40));
    expect(heatW(1, 45, 40) / heatW(1, 25, 40)).toBeCloseTo(0.5, 9);
  });

  it('lies in its best days between the passive piles (50) and manure in full heat (250 W/m3)', () => {
    expect(heatW(1, 5, 45)).toBeGreaterThan(50);
    expect(heatW(1, 5, 45)).toBeLessThanOrEqual(250);
  });

  it('changes with the temperature of its core as its slope says', () => {
    fc.assert(fc.property(fc.double({ min: -5, max: 80, noNaN: true }).filter((c) => [0, 20, 60, 72].every((kink) => Math.abs(c - kink) > 0.01)), (coreC) => {
      const stepK = 1e-3;
      const difference = (heatW(1, 10, coreC + stepK) - heatW(1, 10, coreC - stepK)) / (2 * stepK);
      expect(metabolicHeatW({ volumeM3: 1, ageDays: 10, coreTempK: celsiusToKelvin(coreC) }).slopeWPerK).toBeCloseTo(difference, 5);
    }));
  });

  it('refuses a handful and a landfill', () => {
    expect(() => heatW(0.01, 5, 40)).toThrow(OutOfRangeError);
    expect(() => heatW(500, 5, 40)).toThrow(OutOfRangeError);
  });
});

describe('heat that a heap loses', () => {
  it('goes through six faces of its cube, a larger one losing less for each m3', () => {
    const { oneFace, freeFaces } = heapConductancesWPerK(1);
    expect(freeFaces).toBeCloseTo(5 * oneFace, 9);
    expect(heapFaceM2(8)).toBeCloseTo(4, 9);
    expect(heapConductancesWPerK(8).freeFaces / 8).toBeLessThan(heapConductancesWPerK(1).freeFaces);
  });

  it('balances what it makes at the temperature that it holds by itself', () => {
    const airTempK = celsiusToKelvin(2);
    const tempK = heapSteadyTempK({ volumeM3: 1, ageDays: 15, airTempK });
    const { oneFace, freeFaces } = heapConductancesWPerK(1);
    expect((oneFace + freeFaces) * (tempK - airTempK)).toBeCloseTo(heatW(1, 15, 40), 6);
    expect(kelvinToCelsius(tempK)).toBeGreaterThan(25);
    expect(kelvinToCelsius(heapSteadyTempK({ volumeM3: 10, ageDays: 6, airTempK }))).toBeLessThanOrEqual(60 + 1e-9);
  });
});
