/**
 * Continuous ranked probability score of an ensemble. The fair form does not punish an ensemble for being small: use it to compare
 * ensembles of different size.
 * Units: K.
 * Valid: one member or more; two or more for the fair form.
 * Outside: throws RangeError.
 * Source: Ferro2008: mean |x - y| less half the mean |x - x'|, over all pairs, or for the fair form over pairs of different members.
 */
export function crpsSampleK(membersK: readonly number[], observedK: number, form: 'plain' | 'fair' = 'plain'): number {
  const count = membersK.length;
  const least = form === 'fair' ? 2 : 1;
  if (count < least) throw new RangeError(`${count} members: expected at least ${least}`);
  const meanMiss = membersK.reduce((sum, value) => sum + Math.abs(value - observedK), 0) / count;
  // Sorted, the k-th member is the greater one of k pairs and the lesser one of the rest.
  const sorted = [...membersK].sort((a, b) => a - b);
  const sumOfDifferences = sorted.reduce((sum, value, k) => sum + (2 * k - count + 1) * value, 0);
  return meanMiss - sumOfDifferences / (count * (form === 'fair' ? count - 1 : count));
}
