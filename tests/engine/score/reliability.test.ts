import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brierScore } from '../../../engine/score/brier.js';
import { binomialCdf } from '../../../engine/score/coverage.js';
import { countChances, reliabilityTable, type SpokenChance } from '../../../engine/score/reliability.js';

const WORDS = ['safe', 'watch', 'risk'] as const;
type Word = (typeof WORDS)[number];
const cases = (spokenAs: Word, probability: number, outcomes: readonly number[], night = (k: number): string => `${spokenAs} ${k}`): SpokenChance<Word>[] =>
  outcomes.map((outcome, k) => ({ spokenAs, probability, happened: outcome === 1, night: night(k) }));
const nones = (count: number): number[] => new Array<number>(count).fill(0);

describe('how words held', () => {
  it('is a count, a mean chance and what came, in the order of the words', () => {
    const { words } = reliabilityTable([...cases('risk', 0.5, [1, 0, 1, 0]), ...cases('safe', 0.01, nones(3)), ...cases('risk', 0.7, [1])], WORDS);
    expect(words.map(({ spokenAs, cases: count, happened }) => [spokenAs, count, happened])).toEqual([['safe', 3, 0], ['risk', 5, 3]]);
    expect(words[1]!.meanChance).toBeCloseTo(2.7 / 5, 12);
    expect(reliabilityTable<Word>([], WORDS)).toEqual({ words: [], brier: null });
  });

  it('has the Brier score and parts of the published toy, where each word is a bin of ten times its cases', () => {
    // Murphy's toy (tests/published/Murphy1973) ten times over: shares and rates stay as they are.
    const ten = <T>(values: readonly T[]): T[] => Array.from({ length: 10 }, () => values).flat();
    const { brier } = reliabilityTable([...cases('safe', 0.1, ten([0, 0, 0, 1, 0])), ...cases('watch', 0.5, ten([1, 0, 1, 0])), ...cases('risk', 0.9, ten([1]))], WORDS);
    expect(brier!.score).toBeCloseTo(0.186, 12);
    expect(brier!.parts.reliability).toBeCloseTo(0.006, 12);
    expect(brier!.parts.resolution).toBeCloseTo(0.06, 12);
    expect(brier!.parts.uncertainty).toBeCloseTo(0.24, 12);
    expect(brier!.parts.withinBins).toBeCloseTo(0, 12);
  });

  it('leaves words of few cases out of the score', () => {
    const many = cases('safe', 0.1, [1, ...nones(9)]);
    expect(reliabilityTable([...many, ...cases('risk', 0.9, [0, 0])], WORDS).brier).toMatchObject({ cases: 10, score: brierScore(many) });
    expect(reliabilityTable(cases('safe', 0.1, nones(9)), WORDS).brier).toBeNull();
  });

  it('tells how likely so few or so many are: 1 less 0.9 to the tenth for one or more of ten at one in ten', () => {
    const [word] = reliabilityTable(cases('watch', 0.1, [1, ...nones(9)]), WORDS).words;
    expect(word!.chanceOfSoMany).toBeCloseTo(1 - 0.9 ** 10, 12);
    expect(word!.chanceOfSoFew).toBeCloseTo(0.9 ** 10 + 10 * 0.1 * 0.9 ** 9, 12);
    // None 0.349, one 0.387, two 0.194, three 0.057, four or more 0.013 (binomial tables).
    expect(word).toMatchObject({ soundFrom: 0, soundTo: 3 });
  });
});

describe('chances of counts', () => {
  it('are binomial with one event a night and equal chances', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 40 }), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (nights, chance) => {
      const found = countChances(Array.from({ length: nights }, () => [chance]));
      let sum = 0;
      found.forEach((one, count) => {
        sum += one;
        expect(sum).toBeCloseTo(binomialCdf(count, nights, chance), 9);
      });
    }));
  });

  it('of one night go together: all or nothing where the chances are equal, else the likelier first', () => {
    expect(countChances([[0.3, 0.3, 0.3]]).map((chance) => Number(chance.toFixed(12)))).toEqual([0.7, 0, 0, 0.3]);
    expect(countChances([[0.2, 0.5]]).map((chance) => Number(chance.toFixed(12)))).toEqual([0.5, 0.3, 0.2]);
  });

  it('sum to one and have the mean that the chances have, however the nights hang together', () => {
    fc.assert(fc.property(fc.array(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 20 }), (byNight) => {
      const found = countChances(byNight);
      expect(found.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
      expect(found.reduce((sum, chance, count) => sum + chance * count, 0)).toBeCloseTo(byNight.flat().reduce((sum, chance) => sum + chance, 0), 9);
    }));
  });
});
