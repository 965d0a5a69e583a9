import { createRequire } from 'node:module';
import { emptySources, stepImplicit } from '../../engine/network/implicit-step.js';
import { sensibleStore } from '../../engine/network/enthalpy.js';
import { createNetwork, steadyConductor } from '../../engine/network/network.js';
import { timed } from './timing.js';

/** The part of odex 2.0.4 (Hairer's extrapolation code, CommonJS) that is used here. */
interface OdexSolver {
  relativeTolerance: number;
  absoluteTolerance: number;
  denseOutput: boolean;
  maxSteps: number;
  grid(step: number, out: (x: number, y: readonly number[]) => void): unknown;
  solve(derivative: (x: number, y: readonly number[]) => number[], x: number, y: readonly number[], xEnd: number, out: unknown): { nEval: number };
}
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => OdexSolver };

/** A stiff linear network: lumps, links, one boundary (index = number of lumps) at a steady temperature. */
export interface StiffNetwork {
  readonly name: string;
  readonly capacitiesJPerK: readonly number[];
  readonly links: readonly (readonly [number, number, number])[];
  readonly startC: readonly number[];
  readonly outsideC: number;
}

/** Air over a mass: 109 s and 51 h. */
export const AIR_AND_MASS: StiffNetwork = { name: 'air and mass', capacitiesJPerK: [6e4, 2e7], links: [[0, 2, 150], [0, 1, 400]], startC: [12, 14], outsideC: -8 };

const SOIL_J_PER_K = [0.01, 0.02, 0.04, 0.08, 0.15, 0.3, 0.5].map((thicknessM) => thicknessM * 2.3e6 * 32);
const SOIL_W_PER_K = [0.015, 0.03, 0.06, 0.115, 0.225, 0.4].map((distanceM) => (1.2 * 32) / distanceM);
/** The reference house with its vapour, sky and films taken out: air, seven layers of soil, four drums. */
export const DRY_HOUSE: StiffNetwork = {
  name: 'dry house of nine lumps',
  capacitiesJPerK: [7.7e4, ...SOIL_J_PER_K, 4 * 8.71e5],
  links: [[0, 9, 200], [0, 1, 130], ...SOIL_W_PER_K.map((conductance, k) => [k + 1, k + 2, conductance] as const), [8, 0, 50]],
  startC: [4, 7, 8, 8, 8, 8, 8, 8, 10],
  outsideC: -8,
};

/** 0.15 mm of polyethylene over 70.5 m2 (920 kg/m3, 2300 J/(kg K), from memory): the house takes its films as massless, odex cannot. */
const FILM_J_PER_K = 70.5 * 0.15e-3 * 920 * 2300;
/** The same house behind two films; links as convection and longwave of a clear night sum up. */
export const FILM_HOUSE: StiffNetwork = {
  name: 'the same behind two films',
  capacitiesJPerK: [...DRY_HOUSE.capacitiesJPerK, FILM_J_PER_K, FILM_J_PER_K],
  links: [[0, 9, 150], [9, 10, 230], [10, 11, 800], [1, 9, 80], [1, 10, 60], [0, 11, 20], ...DRY_HOUSE.links.slice(1)],
  startC: [...DRY_HOUSE.startC, 0, -5],
  outsideC: -8,
};

const NIGHT_S = 14 * 3600;
const OUTPUT_S = 3600;

function implicitHourly(stiff: StiffNetwork, stepS: number): number[][] {
  const size = stiff.capacitiesJPerK.length;
  const network = createNetwork({ nodes: stiff.capacitiesJPerK.map((capacity, i) => ({ name: `lump ${i}`, store: sensibleStore(capacity) })), boundaries: ['outside'], conductors: stiff.links.map(([a, b, g]) => steadyConductor(a, b, g)), radiators: [] });
  const tempsK = Float64Array.from([...stiff.startC, stiff.outsideC], (value) => value + 273.15);
  const sources = emptySources(size);
  const hourly: number[][] = [];
  for (let timeS = stepS; timeS <= NIGHT_S; timeS += stepS) {
    stepImplicit({ network, tempsK, stepS, sources, updateSources: () => undefined });
    if (timeS % OUTPUT_S === 0) hourly.push(Array.from(tempsK.subarray(0, size), (value) => value - 273.15));
  }
  return hourly;
}

function odexHourly(stiff: StiffNetwork, tolerance: number): { hourly: number[][]; evaluations: number } {
  const size = stiff.capacitiesJPerK.length;
  const solver = new Solver(size);
  solver.relativeTolerance = 1e-14;
  solver.absoluteTolerance = tolerance;
  solver.denseOutput = true;
  solver.maxSteps = 1e6;
  const hourly: number[][] = [];
  const derivative = (_timeS: number, temps: readonly number[]): number[] => {
    const flows = new Array<number>(size).fill(0);
    for (const [a, b, conductance] of stiff.links) {
      const flow = conductance * ((b === size ? stiff.outsideC : temps[b]!) - temps[a]!);
      flows[a]! += flow;
      if (b < size) flows[b]! -= flow;
    }
    return flows.map((flow, i) => flow / stiff.capacitiesJPerK[i]!);
  };
  const { nEval } = solver.solve(derivative, 0, stiff.startC, NIGHT_S, solver.grid(OUTPUT_S, (timeS, temps) => {
    if (timeS > 0) hourly.push([...temps]);
  }));
  return { hourly, evaluations: nEval };
}

const worstK = (found: readonly (readonly number[])[], truth: readonly (readonly number[])[]): number => {
  let worst = 0;
  truth.forEach((temps, h) => temps.forEach((value, n) => (worst = Math.max(worst, Math.abs((found[h]?.[n] ?? Number.POSITIVE_INFINITY) - value)))));
  return worst;
};

export interface OdexComparison {
  readonly name: string;
  readonly stepS: number;
  readonly implicitErrorK: number;
  readonly implicitMs: number;
  readonly odexErrorK: number;
  readonly odexMs: number;
  readonly odexEvaluations: number;
  /** How many times longer the explicit code takes. */
  readonly ratio: number;
}

/** Both codes through 14 h at an equal worst error of the hourly temperatures: odex gets the loosest tolerance that is as good. */
export function compareWithOdex(stiff: StiffNetwork, stepS: number): OdexComparison {
  const truth = odexHourly(stiff, 1e-10).hourly;
  const implicitErrorK = worstK(implicitHourly(stiff, stepS), truth);
  let tolerance = 10;
  while (worstK(odexHourly(stiff, tolerance).hourly, truth) > implicitErrorK) tolerance /= 2;
  const odex = odexHourly(stiff, tolerance);
  const rounds = { warmUp: 20, measured: 60 };
  const implicitMs = timed(() => void implicitHourly(stiff, stepS), rounds).medianMs;
  const odexMs = timed(() => void odexHourly(stiff, tolerance), rounds).medianMs;
  return { name: stiff.name, stepS, implicitErrorK, implicitMs, odexErrorK: worstK(odex.hourly, truth), odexMs, odexEvaluations: odex.evaluations, ratio: odexMs / implicitMs };
}
