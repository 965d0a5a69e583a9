import { contingencyScores, type ContingencyScores } from '../../../engine/score/contingency-scores.js';
import { relativeValue } from '../../../engine/score/relative-value.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Finley's tornado forecasts of 1884, counts as on the verification pages of the Bureau of Meteorology (BoM-Verification), which print 96.6 %
 * correct, 98.2 % by never forecasting, bias near 2, false alarm ratio 0.72, threat score 0.23, Hanssen-Kuipers score 0.52. Further digits, and
 * the relative value by cost/loss ratio (Richardson2000), were computed apart from this code.
 */
export const source = 'Finley1884';
export const sources = ['Finley1884', 'BoM-Verification', 'Richardson2000', 'Stephenson2000', 'Ferro2011'] as const;

const FINLEY = { hits: 28, falseAlarms: 72, misses: 23, correctNegatives: 2680 };
const scores = contingencyScores(FINLEY);
const of = (name: keyof ContingencyScores): (() => number) => () => scores[name] ?? Number.NaN;

const PRINTED: Readonly<Record<keyof ContingencyScores, number>> = {
  proportionCorrect: 0.9661,
  proportionCorrectOfNever: 0.9818,
  frequencyBias: 1.9608,
  probabilityOfDetection: 0.549,
  falseAlarmRatio: 0.72,
  probabilityOfFalseDetection: 0.02616,
  criticalSuccessIndex: 0.2276,
  gilbertSkillScore: 0.216,
  heidkeSkillScore: 0.3553,
  peirceSkillScore: 0.5229,
  oddsRatio: 45.314,
  logOddsRatio: 3.8136,
  logOddsRatioStandardError: 0.3057,
  extremalDependenceIndex: 0.7528,
};
const BASE_RATE = 51 / 2803;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'scores as the page words them', unit: '1', tolerance: 0.006, toleranceReason: 'printed to two or three digits', origin: 'published',
    rows: [
      { name: 'proportion correct', expected: 0.966, model: of('proportionCorrect') },
      { name: 'proportion correct by never forecasting', expected: 0.982, model: of('proportionCorrectOfNever') },
      { name: 'bias', expected: 2, tolerance: 0.05, model: of('frequencyBias') },
      { name: 'false alarm ratio', expected: 0.72, model: of('falseAlarmRatio') },
      { name: 'threat score', expected: 0.23, model: of('criticalSuccessIndex') },
      { name: 'Hanssen and Kuipers', expected: 0.52, model: of('peirceSkillScore') },
    ],
  },
  { source, title: 'scores with further digits', unit: '1', tolerance: 5e-4, toleranceReason: 'rounded to four digits', origin: 'closed form', rows: (Object.keys(PRINTED) as (keyof ContingencyScores)[]).map((name) => ({ name, expected: PRINTED[name], model: of(name) })) },
  {
    source, title: 'relative value by cost/loss ratio', unit: '1', tolerance: 1e-4, toleranceReason: 'rounded to four digits', origin: 'closed form',
    rows: ([[0.005, -0.6893], [0.01, 0.1464], [BASE_RATE, 0.5229], [0.05, 0.4747], [0.1, 0.3922], [0.2, 0.1961], [0.3, -0.056], [0.5, -0.8627], [0.00851, 0], [0.28, 0]] as const).map(([ratio, expected]) => ({
      name: ratio === BASE_RATE ? 'at the base rate: the Peirce score' : `${ratio}`,
      expected,
      // The two ends of the range in which the forecasts are worth something are rounded to three digits themselves.
      tolerance: expected === 0 ? 1e-3 : 1e-4,
      model: () => relativeValue(FINLEY, ratio) ?? Number.NaN,
    })),
  },
];
