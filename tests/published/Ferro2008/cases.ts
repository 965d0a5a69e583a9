import { crpsSampleK } from '../../../engine/score/crps-sample.js';
import type { PublishedTable } from '../published-table.js';

/** Ferro, Richardson and Weigel 2008: CRPS of an ensemble, plain and fair to its size, evaluated apart from this code. */
export const source = 'Ferro2008';

const CASES = [
  { members: [-2, -1, 0], observed: -1.5, plain: 0.388889, fair: 0.166667 },
  { members: [-2, -1, 0, 1, 2], observed: 0, plain: 0.4, fair: 0.2 },
  { members: [1, 2, 3, 4], observed: 0, plain: 1.875, fair: 1.666667 },
] as const;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'CRPS of an ensemble', unit: 'K', tolerance: 1e-6, toleranceReason: 'rounded to six digits', origin: 'closed form',
    rows: CASES.flatMap(({ members, observed, ...printed }) => (['plain', 'fair'] as const).map((form) => ({ name: `${members.join(', ')} against ${observed}, ${form}`, expected: printed[form], model: () => crpsSampleK(members, observed, form) }))),
  },
];
