import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { dateOf, dayTimes, isQuiet } from '../../../bot/schedule/day-times.js';
import { jobsOfDay } from '../../../bot/schedule/day-jobs.js';
import { checkGreenhouse, type Greenhouse, type GreenhouseFile } from '../../../engine/index.js';

const FILE: GreenhouseFile = {
  place: { latitude: 45.1, longitude: -72.2 },
  size: { width: 4, length: 8, height: 2.4 },
  layers: [{ film: 'standard' }],
  beds: [{ name: 'north', area: 10, crops: ['kale'], cover: { kind: 'fabric' } }],
};

function greenhouse(changes: Partial<GreenhouseFile> = {}): Greenhouse {
  const check = checkGreenhouse({ ...FILE, ...changes });
  if (!check.ok) throw new Error(JSON.stringify(check.faults));
  return check.greenhouse;
}

const clock = (timeS: number, zone: string): string => DateTime.fromSeconds(timeS, { zone }).toFormat('HH:mm');
const ZONE = 'America/Toronto';
const WORK_MIN = 13 + 8; // 3 minutes and 1 for each of 10 m2, and the small moves

describe('an evening in winter', () => {
  const times = dayTimes(greenhouse(), ZONE, '2026-12-01');

  it('must be done by civil dusk, and the message comes early enough for the work and for being seen', () => {
    // Sunset at 45.1 N 72.2 W on 1 December is about 16:08, civil dusk about 32 minutes later (suncalc).
    expect(clock(times.deadlineS, ZONE)).toMatch(/^16:(3[5-9]|4[0-5])$/u);
    expect(times.deadlineS - times.advisoryS).toBeGreaterThanOrEqual((1.25 * WORK_MIN + 45) * 60);
    expect(times.deadlineS - times.advisoryS).toBeLessThan((1.25 * WORK_MIN + 45) * 60 + 120);
  });

  it('goes through the day in order', () => {
    const { weekS, advisoryS, reminderS, deadlineS, recheckS, bedtimeS, uselessAfterS, nextDayS } = times;
    const order = [weekS, advisoryS, reminderS, deadlineS, recheckS, bedtimeS, uselessAfterS, nextDayS];
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('comes when the grower chose, unless the work could then no longer be done', () => {
    const chosen = (eveningAt: string): string => clock(dayTimes(greenhouse({ grower: { eveningAt } }), ZONE, '2026-12-01').advisoryS, ZONE);
    expect(chosen('14:00')).toBe('14:00');
    expect(chosen('20:00') < '16:20').toBe(true);
  });
});

describe('where the sun does as it likes', () => {
  const at = (latitude: number, longitude: number, zone: string, date: string): ReturnType<typeof dayTimes> => dayTimes(greenhouse({ place: { latitude, longitude } }), zone, date);

  it('polar night: the work ends at five, as on any short day', () => {
    expect(clock(at(78.2, 15.6, 'Arctic/Longyearbyen', '2026-12-21').deadlineS, 'Arctic/Longyearbyen')).toBe('17:00');
    expect(clock(at(71.3, -156.8, 'America/Anchorage', '2026-12-21').deadlineS, 'America/Anchorage')).toBe('17:00');
  });

  it('midnight sun: the work ends at five or at bedtime', () => {
    expect(clock(at(78.2, 15.6, 'Arctic/Longyearbyen', '2026-06-21').deadlineS, 'Arctic/Longyearbyen')).toBe('17:00');
  });

  it('late summer dusk after bedtime: bedtime ends the evening', () => {
    expect(clock(at(60, 25, 'Europe/Helsinki', '2026-06-01').deadlineS, 'Europe/Helsinki')).toBe('21:30');
  });

  it.each([45, 50, 55, 60, 65, 70, 75, 78])('every day of a year at %i degrees has one advisory between eleven and bedtime', (latitude) => {
    let day = DateTime.fromISO('2026-01-01', { zone: 'Europe/Oslo' });
    let last = 0;
    for (let n = 0; n < 365; n += 5, day = day.plus({ days: 5 })) {
      const { advisoryS } = at(latitude, 15, 'Europe/Oslo', day.toISODate()!);
      const local = clock(advisoryS, 'Europe/Oslo');
      expect(local >= '11:00' && local <= '21:00').toBe(true);
      expect(advisoryS).toBeGreaterThan(last);
      last = advisoryS;
    }
  });
});

/** Every zone that Node knows whose offset changes in a year, with the local date of each change: looked for half a month at a time. */
function transitions(year: number): readonly { zone: string; date: string }[] {
  const STEP = 14;
  return Intl.supportedValuesOf('timeZone').flatMap((zone) => {
    const first = DateTime.fromObject({ year, month: 1, day: 1, hour: 12 }, { zone });
    return Array.from({ length: Math.ceil(365 / STEP) }, (_, n) => first.plus({ days: n * STEP })).flatMap((from) => {
      if (from.plus({ days: STEP }).offset === from.offset) return [];
      let [before, after] = [0, STEP];
      while (after - before > 1) {
        const middle = Math.floor((before + after) / 2);
        if (from.plus({ days: middle }).offset === from.offset) before = middle;
        else after = middle;
      }
      return [{ zone, date: from.plus({ days: after }).toISODate()! }];
    });
  });
}

describe('when the clocks change', () => {
  it.each([2026, 2027])('each zone has one advisory on each of the three local days around it, %i', (year) => {
    const changes = transitions(year);
    expect(changes.length).toBeGreaterThan(100);
    const house = greenhouse({ place: { latitude: 48, longitude: 0 } });
    for (const { zone, date } of changes) {
      const days = [-1, 0, 1].map((shift) => DateTime.fromISO(date, { zone }).plus({ days: shift }).toISODate()!);
      // Walk the chain as the tick does: each day's last job plans the next local date.
      const jobs = days.flatMap((day) => jobsOfDay('g', house, zone, day));
      const advisories = jobs.filter(({ kind }) => kind === 'advisory');
      expect(new Set(advisories.map(({ key }) => key)).size).toBe(3);
      expect(advisories.map(({ dueAtS }) => dateOf(dueAtS, zone))).toEqual(days);
      for (const kind of ['week', 'recheck', 'morning', 'day'] as const) {
        const due = jobs.filter((job) => job.kind === kind).map(({ dueAtS }) => dueAtS);
        expect(due[1]! - due[0]!).toBeGreaterThan(20 * 3600);
        expect(due[1]! - due[0]!).toBeLessThan(28 * 3600);
      }
      // The job that plans the next day runs on that next local date, also when three o'clock is skipped or comes twice.
      for (const [n, job] of jobs.filter(({ kind }) => kind === 'day').entries()) expect(dateOf(job.dueAtS, zone) > days[n]!).toBe(true);
    }
  });

  it.each(['Asia/Kathmandu', 'Asia/Kolkata', 'Australia/Lord_Howe', 'America/St_Johns', 'Pacific/Chatham'])('%s, off the hour, is told by its own clock', (zone) => {
    expect(clock(dayTimes(greenhouse(), zone, '2026-11-25').morningS, zone)).toBe('08:00');
  });
});

describe('quiet hours', () => {
  const quiet = (hour: string, hours?: { from: string; until: string }): boolean => isQuiet(greenhouse(hours ? { grower: { quiet: hours } } : {}), ZONE, DateTime.fromISO(`2026-11-25T${hour}`, { zone: ZONE }).toSeconds());

  it('run over midnight', () => {
    expect([quiet('21:29'), quiet('21:30'), quiet('23:59'), quiet('03:00'), quiet('06:29'), quiet('06:30')]).toEqual([false, true, true, true, true, false]);
  });

  it('may lie within a day', () => {
    expect([quiet('12:30', { from: '12:00', until: '13:00' }), quiet('22:00', { from: '12:00', until: '13:00' })]).toEqual([true, false]);
  });
});
