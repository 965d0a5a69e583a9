import { inverseByBisection } from './normal.js';

/**
 * Distribution function of Student's t with a whole number of degrees of freedom.
 * Units: dimensionless.
 * Valid: any t; degrees of freedom 1, 2, 3, ...
 * Outside: throws RangeError for other degrees of freedom.
 * Source: AbramowitzStegun1964 26.7.3 (odd) and 26.7.4 (even).
 */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  const nu = degreesOfFreedom;
  if (!Number.isInteger(nu) || nu < 1) throw new RangeError(`degrees of freedom ${nu}: expected a whole number of at least 1`);
  const theta = Math.atan(t / Math.sqrt(nu));
  const cosine = Math.cos(theta);
  let term = nu % 2 === 0 ? 1 : cosine;
  let sum = nu === 1 ? 0 : term;
  for (let k = nu % 2 === 0 ? 2 : 3; k <= nu - 2; k += 2) {
    term *= ((k - 1) / k) * cosine * cosine;
    sum += term;
  }
  const inside = nu % 2 === 0 ? Math.sin(theta) * sum : (2 / Math.PI) * (theta + Math.sin(theta) * sum);
  return 0.5 + inside / 2;
}

/** Quantile of Student's t. Units: dimensionless. Valid: 0 < p < 1. Outside: throws RangeError. Source: inverse of studentTCdf. */
export const studentTQuantile = (p: number, degreesOfFreedom: number): number => inverseByBisection((t) => studentTCdf(t, degreesOfFreedom), p);
