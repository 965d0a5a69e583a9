const ASYMPTOTIC_BEYOND = 6;
const SERIES_TERMS = 120;
const BISECTIONS = 80;
const WIDEST = 12;

/**
 * Standard normal distribution function.
 * Units: dimensionless.
 * Valid: any real number; absolute accuracy better than 1e-12.
 * Outside: 0 or 1 in the far tails.
 * Source: AbramowitzStegun1964 26.2.10 (power series) and 26.2.12 (asymptotic tail).
 */
export function normalCdf(z: number): number {
  if (z > ASYMPTOTIC_BEYOND) return 1 - normalCdf(-z);
  if (z < -ASYMPTOTIC_BEYOND) return (normalDensity(z) / -z) * (1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6);
  let term = z;
  let sum = z;
  for (let n = 1; n < SERIES_TERMS; n += 1) {
    term *= (z * z) / (2 * n + 1);
    sum += term;
  }
  return 0.5 + normalDensity(z) * sum;
}

/** Standard normal density. Units: dimensionless. Valid: any real number. Outside: not applicable. Source: AbramowitzStegun1964 26.2.1. */
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/**
 * Inverse of a rising distribution function.
 * Units: p 0-1; result in the unit of the function's argument.
 * Valid: 0 < p < 1.
 * Outside: throws RangeError.
 * Source: bisection.
 */
export function inverseByBisection(cdf: (x: number) => number, p: number, widest = WIDEST): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`probability ${p}: expected more than 0 and less than 1`);
  let [low, high] = [-widest, widest];
  while (cdf(low) > p) low *= 2;
  while (cdf(high) < p) high *= 2;
  for (let i = 0; i < BISECTIONS; i += 1) {
    const middle = (low + high) / 2;
    if (cdf(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Standard normal quantile. Units: dimensionless. Valid: 0 < p < 1. Outside: throws RangeError. Source: inverse of normalCdf. */
export const normalQuantile = (p: number): number => inverseByBisection(normalCdf, p);
