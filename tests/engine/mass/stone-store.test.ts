import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../../engine/chance/normal.js';
import { STONES } from '../../../engine/data/stones.js';
import { OutOfRangeError } from '../../../engine/errors.js';
import { heapSurfaceM2, stoneLumps } from '../../../engine/mass/stone-store.js';
import { sensibleStore } from '../../../engine/network/enthalpy.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { createNetwork, steadyConductor } from '../../../engine/network/network.js';

const ROCK = STONES.rock;

describe('stones in two lumps', () => {
  it('hold all of their heat while they are thinner than a night reaches', () => {
    const { skinJPerK, coreJPerK } = stoneLumps(ROCK, { volumeM3: 0.6, exposedM2: 3 });
    expect(skinJPerK + coreJPerK).toBeCloseTo(0.6 * ROCK.volumetricHeatCapacityJPerM3K, 3);
  });

  it('hold no more than 0.25 m of depth, unless a fan reaches all of it', () => {
    const store = { volumeM3: 3, exposedM2: 3 };
    const reached = stoneLumps(ROCK, store);
    expect(reached.skinJPerK + reached.coreJPerK).toBeCloseTo(0.25 * 3 * ROCK.volumetricHeatCapacityJPerM3K, 3);
    const blown = stoneLumps(ROCK, { ...store, deepestM: Infinity });
    expect(blown.skinJPerK + blown.coreJPerK).toBeCloseTo(3 * ROCK.volumetricHeatCapacityJPerM3K, 3);
  });

  it('a free heap has four faces of its cube', () => {
    expect(heapSurfaceM2(8)).toBeCloseTo(16, 9);
  });

  it('refuses what is no heap', () => {
    expect(() => stoneLumps(ROCK, { volumeM3: 0, exposedM2: 1 })).toThrow(OutOfRangeError);
    expect(() => stoneLumps(ROCK, { volumeM3: 1, exposedM2: 0 })).toThrow(OutOfRangeError);
  });

  /**
   * Against a half-infinite body in air of another temperature (Carslaw1959 sec. 2.7): flux h dT exp(h2 a t/k2) erfc(h sqrt(a t)/k), summed over the
   * night; two lumps are to stand for it to a sixth.
   */
  it.each(['rock', 'brick', 'concrete', 'earth'] as const)('give in 12 h within a sixth of what a thick body of it gives: %s', (kind) => {
    const stone = STONES[kind];
    const h = 7.3;
    const nightS = 12 * 3600;
    const stepS = 60;
    const alpha = stone.thermalConductivityWPerMK / stone.volumetricHeatCapacityJPerM3K;
    const flux = (timeS: number): number => {
      const x = (h * Math.sqrt(alpha * timeS)) / stone.thermalConductivityWPerMK;
      return h * Math.exp(x * x) * 2 * (1 - normalCdf(x * Math.SQRT2));
    };
    let exactJPerM2K = 0;
    for (let timeS = stepS / 2; timeS < nightS; timeS += stepS) exactJPerM2K += flux(timeS) * stepS;
    const { skinJPerK, coreJPerK, skinToCoreWPerK, surfaceWPerK } = stoneLumps(stone, { volumeM3: 10, exposedM2: 1 });
    const network = createNetwork({ nodes: [{ name: 'skin', store: sensibleStore(skinJPerK) }, { name: 'core', store: sensibleStore(coreJPerK) }], boundaries: ['air'], conductors: [steadyConductor(0, 1, skinToCoreWPerK), steadyConductor(0, 2, surfaceWPerK)], radiators: [] });
    const tempsK = Float64Array.from([281, 281, 280]);
    for (let timeS = 0; timeS < nightS; timeS += stepS) stepImplicit({ network, tempsK, stepS, sources: emptySources(2), updateSources: () => undefined });
    const givenJ = skinJPerK * (281 - tempsK[0]!) + coreJPerK * (281 - tempsK[1]!);
    expect(givenJ / exactJPerM2K).toBeGreaterThan(5 / 6);
    expect(givenJ / exactJPerM2K).toBeLessThan(7 / 6);
  });
});
