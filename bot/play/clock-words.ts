import { DateTime } from 'luxon';
import type { Greenhouse } from '../../engine/index.js';
import { dateOf, dayTimes, type DayTimes } from '../schedule/day-times.js';

/** Where the clock is to go, or why it cannot. */
export type ClockMove = { readonly toS: number } | { readonly fault: 'over' | 'no-such-time' | 'too-far' };

export interface ClockNow {
  readonly nowS: number;
  readonly zone: string;
  /** Null while it is still to be described. */
  readonly greenhouse: Greenhouse | null;
}

/** Each day on the way is worked out in earnest: a month takes minutes. */
const LONGEST_DAYS = 31;
/** Without a greenhouse nothing says when its grower gets up or looks at the house. */
const MORNING_AT = '07:00';
const EVENING_AT = '16:00';

const NUMBER_WORDS: Readonly<Record<string, number>> = { a: 1, an: 1, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, eleven: 11, twelve: 12 };
const UNITS = { m: 'minutes', h: 'hours', d: 'days', w: 'weeks' } as const;
const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

const NEXT = /^(?:the )?next (morning|evening|day)$/u;
const BY_NAME = /^(?:next )?(noon|midnight)$/u;
const AFTER = /^(?:in |\+\s*)(\d{1,4}|[a-z]+)\s*(m|min|mins|minutes?|h|hours?|d|days?|w|weeks?)$/u;
const ON_DAY = /^(?:on )?([a-z]+) at (noon|midnight|(\d{1,2})(?::(\d\d))?\s*(am|pm)?)$/u;

/** Words that move the clock; null for all others, which are meant for the assistant. */
export function clockMove(text: string, now: ClockNow): ClockMove | null {
  const said = text.toLowerCase().replaceAll(/\s+/gu, ' ').replace(/[.!]$/u, '').trim();
  const local = DateTime.fromSeconds(now.nowS, { zone: now.zone });
  const to = movedTo(said, local, now);
  if (to === null || 'fault' in to) return to;
  if (to.at <= local) return { fault: 'over' };
  return to.at > local.plus({ days: LONGEST_DAYS }) ? { fault: 'too-far' } : { toS: Math.round(to.at.toSeconds()) };
}

function movedTo(said: string, local: DateTime, now: ClockNow): { readonly at: DateTime } | { readonly fault: 'no-such-time' } | null {
  const next = NEXT.exec(said)?.[1];
  if (next !== undefined) return { at: next === 'day' ? local.plus({ days: 1 }) : nextOf(next, local, now) };
  const name = BY_NAME.exec(said)?.[1];
  if (name !== undefined) return { at: firstAfter(local, (day) => at(day, clockNamed(name))) };
  const after = AFTER.exec(said);
  if (after) {
    const amount = /^\d/u.test(after[1]!) ? Number(after[1]) : NUMBER_WORDS[after[1]!];
    return amount === undefined ? null : { at: local.plus({ [UNITS[after[2]!.slice(0, 1) as keyof typeof UNITS]]: amount }) };
  }
  const onDay = ON_DAY.exec(said);
  const day = onDay === null ? null : dayNamed(onDay[1]!, local);
  if (!onDay || day === null) return null;
  const clock = onDay[3] === undefined ? clockNamed(onDay[2]!) : clockTime(Number(onDay[3]), Number(onDay[4] ?? 0), onDay[5]);
  return clock === null ? { fault: 'no-such-time' } : { at: at(day, clock) };
}

/** Today, tomorrow, or the next day of that name: on a Friday "friday" is a week ahead. */
function dayNamed(word: string, local: DateTime): DateTime | null {
  if (word === 'today') return local;
  if (word === 'tomorrow') return local.plus({ days: 1 });
  const weekday = WEEKDAYS.findIndex((name) => name === word || name.slice(0, 3) === word) + 1;
  return weekday === 0 ? null : firstAfter(local.plus({ days: 1 }).startOf('day').minus({ seconds: 1 }), (day) => (day.weekday === weekday ? day.startOf('day') : null));
}

const clockNamed = (name: string): string => (name === 'noon' ? '12:00' : '00:00');

function clockTime(hour: number, minute: number, half: string | undefined): string | null {
  const isTwelve = half !== undefined;
  if (minute > 59 || hour > (isTwelve ? 12 : 23) || (isTwelve && hour === 0)) return null;
  return `${isTwelve ? (hour % 12) + (half === 'pm' ? 12 : 0) : hour}:${minute}`;
}

function at(day: DateTime, clock: string): DateTime {
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  return day.set({ hour, minute, second: 0, millisecond: 0 });
}

/** When the house is next written to in the morning, or in the evening. */
function nextOf(which: string, local: DateTime, { nowS, zone, greenhouse }: ClockNow): DateTime {
  if (greenhouse === null) return firstAfter(local, (day) => at(day, which === 'morning' ? MORNING_AT : EVENING_AT));
  const timeOf = ({ morningS, advisoryS }: DayTimes): number => (which === 'morning' ? morningS : advisoryS);
  const today = DateTime.fromISO(dateOf(nowS, zone), { zone });
  return firstAfter(local, (day) => DateTime.fromSeconds(timeOf(dayTimes(greenhouse, zone, day.toISODate()!)), { zone }), today);
}

/** The first instant after this one that a day has, day by day. */
function firstAfter(local: DateTime, ofDay: (day: DateTime) => DateTime | null, from: DateTime = local): DateTime {
  for (let days = 0; days <= WEEKDAYS.length + 1; days += 1) {
    const found = ofDay(from.plus({ days }));
    if (found !== null && found > local) return found;
  }
  throw new Error('every day has its morning, noon and evening');
}
