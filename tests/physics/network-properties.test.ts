import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../engine/constants.js';
import { naturalConvectionWPerM2K, UNSTABLE_W_PER_M2K43 } from '../../engine/cover/convection.js';
import { heatOfStoreJ, MASSLESS, sensibleStore, type HeatStore } from '../../engine/network/enthalpy.js';
import { emptySources, stepImplicit } from '../../engine/network/implicit-step.js';
import { createNetwork, type Conductor, type Radiator } from '../../engine/network/network.js';

/** What holds for every network of bodies, whatever it stands for. Random bodies, some massless, some that freeze, with contact, convection and longwave between them. */
interface RandomNetwork {
  readonly stores: readonly HeatStore[];
  readonly startK: readonly number[];
  readonly boundariesK: readonly number[];
  readonly conductors: readonly Conductor[];
  readonly radiators: readonly Radiator[];
  readonly powerW: readonly number[];
  readonly stepS: number;
}

const double = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const tempK = double(248, 303);
// A freezing body is large enough for its step, as soil layers and drums are: where latent heat over band and step is less than what the
// couplings carry, a move along the heat leaps across the whole band.
const store: fc.Arbitrary<HeatStore> = fc.oneof(
  fc.constant(MASSLESS),
  double(1e4, 1e7).map(sensibleStore),
  fc.record({ thawedJPerK: double(1e5, 1e6), latentJ: double(5e6, 5e7), freezingBandK: double(0.2, 1) }).map((drawn) => ({ ...drawn, frozenJPerK: drawn.thawedJPerK / 2 })),
);

const BOUNDARIES = 2;
const network: fc.Arbitrary<RandomNetwork> = fc.integer({ min: 1, max: 6 }).chain((size) => {
  const end = fc.nat(size + BOUNDARIES - 1);
  const pair = fc.tuple(end, end).filter(([a, b]) => a !== b && (a < size || b < size));
  const contact = fc.tuple(pair, double(0.5, 300)).map(([[a, b], conductance]): Conductor => ({ a, b, conductanceWPerK: () => conductance, dependsOnTemps: false }));
  const convection = fc.tuple(pair, double(1, 60)).map(([[a, b], areaM2]): Conductor => ({ a, b, conductanceWPerK: (tempA, tempB) => areaM2 * naturalConvectionWPerM2K(tempA - tempB, UNSTABLE_W_PER_M2K43), dependsOnTemps: true }));
  // Every body hangs on a boundary, so that massless ones have an answer.
  const anchors = fc.array(double(0.5, 300), { minLength: size, maxLength: size }).map((values) => values.map((conductance, a): Conductor => ({ a, b: size + (a % BOUNDARIES), conductanceWPerK: () => conductance, dependsOnTemps: false })));
  return fc.record({
    stores: fc.array(store, { minLength: size, maxLength: size }),
    startK: fc.array(tempK, { minLength: size, maxLength: size }),
    boundariesK: fc.array(tempK, { minLength: BOUNDARIES, maxLength: BOUNDARIES }),
    conductors: fc.tuple(anchors, fc.array(fc.oneof(contact, convection), { maxLength: 8 })).map(([held, more]) => [...held, ...more]),
    radiators: fc.array(fc.tuple(pair, double(0.5, 60)).map(([[a, b], exchangeAreaM2]) => ({ a, b, exchangeAreaM2 })), { maxLength: 5 }),
    powerW: fc.array(double(0, 3000), { minLength: size, maxLength: size }),
    stepS: fc.constantFrom(60, 300, 600),
  });
});

/** Temperatures after one step, boundaries included. */
function stepped(given: RandomNetwork, changes: Partial<RandomNetwork> = {}): Float64Array {
  const { stores, startK, boundariesK, conductors, radiators, powerW, stepS } = { ...given, ...changes };
  const built = createNetwork({ nodes: stores.map((one, i) => ({ name: `body ${i}`, store: one })), boundaries: boundariesK.map((_, i) => `boundary ${i}`), conductors, radiators });
  const tempsK = Float64Array.from([...startK, ...boundariesK]);
  stepImplicit({ network: built, tempsK, stepS, sources: emptySources(stores.length), updateSources: (_, out) => powerW.forEach((power, n) => (out.powerW[n] = power)) });
  return tempsK;
}

const NO_POWER = (given: RandomNetwork): readonly number[] => given.stores.map(() => 0);
/** The solver stops when no temperature moves by more than 1e-5 K. */
const SOLVED_K = 1e-3;

