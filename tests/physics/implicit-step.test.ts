import { describe, expect, it } from 'vitest';
import { heatOfStoreJ, MASSLESS, sensibleStore, slopeOfStoreJPerK, tempOfStoreK, type HeatStore } from '../../engine/network/enthalpy.js';
import { emptySources, stepImplicit, type Sources } from '../../engine/network/implicit-step.js';
import { createNetwork, steadyConductor, type Conductor, type Radiator } from '../../engine/network/network.js';
import { sparseSystem } from '../../engine/network/sparse-system.js';
import { ZERO_CELSIUS_K } from '../../engine/units.js';

interface Given {
  readonly stores: readonly HeatStore[];
  readonly conductors?: readonly Conductor[];
  readonly radiators?: readonly Radiator[];
  /** Nodes, then boundaries. */
  readonly tempsK: readonly number[];
  readonly stepS?: number;
  readonly sources?: (tempsK: Float64Array, sources: Sources) => void;
}

function stepOnce(given: Given): { tempsK: Float64Array; iterations: number } {
  const { stores, conductors = [], radiators = [] } = given;
  const network = createNetwork({ nodes: stores.map((store, n) => ({ name: `body ${n}`, store })), boundaries: given.tempsK.slice(stores.length).map((_, k) => `boundary ${k}`), conductors, radiators });
  const tempsK = Float64Array.from(given.tempsK);
  const iterations = stepImplicit({ network, tempsK, stepS: given.stepS ?? 600, sources: emptySources(stores.length), updateSources: given.sources ?? (() => undefined) });
  return { tempsK, iterations };
}

/** Newton's method solves a linear system at once; one more iteration sees that nothing moves. */
const LINEAR_ITERATIONS = 2;
/** Near the answer each iteration doubles the digits: a difference of 30 K takes about four, and one to see it. */
const NEWTON_ITERATIONS = 6;

describe('a step of a linear network', () => {
  it('is backward Euler: T = (C/dt T0 + G Tb + P) / (C/dt + G), found at once', () => {
    const { tempsK, iterations } = stepOnce({ stores: [sensibleStore(6e5)], conductors: [steadyConductor(0, 1, 50)], tempsK: [290, 260], sources: (_, out) => (out.powerW[0] = 400) });
    expect(tempsK[0]).toBeCloseTo((1000 * 290 + 50 * 260 + 400) / 1050, 9);
    expect(iterations).toBe(LINEAR_ITERATIONS);
    expect(tempsK[1]).toBe(260);
  });

  it('is found at once when a source depends on its own temperature', () => {
    // 20 W/K more of coupling, to 280 K.
    const { tempsK, iterations } = stepOnce({ stores: [sensibleStore(6e5)], conductors: [steadyConductor(0, 1, 50)], tempsK: [290, 260], sources: (temps, out) => {
      out.powerW[0] = 20 * (280 - temps[0]!);
      out.slopeWPerK[0] = -20;
    } });
    expect(tempsK[0]).toBeCloseTo((1000 * 290 + 50 * 260 + 20 * 280) / 1070, 9);
    expect(iterations).toBe(LINEAR_ITERATIONS);
  });

  it('is found at once when a source depends on another temperature', () => {
    // Body 0 gets 5 W for each kelvin that body 1 stands over 270 K; nobody pays for it.
    const { tempsK, iterations } = stepOnce({ stores: [MASSLESS, MASSLESS], conductors: [steadyConductor(0, 1, 10), steadyConductor(1, 2, 30)], tempsK: [280, 280, 260], sources: (temps, out) => {
      out.powerW[0] = 5 * (temps[1]! - 270);
      out.crossFallWPerK[1] = -5;
    } });
    // Body 0: 10 (T1 - T0) + 5 (T1 - 270) = 0; body 1: 10 (T0 - T1) + 30 (260 - T1) = 0.
    expect(tempsK[1]).toBeCloseTo((30 * 260 - 5 * 270) / (30 - 5), 6);
    expect(tempsK[0]).toBeCloseTo((15 * tempsK[1]! - 5 * 270) / 10, 6);
    expect(iterations).toBe(LINEAR_ITERATIONS);
  });

  it('forgets the sources of the iteration before', () => {
    const { tempsK } = stepOnce({ stores: [MASSLESS], conductors: [steadyConductor(0, 1, 50)], tempsK: [290, 260], sources: (_, out) => {
      out.powerW[0]! += 100;
      out.slopeWPerK[0]! += 0;
    } });
    expect(tempsK[0]).toBeCloseTo(262, 9);
  });

  it('lets boundaries be coupled with each other, to no effect', () => {
    const alone = stepOnce({ stores: [sensibleStore(6e5)], conductors: [steadyConductor(0, 1, 50)], tempsK: [290, 260, 300] });
    const coupled = stepOnce({ stores: [sensibleStore(6e5)], conductors: [steadyConductor(0, 1, 50), steadyConductor(1, 2, 500)], radiators: [{ a: 2, b: 1, exchangeAreaM2: 50 }], tempsK: [290, 260, 300] });
    expect([...coupled.tempsK]).toEqual([...alone.tempsK]);
  });
});

