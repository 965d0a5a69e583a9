import { normalCdf, normalDensity } from '../chance/normal.js';

/**
 * Continuous ranked probability score of a normal forecast: 0 for a sure and right one, else as far off as that many kelvin.
 * Units: K.
 * Valid: a spread above 0.
 * Outside: throws RangeError.
 * Source: Gneiting2005 eq. 5.
 */
export function crpsNormalK(forecast: { meanK: number; sdK: number }, observedK: number): number {
  if (!(forecast.sdK > 0)) throw new RangeError(`spread ${forecast.sdK} K: expected more than 0`);
  const z = (observedK - forecast.meanK) / forecast.sdK;
  return forecast.sdK * (z * (2 * normalCdf(z) - 1) + 2 * normalDensity(z) - 1 / Math.sqrt(Math.PI));
}
