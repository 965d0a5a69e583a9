/** What is known of how much warmer the readings are than the model: a slowly moving offset with its variance. */
export interface SiteOffset {
  readonly offsetK: number;
  readonly varianceK2: number;
}

/** How fast the offset drifts, and how far a single reading strays. */
export interface OffsetNoise {
  readonly driftK2PerDay: number;
  readonly readingK2: number;
}

/** Weak knowledge before the first reading: 2 K either way (prior of this project). */
export const UNKNOWN_SITE_OFFSET: SiteOffset = { offsetK: 0, varianceK2: 4 };
/** Drift over scatter 0.03: a memory of about six nights, between published settings (0.06 of Homleid1995, 0.01 of DelleMonache2011, both from memory). */
export const SITE_OFFSET_NOISE: OffsetNoise = { driftK2PerDay: 0.0675, readingK2: 2.25 };

/**
 * The offset after one reading: scalar Kalman filter of a random walk. Nights without a reading only widen it.
 * Units: K and K2; days since the last reading, 1 for every night.
 * Valid: variances of 0 or more, scatter above 0, days of 0 or more.
 * Outside: throws RangeError.
 * Source: Kalman1960 in one dimension, as Galanis2002 and Homleid1995 use it for 2 m temperatures.
 */
export function offsetAfterReading(before: SiteOffset, reading: { missK: number; days: number }, noise: OffsetNoise = SITE_OFFSET_NOISE): SiteOffset & { readonly gain: number } {
  if (!(before.varianceK2 >= 0 && reading.days >= 0 && noise.driftK2PerDay >= 0 && noise.readingK2 > 0)) throw new RangeError('expected variances and days of 0 or more and a scatter above 0');
  const varianceK2 = before.varianceK2 + noise.driftK2PerDay * reading.days;
  const gain = varianceK2 / (varianceK2 + noise.readingK2);
  return { offsetK: before.offsetK + gain * (reading.missK - before.offsetK), varianceK2: (1 - gain) * varianceK2, gain };
}

/**
 * The share of each new miss that the offset takes on once readings come every night.
 * Units: drift in a day over scatter, dimensionless; result 0-1, its inverse is the memory in nights.
 * Valid: 0 or more.
 * Outside: throws RangeError.
 * Source: fixed point of Kalman1960 for a random walk.
 */
export function steadyGain(driftOverScatter: number): number {
  if (!(driftOverScatter >= 0)) throw new RangeError(`drift over scatter ${driftOverScatter}: expected 0 or more`);
  const ahead = (driftOverScatter + Math.sqrt(driftOverScatter ** 2 + 4 * driftOverScatter)) / 2;
  return ahead / (ahead + 1);
}
