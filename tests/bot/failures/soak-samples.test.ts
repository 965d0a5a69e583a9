import { expect, it } from 'vitest';
import { killRounds } from '../../soak/kills.js';
import { tableOf, type Report } from '../../soak/report.js';
import { rush } from '../../soak/rush.js';

// Short samples of the long trials: npm run soak.
const LONGEST_MS = 240_000;

function kept(report: Report): void {
  console.info(tableOf(report));
  expect(report.broken).toEqual([]);
}
const figure = ({ figures }: Report, what: string): number => Number.parseFloat(figures.find(([name]) => name === what)?.[1] ?? 'NaN');

it('killed at a few random moments of a day\'s traffic it loses and doubles nothing', async () => {
  const report = await killRounds(3);
  kept(report);
  expect(figure(report, 'readings said and kept')).toBeGreaterThan(0);
}, LONGEST_MS);

it('40 growers due in the same minute at 4 places all have their message, and share the weather of their place', async () => {
  const report = await rush({ growers: 40, places: 4, physics: false });
  kept(report);
  expect(figure(report, 'evening messages')).toBe(40);
}, LONGEST_MS);
