import { brierParts, brierScore, type StatedChance } from '../../../engine/score/brier.js';
import { skillScore } from '../../../engine/score/skill-score.js';
import type { PublishedTable } from '../published-table.js';

/** Murphy 1973: Brier score and its parts, a toy of ten forecasts worked out apart from this code. */
export const source = 'Murphy1973';

const stated = (probability: number, outcomes: readonly number[]): StatedChance[] => outcomes.map((outcome) => ({ probability, happened: outcome === 1 }));
const TOY = [...stated(0.1, [0, 0, 0, 1, 0]), ...stated(0.5, [1, 0, 1, 0]), ...stated(0.9, [1])];
const parts = brierParts(TOY, [0.3, 0.7]);

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'Brier score of ten forecasts', unit: '1', tolerance: 1e-9, toleranceReason: 'exact arithmetic', origin: 'closed form',
    rows: [
      { name: 'score', expected: 0.186, model: () => brierScore(TOY) },
      { name: 'reliability', expected: 0.006, model: () => parts.reliability },
      { name: 'resolution', expected: 0.06, model: () => parts.resolution },
      { name: 'uncertainty', expected: 0.24, model: () => parts.uncertainty },
      { name: 'within bins', expected: 0, model: () => parts.withinBins },
      { name: 'skill against the base rate', expected: 0.225, model: () => skillScore(brierScore(TOY), parts.uncertainty)! },
    ],
  },
];
