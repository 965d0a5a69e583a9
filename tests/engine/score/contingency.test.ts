import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contingencyScores } from '../../../engine/score/contingency-scores.js';
import { contingencyTable } from '../../../engine/score/contingency-table.js';
import { relativeValue } from '../../../engine/score/relative-value.js';
import { OutOfRangeError } from '../../../engine/errors.js';

const count = fc.nat(200);
const table = fc.record({ hits: count, falseAlarms: count, misses: count, correctNegatives: count });
const full = fc.record({ hits: fc.integer({ min: 1, max: 200 }), falseAlarms: fc.integer({ min: 1, max: 200 }), misses: fc.integer({ min: 1, max: 200 }), correctNegatives: fc.integer({ min: 1, max: 200 }) });

describe('contingency table', () => {
  it('counts each night once', () => {
    fc.assert(fc.property(fc.array(fc.record({ forecast: fc.boolean(), observed: fc.boolean() })), (nights) => {
      const { hits, falseAlarms, misses, correctNegatives } = contingencyTable(nights);
      expect(hits + falseAlarms + misses + correctNegatives).toBe(nights.length);
      expect(hits + misses).toBe(nights.filter(({ observed }) => observed).length);
      expect(hits + falseAlarms).toBe(nights.filter(({ forecast }) => forecast).length);
    }));
  });

  it('leaves undefined scores null, never 0', () => {
    const noEvents = contingencyScores({ hits: 0, falseAlarms: 3, misses: 0, correctNegatives: 20 });
    expect(noEvents).toMatchObject({ probabilityOfDetection: null, frequencyBias: null, peirceSkillScore: null, extremalDependenceIndex: null, falseAlarmRatio: 1, proportionCorrect: 20 / 23 });
    expect(contingencyScores({ hits: 0, falseAlarms: 0, misses: 2, correctNegatives: 5 })).toMatchObject({ falseAlarmRatio: null, probabilityOfDetection: 0 });
    expect(Object.values(contingencyScores({ hits: 0, falseAlarms: 0, misses: 0, correctNegatives: 0 })).filter((score) => score !== null)).toEqual([]);
    expect(relativeValue({ hits: 0, falseAlarms: 3, misses: 0, correctNegatives: 20 }, 0.1)).toBeNull();
  });

  it('is never NaN', () => {
    fc.assert(fc.property(table, (counts) => {
      for (const score of Object.values(contingencyScores(counts)) as (number | null)[]) expect(score === null || !Number.isNaN(score)).toBe(true);
    }));
  });

  it('scores perfect warnings 1 and the same warnings turned round below 0', () => {
    const perfect = { hits: 7, falseAlarms: 0, misses: 0, correctNegatives: 30 };
    expect(contingencyScores(perfect)).toMatchObject({ proportionCorrect: 1, criticalSuccessIndex: 1, gilbertSkillScore: 1, heidkeSkillScore: 1, peirceSkillScore: 1, falseAlarmRatio: 0 });
    expect(relativeValue(perfect, 0.2)).toBeCloseTo(1, 12);
    expect(contingencyScores({ hits: 0, falseAlarms: 30, misses: 7, correctNegatives: 0 }).peirceSkillScore).toBe(-1);
  });

  it('scores warnings by chance 0', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }), (events, others, times) => {
      // Warned on the same share of both kinds of night.
      const scores = contingencyScores({ hits: events * times, misses: events * 3, falseAlarms: others * times, correctNegatives: others * 3 });
      for (const skill of [scores.peirceSkillScore, scores.heidkeSkillScore, scores.gilbertSkillScore, scores.logOddsRatio]) expect(skill!).toBeCloseTo(0, 9);
    }));
  });

  it('has its highest value at the base rate, and there the Peirce score', () => {
    fc.assert(fc.property(full, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (counts, ratio) => {
      const baseRate = (counts.hits + counts.misses) / (counts.hits + counts.misses + counts.falseAlarms + counts.correctNegatives);
      const peirce = contingencyScores(counts).peirceSkillScore!;
      expect(relativeValue(counts, baseRate)!).toBeCloseTo(peirce, 9);
      expect(relativeValue(counts, ratio)!).toBeLessThanOrEqual(peirce + 1e-9);
    }));
  });

  it.each([0, 1, -0.1, Number.NaN])('has no value at a cost/loss ratio of %f', (ratio) => {
    expect(() => relativeValue({ hits: 1, falseAlarms: 1, misses: 1, correctNegatives: 1 }, ratio)).toThrow(OutOfRangeError);
  });
});
