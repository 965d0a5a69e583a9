import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { understand } from '../../../bot/language/understand.js';
import { CROPS } from './crop-words.js';

const at = (text: string, atS: number, zone: string): string | undefined => {
  const intent = understand({ text, atS, zone, units: 'F', crops: CROPS });
  return intent.kind === 'reading' ? intent.readings[0]?.at : undefined;
};

describe('the time of a reading', () => {
  it('is the last time that the clock showed it, within 20 hours and never ahead', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1_760_000_000, max: 1_800_000_000 }), fc.constantFrom('America/New_York', 'Europe/Oslo', 'Asia/Kolkata', 'Australia/Adelaide', 'UTC'), fc.integer({ min: 0, max: 23 }), (nowS, zone, hour) => {
        const text = `29 at ${`${hour}`.padStart(2, '0')}:30`;
        const said = at(text, nowS, zone);
        if (said === undefined) return;
        const time = DateTime.fromISO(said, { setZone: true });
        expect(time.toSeconds()).toBeLessThanOrEqual(nowS);
        expect(nowS - time.toSeconds()).toBeLessThanOrEqual(20 * 3600);
        expect(said).toMatch(/[+-]\d\d:\d\d$/);
        expect(time.offset).toBe(DateTime.fromSeconds(time.toSeconds(), { zone }).offset);
      }),
    );
  });

  it.each([
    ['29 at 1:30', '2026-03-08T07:00:00-04:00', '2026-03-08T01:30:00-05:00'],
    ['29 at 5am', '2026-03-08T07:00:00-04:00', '2026-03-08T05:00:00-04:00'],
    ['29 at 5am', '2026-11-01T07:00:00-05:00', '2026-11-01T05:00:00-05:00'],
    ['29 at 11pm', '2026-11-01T07:00:00-05:00', '2026-10-31T23:00:00-04:00'],
    ['29 3 hours ago', '2026-11-01T04:00:00-05:00', '2026-11-01T01:00:00-05:00'],
    ['low tuesday night 29', '2026-01-15T07:10:00-05:00', '2026-01-14T00:00:00-05:00'],
  ])('%s, said at %s, is of %s', (text, now, expected) => {
    expect(at(text, DateTime.fromISO(now).toSeconds(), 'America/New_York')).toBe(expected);
  });
});
