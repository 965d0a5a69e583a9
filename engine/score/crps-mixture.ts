import { chanceBelow, mixtureMeanK, type Mixture } from '../chance/mixture.js';

const INTERVALS = 400;
/** Tails of the dressing error are followed to sinh(7) around the mean, more than five hundred times its scale. */
const WIDEST = 7;

/**
 * Continuous ranked probability score of a forecast of dressed scenarios.
 * Units: K.
 * Valid: weights that sum to 1, a scale above 0, two or more degrees of freedom.
 * Outside: not checked; a forecast is checked when it is made.
 * Source: definition, integral of (F - step)^2 (Gneiting2005 eq. 4), by Simpson's rule in asinh of the distance from the mean.
 */
export function crpsMixtureK(forecast: Mixture, observedK: number): number {
  const centreK = mixtureMeanK(forecast);
  const { scaleK } = forecast;
  const chance = (u: number): number => chanceBelow(forecast, centreK + scaleK * Math.sinh(u));
  const atReading = Math.asinh((observedK - centreK) / scaleK);
  const edge = Math.max(WIDEST, Math.abs(atReading) + 1);
  const below = simpson(-edge, atReading, (u) => Math.cosh(u) * chance(u) ** 2);
  const above = simpson(atReading, edge, (u) => Math.cosh(u) * (1 - chance(u)) ** 2);
  return scaleK * (below + above);
}

function simpson(from: number, to: number, f: (u: number) => number): number {
  const width = (to - from) / INTERVALS;
  let sum = f(from) + f(to);
  for (let i = 1; i < INTERVALS; i += 1) sum += (i % 2 === 0 ? 2 : 4) * f(from + i * width);
  return (sum * width) / 3;
}
