import { FITTED, type Whitened } from './parameters.js';

/** One accepted reading beside what the house at the prior point gave, and how that moves with each parameter. */
export interface CalibrationRow {
  /** Tells readings apart. */
  readonly key: string;
  readonly timeS: number;
  readonly thermometer: string;
  readonly readingK: number;
  readonly atPriorK: number;
  readonly slopes: readonly number[];
  /** A low that was not reset says only that it was no warmer. */
  readonly censored: boolean;
}

export interface Calibration {
  readonly z: Whitened;
  /** Covariance of z alone, row by row. */
  readonly covariance: readonly (readonly number[])[];
  /** How each thermometer reads against the air (K). */
  readonly thermometerK: Readonly<Record<string, number>>;
  readonly residual: { readonly scaleK: number; readonly degreesOfFreedom: number };
  readonly readings: number;
}

/** What the model cannot say with every parameter right, and a thermometer's rounding (prior of this project, as strong as six readings). */
export const RESIDUAL_PRIOR = { scaleK: 0.8, readings: 6 } as const;
/** A garden thermometer against the air (prior of this project: 0.5 K). */
const THERMOMETER_SPREAD_K = 0.5;
const STUDENT_FREEDOM = 4;
const MOST_ROUNDS = 8;
const SETTLED = 0.005;
const HIGHEST_LEVERAGE = 0.6;
/** Readings of one night share what the weather did: together they count less than apart (prior of this project, correlation 0.6). */
const SAME_NIGHT_CORRELATION = 0.6;
const NIGHT_S = 43_200;
const HALF_LIFE_S = 60 * 86_400;

/**
 * Most probable parameters and their covariance: Gauss-Newton on whitened parameters with their priors, every reading weighed by how well it fits.
 * Units: whitened; K.
 * Valid: any number of rows, none gives the prior.
 * Outside: not applicable.
 * Source: robust estimation with Student-t weights (Lange1989) over a Gaussian prior; Laplace covariance.
 */
export function calibrate(rows: readonly CalibrationRow[], nowS: number, trust: readonly number[] = rows.map(() => 1)): Calibration {
  const names = [...new Set(rows.map(({ thermometer }) => thermometer))];
  const count = FITTED.length + names.length;
  const precision = new Array<number>(count).fill(1);
  const design = rows.map((row) => [...row.slopes, ...names.map((name) => (name === row.thermometer ? THERMOMETER_SPREAD_K : 0))]);
  const shares = sameNightShares(rows);
  let x: number[] = new Array<number>(count).fill(0);
  let scale2 = RESIDUAL_PRIOR.scaleK ** 2;
  let information = matrix(precision, [], [], 1);
  const miss = (r: number): number => rows[r]!.readingK - rows[r]!.atPriorK - dot(design[r]!, x);
  const weight = (r: number): number => {
    const error = miss(r);
    if (rows[r]!.censored && error < 0) return 0;
    return (trust[r]! * shares[r]! * 0.5 ** ((nowS - rows[r]!.timeS) / HALF_LIFE_S) * (STUDENT_FREEDOM + 1)) / (STUDENT_FREEDOM + error ** 2 / scale2);
  };
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const weights = rows.map((_, r) => weight(r));
    information = matrix(precision, design, weights, scale2);
    const gradient = x.map((at, k) => rows.reduce((sum, _, r) => sum + (weights[r]! * design[r]![k]! * miss(r)) / scale2, -precision[k]! * at));
    const step = multiply(inverse(information), gradient);
    x = x.map((at, k) => at + step[k]!);
    const squares = rows.reduce((sum, _, r) => sum + weights[r]! * miss(r) ** 2, 0);
    scale2 = (RESIDUAL_PRIOR.readings * RESIDUAL_PRIOR.scaleK ** 2 + squares) / (RESIDUAL_PRIOR.readings + weights.reduce((sum, w) => sum + w, 0));
    if (Math.max(...step.map(Math.abs)) < SETTLED) break;
  }
  const covariance = inverse(information);
  return {
    z: x.slice(0, FITTED.length),
    covariance: covariance.slice(0, FITTED.length).map((row) => row.slice(0, FITTED.length)),
    thermometerK: Object.fromEntries(names.map((name, t) => [name, THERMOMETER_SPREAD_K * x[FITTED.length + t]!])),
    residual: residualOf(rows, { design, covariance, miss, scale2 }),
    readings: rows.length,
  };
}

/** Scale for predictions: every accepted reading counts in full, with what it took for itself given back. */
function residualOf(rows: readonly CalibrationRow[], fit: { design: readonly (readonly number[])[]; covariance: readonly (readonly number[])[]; miss: (r: number) => number; scale2: number }): Calibration['residual'] {
  const kept = rows.flatMap((row, r) => (row.censored ? [] : [r]));
  const squares = kept.reduce((sum, r) => {
    const leverage = Math.min(HIGHEST_LEVERAGE, dot(fit.design[r]!, multiply(fit.covariance, fit.design[r]!)) / fit.scale2);
    // One slip of the pen would widen every range for a month: beyond five scales it says nothing of the weather.
    return sum + Math.min(fit.miss(r) ** 2, 25 * fit.scale2) / (1 - leverage);
  }, RESIDUAL_PRIOR.readings * RESIDUAL_PRIOR.scaleK ** 2);
  return { scaleK: Math.sqrt(squares / (RESIDUAL_PRIOR.readings + kept.length)), degreesOfFreedom: RESIDUAL_PRIOR.readings + kept.length };
}

function sameNightShares(rows: readonly CalibrationRow[]): readonly number[] {
  return rows.map((row) => {
    const together = rows.filter(({ timeS }) => Math.abs(timeS - row.timeS) < NIGHT_S).length;
    return 1 / (1 + (together - 1) * SAME_NIGHT_CORRELATION);
  });
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
const multiply = (a: readonly (readonly number[])[], b: readonly number[]): number[] => a.map((row) => dot(row, b));

function matrix(precision: readonly number[], design: readonly (readonly number[])[], weights: readonly number[], scale2: number): number[][] {
  const sum = precision.map((value, k) => precision.map((_, j) => (j === k ? value : 0)));
  design.forEach((row, r) => row.forEach((a, k) => row.forEach((b, j) => (sum[k]![j]! += (weights[r]! * a * b) / scale2))));
  return sum;
}

/** Inverse of a positive definite matrix. Units: any. Valid: positive definite. Outside: not checked. Source: elimination (definition). */
export function inverse(of: readonly (readonly number[])[]): number[][] {
  const size = of.length;
  const work = of.map((row, k) => [...row, ...row.map((_, j) => (j === k ? 1 : 0))]);
  for (let k = 0; k < size; k += 1) {
    const pivot = work[k]![k]!;
    work[k] = work[k]!.map((value) => value / pivot);
    for (let r = 0; r < size; r += 1) {
      if (r === k) continue;
      const factor = work[r]![k]!;
      if (factor !== 0) work[r] = work[r]!.map((value, j) => value - factor * work[k]![j]!);
    }
  }
  return work.map((row) => row.slice(size));
}
