import { binomialCdf } from '../../engine/score/coverage.js';
import type { Verdict } from '../../engine/plan/outlook.js';
import { reliabilityTable } from '../../engine/score/reliability.js';
import type { SeasonScore } from './seasons.js';
import { VERDICTS } from './verdict-reliability.js';

/** Most that the root mean square may be over that of the best that anyone could do, pooled over the seasons, after so many readings of the low inside. */
const MOST_OVER_FLOOR: Readonly<Record<number, number>> = { 0: 1.8, 7: 1.25, 14: 1.15, 30: 1.08 };
/** From so many readings on the house must be no worse than a ridge regression in its CRPS; before the first a quarter better than every plain rule. */
const BEATS_RIDGE_FROM = 7;
const OF_THE_BEST_RULE_BEFORE = 0.75;
const CLAIMED = 0.8;
/** Five in a hundred below and five above: the binomial range of a sound 80 % range. */
const TAIL = 0.05;

export interface Target {
  readonly what: string;
  readonly isMet: boolean;
}

/** What is asked of the seasons' pooled scores after so many readings. */
export function targetsOf(readings: number, score: SeasonScore): readonly Target[] {
  const ratio = Math.sqrt(score.squares / score.floorSquares);
  const most = MOST_OVER_FLOOR[readings];
  const crps = (key: string): number => score.crps[key]! / score.nights;
  const rules = Object.keys(score.crps).filter((key) => key !== 'house');
  const bestRule = Math.min(...rules.map(crps));
  return [
    ...(most === undefined ? [] : [{ what: `${readings} readings: root mean square ${ratio.toFixed(2)} times the floor's, at most ${most}`, isMet: ratio <= most }]),
    { what: `${readings} readings: 80 % range held ${score.inside80} of ${score.nights}, not too narrow`, isMet: binomialCdf(score.inside80, score.nights, CLAIMED) >= TAIL },
    { what: `${readings} readings: 80 % range held ${score.inside80} of ${score.nights}, not too wide`, isMet: 1 - binomialCdf(score.inside80 - 1, score.nights, CLAIMED) >= TAIL },
    ...(readings > 0 ? [] : [{ what: `no reading: CRPS ${crps('house').toFixed(2)} K, at most ${OF_THE_BEST_RULE_BEFORE} of ${bestRule.toFixed(2)} of the best plain rule`, isMet: crps('house') <= OF_THE_BEST_RULE_BEFORE * bestRule }]),
    ...(readings < BEATS_RIDGE_FROM ? [] : ['ridge', 'ridge without the day'].map((rival) => ({ what: `${readings} readings: CRPS ${crps('house').toFixed(2)} K, at most ${crps(rival).toFixed(2)} of the ${rival}`, isMet: crps('house') <= crps(rival) }))),
  ];
}

/** The range may only get narrower with more readings. */
export function widthTargets(byReadings: readonly { readonly readings: number; readonly score: SeasonScore }[]): readonly Target[] {
  const width = ({ score }: (typeof byReadings)[number]): number => score.width / score.nights;
  const inOrder = [...byReadings].sort((a, b) => a.readings - b.readings);
  return inOrder.slice(1).map((after, i) => {
    const before = inOrder[i]!;
    return { what: `width ${width(after).toFixed(2)} K after ${after.readings} readings, narrower than ${width(before).toFixed(2)} K after ${before.readings}`, isMet: width(after) < width(before) };
  });
}

/** What each verdict says of the chance of harm (design, section 5). */
const HARMED: Readonly<Record<Verdict, { readonly least: number; readonly most: number }>> = { safe: { least: 0, most: 0.05 }, watch: { least: 0.05, most: 0.35 }, 'at-risk': { least: 0.35, most: 1 }, 'likely-lost': { least: 0.5, most: 1 } };

/** Beds are harmed as often as their verdict says. */
export function verdictTargets(readings: number, { verdicts }: SeasonScore): readonly Target[] {
  return reliabilityTable(verdicts, VERDICTS).words.map(({ spokenAs, cases, happened }) => {
    const { least, most } = HARMED[spokenAs];
    return { what: `${readings} readings: of beds said "${spokenAs}" ${happened} of ${cases} harmed, ${least} to ${most} of them`, isMet: happened >= least * cases && happened <= most * cases };
  });
}
