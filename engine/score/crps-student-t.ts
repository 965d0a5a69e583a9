import { studentTCdf } from '../chance/student-t.js';

/**
 * Continuous ranked probability score of a Student-t forecast.
 * Units: K; whole degrees of freedom.
 * Valid: a scale above 0, degrees of freedom 2, 3, 4, ... (with 1 the score has no value).
 * Outside: throws RangeError.
 * Source: Jordan2019 (closed form for the t distribution, from memory; agrees with the integral of the definition).
 */
export function crpsStudentTK(forecast: { centreK: number; scaleK: number; degreesOfFreedom: number }, observedK: number): number {
  const { centreK, scaleK, degreesOfFreedom: nu } = forecast;
  if (!(scaleK > 0)) throw new RangeError(`scale ${scaleK} K: expected more than 0`);
  if (!Number.isInteger(nu) || nu < 2) throw new RangeError(`degrees of freedom ${nu}: expected a whole number of at least 2`);
  const z = (observedK - centreK) / scaleK;
  const density = (1 + z ** 2 / nu) ** (-(nu + 1) / 2) / (Math.sqrt(nu) * betaWithHalf(nu));
  const spread = ((2 * Math.sqrt(nu)) / (nu - 1)) * (betaWithHalf(2 * nu - 1) / betaWithHalf(nu) ** 2);
  return scaleK * (z * (2 * studentTCdf(z, nu) - 1) + (2 * density * (nu + z ** 2)) / (nu - 1) - spread);
}

/** Beta function B(n/2, 1/2) of a whole n, by its recursion (AbramowitzStegun1964 6.2.2). */
function betaWithHalf(n: number): number {
  let beta = n % 2 === 0 ? 2 : Math.PI;
  for (let k = n % 2 === 0 ? 2 : 1; k < n; k += 2) beta *= k / (k + 1);
  return beta;
}
