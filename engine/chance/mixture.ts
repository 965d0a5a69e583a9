import { inverseByBisection } from './normal.js';
import { studentTCdf, studentTQuantile } from './student-t.js';

/** A forecast distribution: lows of weighted scenarios, each dressed with the same Student-t error. */
export interface Mixture {
  readonly valuesK: readonly number[];
  readonly weights: readonly number[];
  readonly scaleK: number;
  readonly degreesOfFreedom: number;
}

const MID_QUANTILES = 51;
const nodesByFreedom = new Map<number, readonly number[]>();

/** Equal-weight mid-quantiles of the dressing error: accurate where the damage curve is steep, unlike few Gauss nodes. */
function dressingNodes(degreesOfFreedom: number): readonly number[] {
  const known = nodesByFreedom.get(degreesOfFreedom);
  if (known) return known;
  const nodes = Array.from({ length: MID_QUANTILES }, (_, j) => studentTQuantile((j + 0.5) / MID_QUANTILES, degreesOfFreedom));
  nodesByFreedom.set(degreesOfFreedom, nodes);
  return nodes;
}

/** Chance that the value lies below a threshold. Units: K in, 0-1 out. Valid: any. Outside: not applicable. Source: mixture of Student-t (decision rule of this project). */
export function chanceBelow(mixture: Mixture, thresholdK: number): number {
  const chance = mixture.valuesK.reduce((sum, value, m) => sum + mixture.weights[m]! * studentTCdf((thresholdK - value) / mixture.scaleK, mixture.degreesOfFreedom), 0);
  // Rounding leaves 1e-16 beyond what a chance can be.
  return Math.min(1, Math.max(0, chance));
}

/** Mean of a function of the value, such as a damage curve. Units: as the function. Valid: any. Outside: not applicable. Source: member dressing with 51 mid-quantiles. */
export function meanOver(mixture: Mixture, f: (valueK: number) => number): number {
  const nodes = dressingNodes(mixture.degreesOfFreedom);
  return mixture.valuesK.reduce((sum, value, m) => sum + mixture.weights[m]! * (nodes.reduce((inner, z) => inner + f(value + mixture.scaleK * z), 0) / nodes.length), 0);
}

/** Mean of the mixture. Units: K. Valid: weights that sum to 1. Outside: not checked. Source: definition; the dressing error has mean 0. */
export const mixtureMeanK = (mixture: Mixture): number => mixture.valuesK.reduce((sum, value, m) => sum + mixture.weights[m]! * value, 0);

/** Quantile of the mixture. Units: K. Valid: 0 < p < 1. Outside: throws RangeError. Source: inverse of chanceBelow. */
export function mixtureQuantileK(mixture: Mixture, p: number): number {
  const centreK = mixtureMeanK(mixture);
  return centreK + inverseByBisection((x) => chanceBelow(mixture, centreK + x), p);
}
