import { assertInRange } from '../errors.js';

/** A stated chance of an event, and whether it came. */
export interface StatedChance {
  readonly probability: number;
  readonly happened: boolean;
}

const outcome = ({ happened }: StatedChance): number => (happened ? 1 : 0);
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Brier score: mean squared difference between stated chance and outcome.
 * Units: probabilities 0-1; 0 best, 1 worst.
 * Valid: one forecast or more.
 * Outside: throws OutOfRangeError for what is no probability, RangeError without forecasts.
 * Source: Murphy1973.
 */
export function brierScore(stated: readonly StatedChance[]): number {
  checkStated(stated);
  return mean(stated.map((one) => (one.probability - outcome(one)) ** 2));
}

/** Brier score = reliability - resolution + uncertainty + withinBins. */
export interface BrierParts {
  readonly reliability: number;
  readonly resolution: number;
  readonly uncertainty: number;
  /** What the bins hide: 0 where all chances in a bin are alike. */
  readonly withinBins: number;
}

/**
 * Parts of the Brier score over bins of stated chance.
 * Units: inner edges of the bins, rising, 0-1; dimensionless.
 * Valid: one forecast or more.
 * Outside: as brierScore.
 * Source: Murphy1973; Stephenson2008 for the two within-bin terms (variance less twice covariance), here together.
 */
export function brierParts(stated: readonly StatedChance[], innerEdges: readonly number[]): BrierParts {
  return brierPartsOf([...innerEdges, Number.POSITIVE_INFINITY].map((edge, k) => stated.filter(({ probability }) => probability < edge && probability >= (innerEdges[k - 1] ?? Number.NEGATIVE_INFINITY))));
}

/**
 * Parts of the Brier score over bins that are given as they are, such as the words in which chances were spoken.
 * Units: dimensionless.
 * Valid: one forecast or more in all.
 * Outside: as brierScore.
 * Source: as brierParts.
 */
export function brierPartsOf(bins: readonly (readonly StatedChance[])[]): BrierParts {
  const stated = bins.flat();
  checkStated(stated);
  const baseRate = mean(stated.map(outcome));
  const parts = { reliability: 0, resolution: 0, uncertainty: baseRate * (1 - baseRate), withinBins: 0 };
  for (const bin of bins.filter(({ length }) => length > 0)) {
    const share = bin.length / stated.length;
    const said = mean(bin.map(({ probability }) => probability));
    const came = mean(bin.map(outcome));
    parts.reliability += share * (said - came) ** 2;
    parts.resolution += share * (came - baseRate) ** 2;
    parts.withinBins += share * mean(bin.map((one) => (one.probability - said) ** 2 - 2 * (one.probability - said) * (outcome(one) - came)));
  }
  return parts;
}

function checkStated(stated: readonly StatedChance[]): void {
  if (stated.length === 0) throw new RangeError('no forecasts: expected at least one');
  for (const { probability } of stated) assertInRange('probability', probability, { lowest: 0, highest: 1, unit: '' });
}
