import { DateTime } from 'luxon';

/** Instants on the grower's own clock. */
export interface LocalTime {
  readonly zone: string;
  iso(timeS: number): string;
  /** "2026-11-25" */
  date(timeS: number): string;
  /** "16:40" */
  clock(timeS: number): string;
  /** "Wed 25 Nov" */
  day(timeS: number): string;
  /** The instant of a clock time on the local date of another instant. */
  atClock(timeS: number, clock: string): number;
  /** The instant of noon on a local date. */
  noonOf(date: string): number;
}

const wholeMinute = (timeS: number): number => Math.round(timeS / 60) * 60;

export function localTime(zone: string): LocalTime {
  const valid = (time: DateTime): DateTime => {
    if (!time.isValid) throw new Error(`expected an instant and an IANA time zone such as America/Toronto, got ${JSON.stringify(zone)} (${time.invalidReason})`);
    return time;
  };
  const at = (timeS: number): DateTime => valid(DateTime.fromSeconds(timeS, { zone }));
  return {
    zone,
    iso: (timeS) => at(wholeMinute(timeS)).toISO({ suppressMilliseconds: true })!,
    date: (timeS) => at(timeS).toISODate()!,
    clock: (timeS) => at(wholeMinute(timeS)).toFormat('HH:mm'),
    day: (timeS) => at(timeS).setLocale('en-GB').toFormat('ccc d LLL'),
    atClock: (timeS, clock) => {
      const [hour, minute] = clock.split(':').map(Number);
      return Math.round(at(timeS).set({ hour: hour!, minute: minute!, second: 0, millisecond: 0 }).toSeconds());
    },
    noonOf: (date) => valid(DateTime.fromISO(`${date}T12:00`, { zone })).toSeconds(),
  };
}

/** ISO text of an advisory as a clock time: the offset is in the text, so that no zone is needed. */
export const clockOf = (iso: string): string => iso.slice(11, 16);