describe('any network of bodies', () => {
  it('keeps heat: what flows in over a step is what the bodies hold more at its end', () => {
    fc.assert(fc.property(network, (given) => {
      const after = stepped(given);
      const size = given.stores.length;
      const flowW = [...given.powerW];
      let movedW = given.powerW.reduce((sum, power) => sum + power, 1);
      // The solver settles to 1e-5 K, whatever flows: a coupling counts for what it carries over 1 K at least.
      const flow = (a: number, b: number, conductanceWPerK: number, toAW: number): void => {
        movedW += Math.max(conductanceWPerK, Math.abs(toAW));
        if (a < size) flowW[a]! += toAW;
        if (b < size) flowW[b]! -= toAW;
      };
      for (const { a, b, conductanceWPerK } of given.conductors) flow(a, b, conductanceWPerK(after[a]! + 1, after[a]!), conductanceWPerK(after[a]!, after[b]!) * (after[b]! - after[a]!));
      for (const { a, b, exchangeAreaM2 } of given.radiators) flow(a, b, 4 * exchangeAreaM2 * STEFAN_BOLTZMANN_W_PER_M2K4 * after[a]! ** 3, exchangeAreaM2 * STEFAN_BOLTZMANN_W_PER_M2K4 * (after[b]! ** 4 - after[a]! ** 4));
      given.stores.forEach((one, n) => {
        const storedW = (heatOfStoreJ(one, after[n]!) - heatOfStoreJ(one, given.startK[n]!)) / given.stepS;
        expect(Math.abs(flowW[n]! - storedW) / (movedW + Math.abs(storedW))).toBeLessThan(1e-4);
      });
    }), { numRuns: 300 });
  });

  it('without sources ends between the coldest and the warmest of its start and its boundaries', () => {
    fc.assert(fc.property(network, (given) => {
      // Massless bodies have no past.
      const past = [...given.startK.filter((_, n) => given.stores[n] !== MASSLESS), ...given.boundariesK];
      for (const value of stepped(given, { powerW: NO_POWER(given) })) {
        expect(value).toBeGreaterThan(Math.min(...past) - SOLVED_K);
        expect(value).toBeLessThan(Math.max(...past) + SOLVED_K);
      }
    }), { numRuns: 300 });
  });

  it('is nowhere colder for a warmer boundary, a warmer start or more heat', () => {
    fc.assert(fc.property(network, double(0, 10), double(0, 10), double(0, 2000), fc.nat(), (given, boundaryByK, startByK, moreW, which) => {
      const before = stepped(given);
      const one = which % given.stores.length;
      const cases: Partial<RandomNetwork>[] = [
        { boundariesK: given.boundariesK.map((value, k) => (k === which % BOUNDARIES ? value + boundaryByK : value)) },
        { startK: given.startK.map((value, n) => (n === one ? value + startByK : value)) },
        { powerW: given.powerW.map((value, n) => (n === one ? value + moreW : value)) },
      ];
      for (const changes of cases) stepped(given, changes).forEach((value, n) => expect(value).toBeGreaterThan(before[n]! - SOLVED_K));
    }), { numRuns: 200 });
  });

  it('is nowhere colder for more insulation against a boundary that is colder than all else', () => {
    fc.assert(fc.property(network, double(0, 1), (given, share) => {
      const coldest = Math.min(...given.startK, ...given.boundariesK) - 5;
      const cold: RandomNetwork = { ...given, boundariesK: [coldest, given.boundariesK[1]!] };
      const boundary = given.stores.length;
      const insulated = cold.conductors.map((conductor): Conductor => (conductor.a === boundary || conductor.b === boundary ? { ...conductor, conductanceWPerK: (tempA, tempB) => share * conductor.conductanceWPerK(tempA, tempB) } : conductor));
      // A massless body must keep a hold.
      if (share < 0.01) return;
      const before = stepped(cold);
      stepped(cold, { conductors: insulated }).forEach((value, n) => expect(value).toBeGreaterThan(before[n]! - SOLVED_K));
    }), { numRuns: 200 });
  });

  it('stays where it is when all has one temperature, whatever the step', () => {
    fc.assert(fc.property(network, tempK, (given, evenK) => {
      for (const stepS of [60, 600, 3600]) for (const value of stepped(given, { startK: given.startK.map(() => evenK), boundariesK: given.boundariesK.map(() => evenK), powerW: NO_POWER(given), stepS })) expect(Math.abs(value - evenK)).toBeLessThan(1e-6);
    }));
  });

  it('comes to one steady state, wherever it starts', () => {
    fc.assert(fc.property(network, (given) => {
      const ENDLESS_S = 1e13;
      const stores = given.stores.map((one) => (one.latentJ === 0 ? one : sensibleStore(one.thawedJPerK)));
      const once = stepped(given, { stores, stepS: ENDLESS_S });
      const fromElsewhere = stepped(given, { stores, stepS: ENDLESS_S, startK: given.startK.map((value) => 550 - value) });
      fromElsewhere.forEach((value, n) => expect(Math.abs(value - once[n]!)).toBeLessThan(SOLVED_K));
    }), { numRuns: 100 });
  });
});
