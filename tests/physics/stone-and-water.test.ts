import { describe, expect, it } from 'vitest';
import { STONES } from '../../engine/data/stones.js';
import { OutOfRangeError } from '../../engine/errors.js';
import { packedBedEffectiveness, packedBedNusselt, packedBedWPerM3K } from '../../engine/mass/packed-bed.js';
import { heapSurfaceM2, stoneLumps } from '../../engine/mass/stone-store.js';
import { drumConductanceWPerK, waterStore } from '../../engine/mass/water-drum.js';

const GRANITE = { ...STONES.concrete, thermalConductivityWPerMK: 2.8, volumetricHeatCapacityJPerM3K: 2.1e6 };

describe('two lumps of stone', () => {
  it('hold together what a thin slab holds, half and half', () => {
    const { skinJPerK, coreJPerK } = stoneLumps(GRANITE, { volumeM3: 0.1, exposedM2: 2 });
    expect(skinJPerK + coreJPerK).toBeCloseTo(2.1e6 * 0.1, 6);
    expect(skinJPerK).toBeCloseTo(coreJPerK, 6);
  });

  it('hold all of a thick block only where something reaches all of it', () => {
    const block = { volumeM3: 2, exposedM2: 2 };
    const reached = stoneLumps(GRANITE, { ...block, deepestM: 1 });
    const night = stoneLumps(GRANITE, block);
    expect(reached.skinJPerK + reached.coreJPerK).toBeCloseTo(2.1e6 * 2, 6);
    expect(reached.skinJPerK).toBeLessThan(reached.coreJPerK);
    expect(night.skinJPerK).toBeCloseTo(reached.skinJPerK, 6);
    expect(night.skinJPerK + night.coreJPerK).toBeLessThan(0.5 * (reached.skinJPerK + reached.coreJPerK));
    expect(stoneLumps(GRANITE, { volumeM3: 20, exposedM2: 2 })).toEqual(night);
  });

  it('are joined through the stone between their middles, k A / (depth/2)', () => {
    expect(stoneLumps(GRANITE, { volumeM3: 0.1, exposedM2: 2 }).skinToCoreWPerK).toBeCloseTo((2.8 * 2) / 0.025, 6);
    expect(stoneLumps(GRANITE, { volumeM3: 1, exposedM2: 2, deepestM: 0.5 }).skinToCoreWPerK).toBeCloseTo((2.8 * 2) / 0.25, 6);
  });

  it('lose heat through half of the skin and a film of 7.3 W/(m2 K) in series', () => {
    // Convection 2.7 and radiation 4.6 W/(m2 K) (Churchill1975, evaluated with the ht library).
    const slab = { volumeM3: 0.1, exposedM2: 2 };
    const resistance = (conductivity: number): number => slab.exposedM2 / stoneLumps({ ...GRANITE, thermalConductivityWPerMK: conductivity }, slab).surfaceWPerK;
    expect(resistance(1) - resistance(4)).toBeCloseTo((0.025 / 2) * (1 / 1 - 1 / 4), 9);
    expect(1 / resistance(1e9)).toBeCloseTo(2.7 + 4.6, 6);
  });
});

describe('a heap', () => {
  it('of 8 m3 is a cube of 2 m with four faces free', () => {
    expect(heapSurfaceM2(8)).toBeCloseTo(16, 9);
  });
});

describe('a bed of stones', () => {
  const BED = { massFlowKgPerS: 0.06, volumeM3: 0.2, sectionM2: 0.5, stoneSizeM: 0.05 };
  const missed = (bed: typeof BED): number => 1 - packedBedEffectiveness(bed);

  // Nu at Re 1000 and Pr 0.71 by hand: 2 + 1.1 x 0.8921 x 63.10 = 63.92.
  it('has Nu 63.9 at Re 1000, and 2 in still air', () => {
    expect(packedBedNusselt(1000)).toBeCloseTo(63.92, 1);
    expect(packedBedNusselt(0)).toBe(2);
  });

  // In still air Nu is 2; spheres of 5 cm have 6 x 0.6 / 0.05 = 72 m2 in a m3; 72 x 2 x 0.025 / 0.05 = 72.
  it('passes 72 W/(m3 K) between still air and stones of 5 cm', () => {
    expect(packedBedWPerM3K(0, 0.05)).toBeCloseTo(72, 6);
    expect(() => packedBedWPerM3K(2.1, 0.05)).toThrow(OutOfRangeError);
    expect(() => packedBedWPerM3K(0.1, 0.6)).toThrow(OutOfRangeError);
  });

  it('leaves of the difference in one what its halves leave in series', () => {
    expect(missed(BED)).toBeCloseTo(missed({ ...BED, volumeM3: 0.1 }) ** 2, 12);
    expect(missed({ ...BED, volumeM3: 20 })).toBeLessThan(1e-6);
  });

  it('of little volume takes h V of each kelvin of difference', () => {
    const thin = { ...BED, volumeM3: 1e-6 };
    const takenWPerK = packedBedEffectiveness(thin) * BED.massFlowKgPerS * 1006;
    expect(takenWPerK / (packedBedWPerM3K(0.06 / 0.5, 0.05) * 1e-6)).toBeCloseTo(1, 3);
  });
});

describe('water', () => {
  it('as ice holds 2040 J/(kg K), and melts with 334 kJ/kg (Incropera2007 table A.3)', () => {
    expect(waterStore(208).frozenJPerK / (208 * 2040)).toBeCloseTo(1, 2);
    expect(waterStore(208).latentJ / (208 * 334e3)).toBeCloseTo(1, 2);
  });

  it('in eight times the drum has four times the surface to pass heat', () => {
    expect(drumConductanceWPerK(800) / drumConductanceWPerK(100)).toBeCloseTo(4, 9);
  });

  it('in an upright drum of 208 L passes 1.83 m2 x 6.9 W/(m2 K) (Churchill1975, evaluated with the ht library)', () => {
    expect(drumConductanceWPerK(208)).toBeCloseTo(1.83 * 6.9, 1);
  });
});
