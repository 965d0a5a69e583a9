import { binomialCdf, wilsonInterval } from '../../../engine/score/coverage.js';
import type { PublishedTable } from '../published-table.js';

/** Wilson 1927: range of a counted share; and the binomial chance of so few readings inside an 80 % range. Evaluated apart from this code. */
export const source = 'Wilson1927';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'range of a share, 90 %', unit: '1', tolerance: 1e-4, toleranceReason: 'rounded to four digits', origin: 'closed form',
    rows: ([[24, 30, 0.6575, 0.8929], [8, 10, 0.5408, 0.9314]] as const).flatMap(([inside, nights, low, high]) => [
      { name: `${inside} of ${nights}: low`, expected: low, model: () => wilsonInterval(inside, nights, 0.9).low },
      { name: `${inside} of ${nights}: high`, expected: high, model: () => wilsonInterval(inside, nights, 0.9).high },
    ]),
  },
  {
    source, title: 'chance of so few of 30 inside an 80 % range', unit: '1', tolerance: 1e-4, toleranceReason: 'rounded to four digits', origin: 'closed form',
    rows: ([[18, 0.0095], [20, 0.0611]] as const).map(([inside, expected]) => ({ name: `${inside} or fewer`, expected, model: () => binomialCdf(inside, 30, 0.8) })),
  },
];
