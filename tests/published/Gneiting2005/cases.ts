import { normalCdf } from '../../../engine/chance/normal.js';
import { crpsNormalK } from '../../../engine/score/crps-normal.js';
import { skillScore } from '../../../engine/score/skill-score.js';
import type { PublishedTable } from '../published-table.js';

/** Gneiting and others 2005: ranked probability score of a normal forecast in closed form, evaluated apart from this code; the place of the reading in the forecast (PIT), and skill against a reference. */
export const source = 'Gneiting2005';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'eq. 5: CRPS of a normal forecast', unit: 'K', tolerance: 1e-6, toleranceReason: 'rounded to six digits', origin: 'closed form',
    rows: ([[0, 1, 0, 0.233695], [0, 1, 1, 0.602441], [0, 1, 2, 1.452792], [-1.5, 1.2, -2, 0.362365], [-1.5, 1.2, 0.5, 1.370556], [2, 2.5, -1, 1.870038]] as const).map(([meanK, sdK, observed, expected]) => ({
      name: `mean ${meanK}, sd ${sdK}, reading ${observed}`, expected, model: () => crpsNormalK({ meanK, sdK }, observed),
    })),
  },
  {
    source, title: 'place of the reading in the forecast, mean -1.5, sd 1.2', unit: '1', tolerance: 1e-4, toleranceReason: 'rounded to four digits', origin: 'closed form',
    rows: ([[-2, 0.3385], [0.5, 0.9522]] as const).map(([observed, expected]) => ({ name: `reading ${observed}`, expected, model: () => normalCdf((observed + 1.5) / 1.2) })),
  },
  { source, title: 'skill of 0.60 against 0.95', unit: '1', tolerance: 1e-4, toleranceReason: 'rounded to four digits', origin: 'closed form', rows: [{ name: 'skill', expected: 0.3684, model: () => skillScore(0.6, 0.95)! }] },
];
