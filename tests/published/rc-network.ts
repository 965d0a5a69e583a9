import { MASSLESS, sensibleStore } from '../../engine/network/enthalpy.js';
import { emptySources, stepImplicit } from '../../engine/network/implicit-step.js';
import { createNetwork, steadyConductor, type Radiator } from '../../engine/network/network.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../engine/units.js';

/** A network of lumps (capacity 0 for a massless one) and boundaries; boundary k has the index lumps + k. */
export interface RcNetwork {
  readonly capacitiesJPerK: readonly number[];
  readonly startC: readonly number[];
  readonly links: readonly (readonly [a: number, b: number, conductanceWPerK: number])[];
  readonly boundariesC: readonly ((timeS: number) => number)[];
  readonly powerW?: (timeS: number, node: number) => number;
  readonly radiators?: readonly Radiator[];
}

/** Runs the engine's backward Euler on it; `observe` gets the temperatures in degrees C after each step. */
export function runRc(rc: RcNetwork, time: { durationS: number; stepS: number }, observe: (timeS: number, tempsC: readonly number[]) => void): void {
  const size = rc.capacitiesJPerK.length;
  const network = createNetwork({
    nodes: rc.capacitiesJPerK.map((capacity, i) => ({ name: `lump ${i}`, store: capacity === 0 ? MASSLESS : sensibleStore(capacity) })),
    boundaries: rc.boundariesC.map((_, k) => `boundary ${k}`),
    conductors: rc.links.map(([a, b, conductance]) => steadyConductor(a, b, conductance)),
    radiators: [...(rc.radiators ?? [])],
  });
  const tempsK = Float64Array.from([...rc.startC.map(celsiusToKelvin), ...rc.boundariesC.map(() => 0)]);
  const sources = emptySources(size);
  const { powerW } = rc;
  const steps = Math.round(time.durationS / time.stepS);
  for (let step = 1; step <= steps; step += 1) {
    const timeS = step * time.stepS;
    rc.boundariesC.forEach((boundaryC, k) => (tempsK[size + k] = celsiusToKelvin(boundaryC(timeS))));
    stepImplicit({
      network,
      tempsK,
      stepS: time.stepS,
      sources,
      updateSources: (_, out) => {
        if (powerW) for (let n = 0; n < size; n += 1) out.powerW[n] = powerW(timeS, n);
      },
    });
    observe(timeS, Array.from(tempsK.subarray(0, size), kelvinToCelsius));
  }
}

/**
 * Temperatures at given instants by Richardson extrapolation of backward Euler: twice the solution of half the step less that of the
 * whole step, which cancels its first-order error. What is left is the network's own: stores, conductors, linear system.
 */
export function extrapolatedRc(rc: RcNetwork, instantsS: readonly number[], stepS: number): ReadonlyMap<number, readonly number[]> {
  const at = (step: number): Map<number, readonly number[]> => {
    const found = new Map<number, readonly number[]>([[0, rc.startC]]);
    runRc(rc, { durationS: Math.max(...instantsS), stepS: step }, (timeS, tempsC) => {
      const instant = instantsS.find((candidate) => Math.abs(candidate - timeS) < step / 4);
      if (instant !== undefined) found.set(instant, tempsC);
    });
    return found;
  };
  const [whole, half] = [at(stepS), at(stepS / 2)];
  return new Map(instantsS.map((instant) => [instant, half.get(instant)!.map((value, n) => 2 * value - whole.get(instant)![n]!)]));
}

/** Computes a value when it is first asked for and keeps it: the rows of a table share one run. */
export function once<T>(compute: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => (kept ??= { value: compute() }).value;
}
