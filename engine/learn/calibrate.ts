import type { StudentError } from '../chance/summed-error.js';
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
  /** Of a thermometer outside: it strays from the forecast cell otherwise than the house strays from its model. */
  readonly isOutside: boolean;
  /** A low that was not reset says only that it was no warmer. */
  readonly censored: boolean;
}

export interface Calibration {
  readonly z: Whitened;
  /** Covariance of z alone, row by row. */
  readonly covariance: readonly (readonly number[])[];
  /** How each thermometer reads against the air (K). */
  readonly thermometerK: Readonly<Record<string, number>>;
  /** How the readings of the house stray about the model; those of a thermometer outside have no part in it. */
  readonly residual: StudentError;
  readonly readings: number;
}

/** What the model cannot say with every parameter right, or a place from its forecast cell, and a thermometer's rounding (prior of this project, as strong as six readings). */
export const RESIDUAL_PRIOR = { scaleK: 0.8, readings: 6 } as const;
const PRIOR_SQUARES_K2 = RESIDUAL_PRIOR.readings * RESIDUAL_PRIOR.scaleK ** 2;
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
  let scales2: Scales = { house: RESIDUAL_PRIOR.scaleK ** 2, outside: RESIDUAL_PRIOR.scaleK ** 2 };
  let information = matrix(precision, [], []);
  const scale2 = (r: number): number => scales2[kindOf(rows[r]!)];
  const miss = (r: number): number => rows[r]!.readingK - rows[r]!.atPriorK - dot(design[r]!, x);
  const weight = (r: number): number => {
    const error = miss(r);
    if (rows[r]!.censored && error < 0) return 0;
    return (trust[r]! * shares[r]! * 0.5 ** ((nowS - rows[r]!.timeS) / HALF_LIFE_S) * (STUDENT_FREEDOM + 1)) / (STUDENT_FREEDOM + error ** 2 / scale2(r));
  };
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const weights = rows.map((_, r) => weight(r));
    information = matrix(precision, design, weights.map((of, r) => of / scale2(r)));
    const gradient = x.map((at, k) => rows.reduce((sum, _, r) => sum + (weights[r]! * design[r]![k]! * miss(r)) / scale2(r), -precision[k]! * at));
    const step = multiply(inverse(information), gradient);
    x = x.map((at, k) => at + step[k]!);
    const spread2 = (kind: Kind): number => {
      const own = weights.map((of, r) => (kindOf(rows[r]!) === kind ? of : 0));
      return (PRIOR_SQUARES_K2 + own.reduce((sum, of, r) => sum + of * miss(r) ** 2, 0)) / (RESIDUAL_PRIOR.readings + own.reduce((sum, of) => sum + of, 0));
    };
    scales2 = { house: spread2('house'), outside: spread2('outside') };
    if (Math.max(...step.map(Math.abs)) < SETTLED) break;
  }
  const covariance = inverse(information);
  return {
    z: x.slice(0, FITTED.length),
    covariance: covariance.slice(0, FITTED.length).map((row) => row.slice(0, FITTED.length)),
    thermometerK: Object.fromEntries(names.map((name, t) => [name, THERMOMETER_SPREAD_K * x[FITTED.length + t]!])),
    residual: residualOf(rows.flatMap((row, r) => (row.isOutside || row.censored ? [] : [r])), { design, covariance, miss, scale2, weight }),
    readings: rows.length,
  };
}

type Kind = 'house' | 'outside';
type Scales = Readonly<Record<Kind, number>>;
const kindOf = ({ isOutside }: CalibrationRow): Kind => (isOutside ? 'outside' : 'house');

interface Fit {
  readonly design: readonly (readonly number[])[];
  readonly covariance: readonly (readonly number[])[];
  readonly miss: (r: number) => number;
  readonly scale2: (r: number) => number;
  readonly weight: (r: number) => number;
}

/** Scale for predictions: every accepted reading counts in full, with what it took for itself given back: the less, the less it weighed. */
function residualOf(kept: readonly number[], { design, covariance, miss, scale2, weight }: Fit): StudentError {
  const squares = kept.reduce((sum, r) => {
    const leverage = Math.min(HIGHEST_LEVERAGE, (weight(r) * dot(design[r]!, multiply(covariance, design[r]!))) / scale2(r));
    // One slip of the pen would widen every range for a month: beyond five scales it says nothing of the weather.
    return sum + Math.min(miss(r) ** 2, 25 * scale2(r)) / (1 - leverage);
  }, PRIOR_SQUARES_K2);
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

function matrix(precision: readonly number[], design: readonly (readonly number[])[], weights: readonly number[]): number[][] {
  const sum = precision.map((value, k) => precision.map((_, j) => (j === k ? value : 0)));
  design.forEach((row, r) => row.forEach((a, k) => row.forEach((b, j) => (sum[k]![j]! += weights[r]! * a * b))));
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
