import type { ContingencyTable } from './contingency-table.js';

/** Scores of yes/no forecasts; null where the table leaves a score undefined (no event, no warning, an empty cell under a logarithm). */
export interface ContingencyScores {
  readonly proportionCorrect: number | null;
  /** What never warning would have got right. */
  readonly proportionCorrectOfNever: number | null;
  readonly frequencyBias: number | null;
  readonly probabilityOfDetection: number | null;
  readonly falseAlarmRatio: number | null;
  readonly probabilityOfFalseDetection: number | null;
  readonly criticalSuccessIndex: number | null;
  readonly gilbertSkillScore: number | null;
  readonly heidkeSkillScore: number | null;
  readonly peirceSkillScore: number | null;
  readonly oddsRatio: number | null;
  readonly logOddsRatio: number | null;
  readonly logOddsRatioStandardError: number | null;
  /** Symmetric extremal dependence index: holds its meaning for rare events. */
  readonly extremalDependenceIndex: number | null;
}

const ratio = (above: number, below: number): number | null => (below === 0 ? null : above / below);

/**
 * The usual scores of a contingency table.
 * Units: counts in; dimensionless.
 * Valid: counts of 0 or more.
 * Outside: null where a score is not defined, never 0.
 * Source: BoM-Verification (yes/no forecasts; table of Finley1884); Stephenson2000 for the odds ratio; Ferro2011 for the extremal dependence index.
 */
export function contingencyScores(table: ContingencyTable): ContingencyScores {
  const { hits: a, falseAlarms: b, misses: c, correctNegatives: d } = table;
  const n = a + b + c + d;
  const detection = ratio(a, a + c);
  const falseDetection = ratio(b, b + d);
  const hitsByChance = ratio((a + b) * (a + c), n);
  const oddsRatio = ratio(a * d, b * c);
  const logarithms = a > 0 && b > 0 && c > 0 && d > 0;
  return {
    proportionCorrect: ratio(a + d, n),
    proportionCorrectOfNever: ratio(b + d, n),
    frequencyBias: ratio(a + b, a + c),
    probabilityOfDetection: detection,
    falseAlarmRatio: ratio(b, a + b),
    probabilityOfFalseDetection: falseDetection,
    criticalSuccessIndex: ratio(a, a + b + c),
    gilbertSkillScore: hitsByChance === null ? null : ratio(a - hitsByChance, a + b + c - hitsByChance),
    heidkeSkillScore: ratio(2 * (a * d - b * c), (a + c) * (c + d) + (a + b) * (b + d)),
    peirceSkillScore: detection === null || falseDetection === null ? null : detection - falseDetection,
    oddsRatio,
    logOddsRatio: logarithms ? Math.log(oddsRatio!) : null,
    logOddsRatioStandardError: logarithms ? Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d) : null,
    extremalDependenceIndex: logarithms ? extremalDependence(detection!, falseDetection!) : null,
  };
}

function extremalDependence(detection: number, falseDetection: number): number | null {
  const [f, h, f1, h1] = [falseDetection, detection, 1 - falseDetection, 1 - detection].map(Math.log) as [number, number, number, number];
  return ratio(f - h - f1 + h1, f + h + f1 + h1);
}
