import { offsetAfterReading, steadyGain, type SiteOffset } from '../../../engine/learn/site-offset.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/** Kalman 1960, one dimension, as weather services use it for 2 m temperatures (Galanis2002, Homleid1995): five readings in a row, and the fixed points of the gain; worked out apart from this code. */
export const source = 'Kalman1960';

const NOISE = { driftK2PerDay: 0.0675, readingK2: 2.25 };
/** Reading less model, then gain, offset and variance after it. */
const SERIES = [
  [1, 0.64385, 0.64385, 1.44865],
  [2, 0.40257, 1.1898, 0.90579],
  [1.5, 0.30196, 1.28347, 0.6794],
  [-0.5, 0.24922, 0.83898, 0.56075],
  [1, 0.21828, 0.87413, 0.49112],
] as const;

function seriesRows(): PublishedRow[] {
  let state: SiteOffset = { offsetK: 0, varianceK2: 4 };
  return SERIES.flatMap(([missK, gain, offset, variance], night) => {
    const after = offsetAfterReading(state, { missK, days: 1 }, NOISE);
    state = after;
    const row = (what: string, expected: number, value: number): PublishedRow => ({ name: `night ${night + 1}, reading ${missK}: ${what}`, expected, model: () => value });
    return [row('gain', gain, after.gain), row('offset', offset, after.offsetK), row('variance', variance, after.varianceK2)];
  });
}

export const tables: readonly PublishedTable[] = [
  { source, title: 'offset of a site from five readings', unit: 'K and K2', tolerance: 1e-5, toleranceReason: 'rounded to five digits', origin: 'closed form', rows: seriesRows() },
  {
    source, title: 'gain once readings come every night', unit: '1', tolerance: 1e-5, toleranceReason: 'rounded to five digits', origin: 'closed form',
    rows: ([[0.01, 0.09512], [0.03, 0.15885], [0.06, 0.21678], [0.1, 0.27016]] as const).map(([ratio, expected]) => ({ name: `drift over scatter ${ratio}`, expected, model: () => steadyGain(ratio) })),
  },
];
