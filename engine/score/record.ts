import { studentTQuantile } from '../chance/student-t.js';
import { binomialCdf, coverageOf, type Coverage } from './coverage.js';

/** What was said of the low of one night before it, beside what was read after it. */
export interface SaidAndRead {
  readonly middleK: number;
  readonly q10K: number;
  readonly q90K: number;
  readonly readingK: number;
}

/** How right the ranges and their middles were. */
export interface RangeRecord {
  readonly coverage: Coverage;
  /** Chance of so many inside or more if the ranges were no wider than they claim. */
  readonly chanceOfSoMany: number;
  readonly meanMissK: number;
  /** Mean of said less read: above zero, too warm was said. With its range; null for a single night. */
  readonly lean: { readonly meanK: number; readonly lowK: number; readonly highK: number } | null;
}

/** A range from the tenth to the ninetieth of a hundred. */
const CLAIMED_SHARE = 0.8;
const CONFIDENCE = 0.9;
/** Misses of nights that follow each other go together (decisions reference 4.3: 0.3). */
const NIGHT_TO_NIGHT_CORRELATION = 0.3;

/**
 * The record of stated ranges; null before the first night.
 * Units: K, shares 0-1.
 * Valid: readings that were judged and accepted.
 * Outside: not checked.
 * Source: coverage with Wilson1927; the lean by Student's t, widened by (1 + r)/(1 - r) for nights that go together, the limit for a first-order autoregression.
 */
export function rangeRecord(nights: readonly SaidAndRead[]): RangeRecord | null {
  if (nights.length === 0) return null;
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const missesK = nights.map(({ middleK, readingK }) => middleK - readingK);
  const coverage = coverageOf(nights.map(({ q10K, q90K, readingK }) => ({ lowK: q10K, highK: q90K, readingK })), CLAIMED_SHARE, CONFIDENCE);
  return {
    coverage,
    chanceOfSoMany: coverage.inside === 0 ? 1 : 1 - binomialCdf(coverage.inside - 1, nights.length, CLAIMED_SHARE),
    meanMissK: mean(missesK.map(Math.abs)),
    lean: missesK.length < 2 ? null : leanOf(missesK, mean(missesK)),
  };
}

function leanOf(missesK: readonly number[], meanK: number): NonNullable<RangeRecord['lean']> {
  const freedom = missesK.length - 1;
  const variance = missesK.reduce((sum, missK) => sum + (missK - meanK) ** 2, 0) / freedom;
  const alike = (1 + NIGHT_TO_NIGHT_CORRELATION) / (1 - NIGHT_TO_NIGHT_CORRELATION);
  const halfK = studentTQuantile((1 + CONFIDENCE) / 2, freedom) * Math.sqrt((variance * alike) / missesK.length);
  return { meanK, lowK: meanK - halfK, highK: meanK + halfK };
}