describe('a step of a network that is not linear', () => {
  it('settles fast on longwave, whichever end is the boundary', () => {
    for (const [a, b] of [[0, 1], [1, 0]] as const) {
      const { tempsK, iterations } = stepOnce({ stores: [MASSLESS], radiators: [{ a, b, exchangeAreaM2: 10 }], tempsK: [300, 260] });
      expect(tempsK[0]).toBeCloseTo(260, 4);
      expect(iterations).toBeLessThanOrEqual(NEWTON_ITERATIONS);
    }
  });

  it('settles fast on longwave between two bodies', () => {
    const { tempsK, iterations } = stepOnce({ stores: [MASSLESS, MASSLESS], radiators: [{ a: 0, b: 1, exchangeAreaM2: 10 }, { a: 1, b: 2, exchangeAreaM2: 10 }, { a: 3, b: 0, exchangeAreaM2: 10 }], tempsK: [300, 300, 250, 290] });
    // Three equal resistances in series in T^4.
    expect(tempsK[0]! ** 4).toBeCloseTo(290 ** 4 - (290 ** 4 - 250 ** 4) / 3, -5);
    expect(tempsK[1]! ** 4).toBeCloseTo(290 ** 4 - (2 * (290 ** 4 - 250 ** 4)) / 3, -5);
    expect(iterations).toBeLessThanOrEqual(NEWTON_ITERATIONS);
  });

  it('settles fast on a conductance that grows with the difference, whichever end is the boundary', () => {
    for (const [a, b] of [[0, 1], [1, 0]] as const) {
      // 2 |dT| W/K carries 2 dT^2: 800 W need 20 K.
      const { tempsK, iterations } = stepOnce({ stores: [MASSLESS], conductors: [{ a, b, conductanceWPerK: (one, other) => 2 * Math.abs(one - other), dependsOnTemps: true }], tempsK: [310, 260], sources: (_, out) => (out.powerW[0] = 800) });
      expect(tempsK[0]).toBeCloseTo(280, 4);
      expect(iterations).toBeLessThanOrEqual(NEWTON_ITERATIONS + 1);
    }
  });

  it('settles fast on a conductance that depends on one of its ends', () => {
    // G = T1 - 250 W/K between a body held at 800 W and a massless one at 10 W/K over 260 K: T1 = 340, G = 90.
    const { tempsK, iterations } = stepOnce({ stores: [MASSLESS, MASSLESS], conductors: [{ a: 0, b: 1, conductanceWPerK: (_, other) => other - 250, dependsOnTemps: true }, steadyConductor(1, 2, 10)], tempsK: [350, 330, 260], sources: (_, out) => (out.powerW[0] = 800) });
    expect(tempsK[1]).toBeCloseTo(340, 4);
    expect(tempsK[0]).toBeCloseTo(340 + 800 / 90, 4);
    expect(iterations).toBeLessThanOrEqual(NEWTON_ITERATIONS);
  });
});

