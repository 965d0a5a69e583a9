import { binomialCdf } from '../../engine/score/coverage.js';
import type { Target } from './season-targets.js';
import type { JudgedWorth } from './worth-of-changes.js';

const CLAIMED = 0.8;
/** Five in a hundred below: the binomial range of a sound 80 % range. A wider one is no fault here: the truth is a mean of nights, the range is of one. */
const TAIL = 0.05;

const isInside = ({ changeK, q10K, q90K }: JudgedWorth): boolean => changeK >= q10K && changeK <= q90K;
const mean = (worths: readonly JudgedWorth[], of: (worth: JudgedWorth) => number): number => worths.reduce((sum, worth) => sum + of(worth), 0) / worths.length;
const summary = (worths: readonly JudgedWorth[]): string =>
  `${worths.filter(isInside).length} of ${worths.length} true worths inside the range told; true ${mean(worths, ({ changeK }) => changeK).toFixed(2)} K, told ${mean(worths, ({ meanK }) => meanK).toFixed(2)}, too high by ${mean(worths, ({ meanK, changeK }) => meanK - changeK).toFixed(2)}; width ${mean(worths, ({ q10K, q90K }) => q90K - q10K).toFixed(2)}`;

const titleOf = ({ season, item, at }: JudgedWorth): string => `${season}, ${item}, ${at}`;

/** A line for each item of each season, for a person. */
export const worthLines = (worths: readonly JudgedWorth[]): readonly string[] =>
  [...new Set(worths.map(titleOf))].map((title) => `${title}: ${summary(worths.filter((worth) => titleOf(worth) === title))}`);

export function worthTarget(title: string, worths: readonly JudgedWorth[]): Target {
  return { what: `${title}: ${summary(worths)}; not too seldom inside`, isMet: binomialCdf(worths.filter(isInside).length, worths.length, CLAIMED) >= TAIL };
}
