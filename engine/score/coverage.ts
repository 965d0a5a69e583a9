import { normalQuantile } from '../chance/normal.js';

/** How often readings lay inside the ranges that were given, and how sure that share is. */
export interface Coverage {
  readonly inside: number;
  readonly nights: number;
  readonly share: number;
  /** Range of the true share: Wilson's score interval. */
  readonly low: number;
  readonly high: number;
  /** Chance of so few or fewer if the ranges were as sound as they claim. */
  readonly chanceOfSoFew: number;
}

export interface GivenRange {
  readonly lowK: number;
  readonly highK: number;
  readonly readingK: number;
}

/**
 * Coverage of given ranges by readings.
 * Units: K; shares 0-1.
 * Valid: one night or more, a claimed share between 0 and 1.
 * Outside: throws RangeError.
 * Source: Wilson1927 for the range of the share; binomial distribution for the chance.
 */
export function coverageOf(ranges: readonly GivenRange[], claimedShare: number, confidence: number): Coverage {
  const inside = ranges.filter(({ lowK, highK, readingK }) => readingK >= lowK && readingK <= highK).length;
  const { low, high } = wilsonInterval(inside, ranges.length, confidence);
  return { inside, nights: ranges.length, share: inside / ranges.length, low, high, chanceOfSoFew: binomialCdf(inside, ranges.length, claimedShare) };
}

/**
 * Wilson's score interval of a share that was counted.
 * Units: counts; shares 0-1.
 * Valid: one trial or more, confidence between 0 and 1.
 * Outside: throws RangeError.
 * Source: Wilson1927.
 */
export function wilsonInterval(successes: number, trials: number, confidence: number): { low: number; high: number } {
  if (!(trials >= 1 && successes >= 0 && successes <= trials)) throw new RangeError(`${successes} of ${trials}: expected at least one trial and no more successes than that`);
  const z = normalQuantile((1 + confidence) / 2);
  const share = successes / trials;
  const spread = z * Math.sqrt((share * (1 - share)) / trials + z ** 2 / (4 * trials ** 2));
  const centre = share + z ** 2 / (2 * trials);
  const scale = 1 + z ** 2 / trials;
  return { low: (centre - spread) / scale, high: (centre + spread) / scale };
}

/**
 * Chance of at most so many successes.
 * Units: counts; probability 0-1.
 * Valid: 0 to `trials` successes, a chance above 0 and below 1.
 * Outside: throws RangeError.
 * Source: binomial distribution (AbramowitzStegun1964 26.1.20), summed by logarithms.
 */
export function binomialCdf(successes: number, trials: number, chance: number): number {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`chance ${chance}: expected more than 0 and less than 1`);
  let logTerm = trials * Math.log(1 - chance);
  let sum = 0;
  for (let k = 0; k <= successes; k += 1) {
    sum += Math.exp(logTerm);
    logTerm += Math.log((trials - k) / (k + 1)) + Math.log(chance / (1 - chance));
  }
  return Math.min(1, sum);
}