/** A heater of 5000 W that fades to nothing between 278 and 278.2 K. */
const LOW_K = 278;
const HIGH_K = 278.2;
function thermostat(temps: Float64Array, out: Sources, node = 0): void {
  const share = Math.min(1, Math.max(0, (HIGH_K - temps[node]!) / (HIGH_K - LOW_K)));
  out.powerW[node] = 5000 * share;
  out.slopeWPerK[node] = share > 0 && share < 1 ? -5000 / (HIGH_K - LOW_K) : 0;
  out.bands.push({ node, lowK: LOW_K, highK: HIGH_K });
}
/** 5000 (278.2 - T)/0.2 = 10 (T - 260). */
const HELD_K = (25_000 * HIGH_K + 10 * 260) / 25_010;

describe('a source that switches within a band', () => {
  it.each([250, 277.9, 278.1, 278.3, 300])('is caught in it, from %f K', (startK) => {
    const { tempsK, iterations } = stepOnce({ stores: [MASSLESS], conductors: [steadyConductor(0, 1, 10)], tempsK: [startK, 260], sources: (temps, out) => thermostat(temps, out) });
    expect(tempsK[0]).toBeCloseTo(HELD_K, 4);
    expect(iterations).toBeLessThanOrEqual(NEWTON_ITERATIONS);
  });

  it('stops no other body, and none that only moves within', () => {
    const other = stepOnce({ stores: [MASSLESS, MASSLESS], conductors: [steadyConductor(0, 2, 10), steadyConductor(1, 2, 10)], tempsK: [300, 260, 260], sources: (_, out) => void out.bands.push({ node: 1, lowK: LOW_K, highK: HIGH_K }) });
    expect(other).toMatchObject({ iterations: LINEAR_ITERATIONS });
    for (const [startK, endK] of [[278.1, 260], [278.1, 300], [270, 278.1], [270, 277], [290, 279]] as const) {
      expect(stepOnce({ stores: [MASSLESS], conductors: [steadyConductor(0, 1, 10)], tempsK: [startK, endK], sources: (_, out) => void out.bands.push({ node: 0, lowK: LOW_K, highK: HIGH_K }) }).iterations).toBe(LINEAR_ITERATIONS);
    }
  });

  it.each([278.3, 280.7, 281.7, 283])('is found from %d K where a loss is steep in a narrow band alone, so that a turn and two steps on lead back to where they began', (startK) => {
    // Over 280 K: 5 W/K below, 30 W/K through a tenth of a kelvin, 0.1 W/K above; the conductor has 0.1 W/K of it throughout.
    const { tempsK } = stepOnce({ stores: [MASSLESS], conductors: [steadyConductor(0, 1, 0.1)], tempsK: [startK, 280], sources: (temps, out) => {
      const overK = temps[0]! - 280;
      const lossW = overK < 0 ? 4.9 * overK : Math.min(overK, 0.1) * 29.9;
      out.powerW[0] = 0.9 - lossW;
      out.slopeWPerK[0] = overK < 0 ? -4.9 : overK < 0.1 ? -29.9 : 0;
    } });
    expect(tempsK[0]).toBeCloseTo(280 + 0.9 / 30, 4);
  });

  it('that has no answer says which bodies did not settle', () => {
    const flip = (temps: Float64Array, out: Sources): void => void (out.powerW[0] = temps[0]! < 280 ? 5000 : 0);
    expect(() => stepOnce({ stores: [MASSLESS], conductors: [steadyConductor(0, 1, 10)], tempsK: [300, 260], sources: flip })).toThrow(/body 0.*did not settle/u);
    let calls = 0;
    expect(() => stepOnce({ stores: [MASSLESS], conductors: [steadyConductor(0, 1, 10)], tempsK: [300, 260], sources: (_, out) => {
      calls += 1;
      out.powerW[0] = Number.NaN;
    } })).toThrow(/did not settle/u);
    expect(calls).toBe(1);
  });

  it('whose slope nobody knows is found by shorter moves', () => {
    // Falls by 30 W/K against a coupling of 10: whole moves swing ever wider.
    const { tempsK } = stepOnce({ stores: [MASSLESS], conductors: [steadyConductor(0, 1, 10)], tempsK: [300, 260], sources: (temps, out) => (out.powerW[0] = 30 * (280 - temps[0]!)) });
    expect(tempsK[0]).toBeCloseTo((30 * 280 + 10 * 260) / 40, 3);
  });
});

