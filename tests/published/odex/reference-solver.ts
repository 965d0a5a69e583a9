import { createRequire } from 'node:module';

/** The part of odex 2.0.4 (Hairer's extrapolation code, CommonJS without types) that the tests use. */
interface OdexSolver {
  relativeTolerance: number;
  absoluteTolerance: number;
  denseOutput: boolean;
  maxSteps: number;
  grid(step: number, out: (x: number, y: readonly number[]) => void): unknown;
  solve(derivative: (x: number, y: readonly number[]) => number[], x: number, y: readonly number[], xEnd: number, out: unknown): unknown;
}
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => OdexSolver };

const RELATIVE = 1e-12;

/** A system of ordinary differential equations through time, with its values at even intervals; `scale` is the size of a value that matters. */
export function odexAt(derivative: (timeS: number, state: readonly number[]) => number[], start: readonly number[], time: { durationS: number; everyS: number; scale: number }): readonly (readonly number[])[] {
  const solver = new Solver(start.length);
  solver.relativeTolerance = RELATIVE;
  solver.absoluteTolerance = RELATIVE * time.scale;
  solver.denseOutput = true;
  solver.maxSteps = 1e7;
  const found: number[][] = [];
  solver.solve(derivative, 0, start, time.durationS, solver.grid(time.everyS, (timeS, state) => {
    if (timeS > 0) found.push([...state]);
  }));
  return found;
}
