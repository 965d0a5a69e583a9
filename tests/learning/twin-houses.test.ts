import { beforeAll, describe, expect, it } from 'vitest';
import { FITTED, HOUSE_PARAMETERS } from '../../engine/learn/parameters.js';
import { binomialCdf } from '../../engine/score/coverage.js';
import { checkedGreenhouse, REFERENCE_FILE } from '../fixtures/houses.js';
import { THERMOMETER_ALONE, twinsOf, type Twin } from './twin-houses.js';
import { chiSquare, meanSpread, rankHistogram } from './twin-targets.js';

const parameter = (id: string): number => FITTED.findIndex((one) => one.id === id);

describe('a few houses of our own making, learned from readings made of them', () => {
  let twins: readonly Twin[];
  beforeAll(() => {
    twins = twinsOf(checkedGreenhouse({ ...REFERENCE_FILE, beds: [{ name: 'north', area: 20, crops: [] }] }), { mornings: 8, twins: 6, seed: 7, noise: THERMOMETER_ALONE });
  });

  it('are found nearer to their truth than the prior was, where a thermometer outside tells it', () => {
    const k = parameter('outside-offset');
    const squares = (of: (twin: Twin) => number): number => twins.reduce((sum, twin) => sum + of(twin) ** 2, 0);
    expect(squares(({ truth, found }) => truth[k]! - found[k]!)).toBeLessThan(0.5 * squares(({ truth }) => truth[k]!));
    expect(meanSpread(twins, k)).toBeLessThan(0.7);
  });

  it('are believed to be where they are: no fewer truths in the middle 80 % than one in a thousand sound beliefs would have', () => {
    const ranks = twins.flatMap(({ rank }) => rank);
    expect(binomialCdf(ranks.filter((rank) => Math.abs(rank - 0.5) <= 0.4).length, ranks.length, 0.8)).toBeGreaterThan(0.001);
  });

  it('keep the prior where nothing tells it: leakage and heat capacity are hidden in every one, and no figure is given for them', () => {
    const untold = HOUSE_PARAMETERS.filter(({ toldBy }) => toldBy === null).map(({ id }) => id);
    expect(untold).toEqual(['leakage', 'heat-capacity']);
    for (const { found, spread } of twins) expect([found.length, spread.length]).toEqual([FITTED.length, FITTED.length]);
    expect(FITTED.some(({ id }) => untold.includes(id))).toBe(false);
  });
});

describe('the ranks of truths', () => {
  it('are counted in fifths, and judged by how far they are from even', () => {
    const at = (rank: number): Twin => ({ truth: [], found: [], spread: [], rank: [rank] });
    expect(rankHistogram([0.05, 0.1, 0.5, 0.95, 1].map(at), 0)).toEqual([2, 0, 1, 0, 2]);
    expect(chiSquare([2, 0, 1, 0, 2])).toBeCloseTo(4, 12);
    expect(chiSquare([3, 3, 3])).toBe(0);
  });
});
