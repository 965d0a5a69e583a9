import { describe, expect, it } from 'vitest';
import { clockShiftS, timeAxis } from '../../../bot/chart/time-axis.js';

const seconds = (iso: string): number => Date.parse(iso) / 1000;
const WIDE = { leftX: 0, rightX: 2000, leastTickPx: 1 };
const clocks = (fromIso: string, toIso: string, zone: string, across = WIDE): string[] => timeAxis({ fromS: seconds(fromIso), toS: seconds(toIso), zone }, across).ticks.map(({ clock }) => clock);

describe('hours on the grower\'s own clock', () => {
  it.each([
    ['Berlin, the hour that is left out', '2027-03-28T00:00:00+01:00', '2027-03-28T05:00:00+02:00', 'Europe/Berlin', ['00:00', '01:00', '03:00', '04:00', '05:00']],
    ['Berlin, the hour that comes twice', '2026-10-25T01:00:00+02:00', '2026-10-25T04:00:00+01:00', 'Europe/Berlin', ['01:00', '02:00', '02:00', '03:00', '04:00']],
    ['Kolkata, half an hour aside', '2026-12-01T12:00:00Z', '2026-12-01T14:30:00Z', 'Asia/Kolkata', ['18:00', '19:00', '20:00']],
    ['St. John\'s, half an hour aside', '2026-12-01T20:00:00Z', '2026-12-01T22:45:00Z', 'America/St_Johns', ['17:00', '18:00', '19:00']],
    ['Kathmandu, three quarters aside', '2026-12-01T12:00:00Z', '2026-12-01T13:30:00Z', 'Asia/Kathmandu', ['18:00', '19:00']],
    ['Lord Howe, a change of half an hour', '2026-10-04T01:00:00+10:30', '2026-10-04T04:00:00+11:00', 'Australia/Lord_Howe', ['01:00', '03:00', '04:00']],
  ])('%s', (_name, from, to, zone, expected) => {
    expect(clocks(from, to, zone)).toEqual(expected);
  });

  it('stand as far apart as the hours really are', () => {
    const { ticks } = timeAxis({ fromS: seconds('2027-03-28T00:00:00+01:00'), toS: seconds('2027-03-28T10:00:00+02:00'), zone: 'Europe/Berlin' }, { leftX: 0, rightX: 900, leastTickPx: 150 });
    expect(ticks.map(({ clock, x }) => [clock, Math.round(x)])).toEqual([['00:00', 0], ['04:00', 300], ['06:00', 500], ['08:00', 700], ['10:00', 900]]);
  });

  it('are fewer where there is less room, and midnight is always among them', () => {
    for (const leastTickPx of [40, 90, 130, 200, 300]) {
      const { ticks } = timeAxis({ fromS: seconds('2026-12-01T15:20:00-05:00'), toS: seconds('2026-12-02T09:20:00-05:00'), zone: 'America/Toronto' }, { leftX: 100, rightX: 1056, leastTickPx });
      expect(ticks.map(({ clock }) => clock)).toContain('00:00');
      for (let i = 1; i < ticks.length; i += 1) expect(ticks[i]!.x - ticks[i - 1]!.x).toBeGreaterThanOrEqual(leastTickPx - 1e-9);
    }
  });
});

describe('the change of clocks', () => {
  it.each([
    ['2027-03-27T16:00:00+01:00', '2027-03-28T09:00:00+02:00', 'Europe/Berlin', 3600],
    ['2026-10-24T16:00:00+02:00', '2026-10-25T09:00:00+01:00', 'Europe/Berlin', -3600],
    ['2026-10-03T16:00:00+10:30', '2026-10-04T09:00:00+11:00', 'Australia/Lord_Howe', 1800],
    ['2026-12-01T16:00:00+01:00', '2026-12-02T09:00:00+01:00', 'Europe/Berlin', 0],
    ['2026-10-24T16:00:00+05:30', '2026-10-25T09:00:00+05:30', 'Asia/Kolkata', 0],
  ])('from %s to %s in %s is %i s', (from, to, zone, shiftS) => {
    expect(clockShiftS({ fromS: seconds(from), toS: seconds(to), zone })).toBe(shiftS);
  });
});
