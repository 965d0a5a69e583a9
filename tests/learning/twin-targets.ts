import { FITTED } from '../../engine/learn/parameters.js';
import { binomialCdf } from '../../engine/score/coverage.js';
import type { Target } from './season-targets.js';
import type { Twin } from './twin-houses.js';

const CLAIMED = 0.8;
const BINS = 5;
/** Of sound beliefs, one in a hundred falls below and one above; eight parameters are looked at. */
const TAIL = 0.01;
/** Chi-square with four degrees of freedom, one in a hundred above (AbramowitzStegun1964 table 26.8). */
const MOST_CHI_SQUARE = 13.28;
/** Readings tell it when its spread is so much less than before them (project estimate). */
const TOLD_BELOW = 0.9;

/** How often the truth lay inside the middle 80 % of what was believed. */
const insideOf = (twins: readonly Twin[], k: number): number => twins.filter(({ rank }) => Math.abs(rank[k]! - 0.5) <= CLAIMED / 2).length;

/** How often the truth lay in each fifth of what was believed. */
export const rankHistogram = (twins: readonly Twin[], k: number): readonly number[] => {
  const counts = new Array<number>(BINS).fill(0);
  for (const { rank } of twins) counts[Math.min(BINS - 1, Math.floor(BINS * rank[k]!))]! += 1;
  return counts;
};

/** Distance of counts from even ones. */
export const chiSquare = (counts: readonly number[]): number => {
  const even = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  return counts.reduce((sum, count) => sum + (count - even) ** 2 / even, 0);
};

export const meanSpread = (twins: readonly Twin[], k: number): number => twins.reduce((sum, { spread }) => sum + spread[k]!, 0) / twins.length;

const rmsMiss = (twins: readonly Twin[], k: number): number => Math.sqrt(twins.reduce((sum, { truth, found }) => sum + (truth[k]! - found[k]!) ** 2, 0) / twins.length);

/**
 * What is believed of each parameter against its truth. Where the readings stray as they are believed to, the belief must be right to both sides;
 * where our physics is all there is to the world, they stray less than is allowed for, and the belief may be too wide.
 */
export function twinTargets(title: string, twins: readonly Twin[], { mayBeWide }: { mayBeWide: boolean }): readonly Target[] {
  return FITTED.flatMap(({ id }, k): readonly Target[] => {
    const inside = insideOf(twins, k);
    const spread = meanSpread(twins, k);
    const counts = rankHistogram(twins, k);
    const chi = chiSquare(counts);
    const about = `${title}, ${id}: spread ${spread.toFixed(2)} of the prior's, miss ${rmsMiss(twins, k).toFixed(2)}`;
    return [
      { what: `${about}; truth in the middle 80 % of the belief for ${inside} of ${twins.length}, not too seldom`, isMet: binomialCdf(inside, twins.length, CLAIMED) >= TAIL },
      ...(mayBeWide ? [] : [{ what: `${about}; truth in the middle 80 % of the belief for ${inside} of ${twins.length}, not too often`, isMet: 1 - binomialCdf(inside - 1, twins.length, CLAIMED) >= TAIL }]),
      ...(mayBeWide || spread > TOLD_BELOW ? [] : [{ what: `${about}; ranks ${counts.join(' ')}, chi-square ${chi.toFixed(1)}, at most ${MOST_CHI_SQUARE}`, isMet: chi <= MOST_CHI_SQUARE }]),
    ];
  });
}
