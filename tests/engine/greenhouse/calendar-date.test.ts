import fc from 'fast-check';
import { expect, it } from 'vitest';
import { epochOfDateS } from '../../../engine/greenhouse/calendar-date.js';

it('a calendar date is the midnight UTC that the platform gives it, through leap years and centuries', () => {
  fc.assert(fc.property(fc.integer({ min: Date.UTC(1900, 0, 1) / 86_400_000, max: Date.UTC(2199, 11, 31) / 86_400_000 }), (day) => {
    const date = new Date(day * 86_400_000).toISOString().slice(0, 10);
    expect(epochOfDateS(date)).toBe(day * 86_400);
  }));
});

it.each([['1970-01-01', 0], ['2000-02-29', 951_782_400], ['2026-03-01', 1_772_323_200], ['1999-12-31', 946_598_400]])('%s', (date, seconds) => {
  expect(epochOfDateS(date)).toBe(seconds);
});