describe('a store that freezes', () => {
  const store: HeatStore = { thawedJPerK: 4000, frozenJPerK: 2000, latentJ: 300_000, freezingBandK: 0.5 };
  const bottomK = ZERO_CELSIUS_K - 0.5;

  it('holds frozen, latent and thawed heat one after the other', () => {
    expect(heatOfStoreJ(store, bottomK)).toBeCloseTo(0, 9);
    expect(heatOfStoreJ(store, bottomK - 3)).toBeCloseTo(-6000, 6);
    expect(heatOfStoreJ(store, ZERO_CELSIUS_K)).toBeCloseTo(300_000 + 0.5 * 3000, 6);
    expect(heatOfStoreJ(store, ZERO_CELSIUS_K + 2)).toBeCloseTo(300_000 + 1500 + 8000, 6);
    expect(slopeOfStoreJPerK(store, ZERO_CELSIUS_K - 0.25)).toBeCloseTo(3000 + 600_000, 6);
    expect(slopeOfStoreJPerK(store, bottomK - 1)).toBe(2000);
    expect(slopeOfStoreJPerK(store, ZERO_CELSIUS_K + 1)).toBe(4000);
    for (const tempK of [bottomK - 3, bottomK, bottomK + 0.1, ZERO_CELSIUS_K, ZERO_CELSIUS_K + 5]) expect(tempOfStoreK(store, heatOfStoreJ(store, tempK))).toBeCloseTo(tempK, 9);
  });

  it('does not pass its freezing until its latent heat is gone', () => {
    // 5 W/K to 20 K below, from just above: 600 s carry about 60 kJ of 300.
    const { tempsK } = stepOnce({ stores: [store], conductors: [steadyConductor(0, 1, 5)], tempsK: [ZERO_CELSIUS_K + 0.01, ZERO_CELSIUS_K - 20] });
    expect(tempsK[0]).toBeGreaterThan(bottomK);
    expect(tempsK[0]).toBeLessThan(ZERO_CELSIUS_K);
  });
});

describe('order of elimination', () => {
  const filled = (size: number, couplings: readonly (readonly [number, number])[]): number => sparseSystem(size, couplings).coupled.reduce((sum, rows) => sum + rows.length, 0);
  const SIZE = 12;
  const others = Array.from({ length: SIZE - 1 }, (_, i) => i + 1);

  // A tree taken apart from its leaves fills in nothing: each link is met once.
  it('meets each link of a star, a chain and a tree once', () => {
    expect(filled(SIZE, others.map((i) => [0, i] as const))).toBe(SIZE - 1);
    expect(filled(SIZE, others.map((i) => [SIZE - 1, i - 1] as const))).toBe(SIZE - 1);
    expect(filled(SIZE, others.map((i) => [i - 1, i] as const))).toBe(SIZE - 1);
    expect(filled(SIZE, others.map((i) => [i, (i - 1) >> 1] as const))).toBe(SIZE - 1);
  });

  it('takes each body once, and leaves a link of a body with itself out', () => {
    expect([...sparseSystem(SIZE, [[3, 3], [1, 2]]).order].toSorted((one, other) => one - other)).toEqual(Array.from({ length: SIZE }, (_, i) => i));
    expect(filled(SIZE, [[3, 3], [1, 2]])).toBe(1);
  });

  it('of a network leaves its boundaries out', () => {
    const network = createNetwork({ nodes: [{ name: 'one', store: MASSLESS }, { name: 'other', store: MASSLESS }], boundaries: ['outside'], conductors: [steadyConductor(0, 2, 1), steadyConductor(2, 1, 1)], radiators: [{ a: 1, b: 0, exchangeAreaM2: 1 }] });
    expect(network.system.coupled.flat()).toHaveLength(1);
  });
});
