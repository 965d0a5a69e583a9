import { DateTime } from 'luxon';
import type { DayPart, DayPhrase } from './day-phrases.js';
import { unclear, type Statistic, type Unclear } from './intent.js';
import { localNow } from './local-now.js';
import type { ClockToken } from './value-grammar.js';

/** A reading with a clock but no day is of the last time that the clock showed it, if that is not longer ago than this. */
const REACH_HOURS = 20;
/** "29 at 7" is written two minutes before seven. */
const AHEAD_MINUTES = 15;

export interface Moment {
  readonly atS: number;
  readonly zone: string;
}

export interface ReadingTime {
  /** Absent where the time of the message is meant, or none that could be known. */
  readonly at?: string;
  /** The statistic that the phrase means when none was said: "29 last night" is the low. */
  readonly stat?: Statistic;
}

const localIso = (time: DateTime): string => time.toFormat("yyyy-MM-dd'T'HH:mm:ssZZ");

/** The instant in the grower's zone, with offset. */
export const localTime = (moment: Moment): string => localIso(localNow(moment));

const hoursOf = (clock: ClockToken): readonly number[] => (clock.exact ? [clock.hour] : [clock.hour % 12, (clock.hour % 12) + 12]);

const PART_HOURS: Readonly<Record<DayPart, (hour: number) => boolean>> = {
  morning: (hour) => hour < 12,
  day: (hour) => hour >= 8 && hour < 20,
  evening: (hour) => hour >= 12,
  night: (hour) => hour >= 17 || hour <= 10,
};

/** Hours that a statistic belongs to when "at 4" could be either: lows come in the night, highs by day. */
const STAT_HOURS: Readonly<Record<Statistic, (hour: number) => boolean>> = { low: PART_HOURS.night, high: PART_HOURS.day, now: () => true };

function lastShown(now: DateTime, clock: ClockToken, wanted: (hour: number) => boolean): DateTime | null {
  const times = hoursOf(clock).map((hour) => {
    const today = now.set({ hour, minute: clock.minute, second: 0, millisecond: 0 });
    return today.diff(now, 'minutes').minutes > AHEAD_MINUTES ? today.minus({ days: 1 }) : today;
  });
  const reached = times.filter((time) => now.diff(time, 'hours').hours <= REACH_HOURS).sort((a, b) => b.toMillis() - a.toMillis());
  return reached.find((time) => wanted(time.hour)) ?? reached[0] ?? null;
}

/** A time a little ahead is a rounded "now". */
const asPast = (time: DateTime, now: DateTime): DateTime => (time > now && time.diff(now, 'minutes').minutes <= AHEAD_MINUTES ? now : time);

function onDay(day: DayPhrase, clock: ClockToken, { now, stat }: { readonly now: DateTime; readonly stat: Statistic | null }): ReadingTime | Unclear {
  const date = DateTime.fromISO(day.date ?? '', { zone: now.zone });
  const wanted = day.part === null ? (stat === null ? null : STAT_HOURS[stat]) : PART_HOURS[day.part];
  const hours = hoursOf(clock);
  const fitting = hours.filter((hour) => wanted === null || wanted(hour));
  // A night that is named by its evening goes on into the next date.
  const times = (fitting.length > 0 ? fitting : hours).map((hour) => asPast(date.plus({ days: day.part === 'night' && hour < 12 ? 1 : 0 }).set({ hour, minute: clock.minute }), now)).filter((time) => time <= now);
  const [only] = times;
  if (only === undefined || times.length > 1) return unclear('which-time', { word: clock.text, ...(times.length > 1 ? { choices: times.map(localIso) } : {}) });
  return { at: localIso(only) };
}

/** When a reading is of, from the clock and the day that were said with it. */
export function readingTime(said: { readonly clock: ClockToken | null; readonly day: DayPhrase | null; readonly stat: Statistic | null }, moment: Moment): ReadingTime | Unclear {
  const now = localNow(moment);
  const { day, stat } = said;
  const clock: ClockToken | null = said.clock ?? (day !== null && day.hour !== null ? { type: 'clock', hour: day.hour, minute: 0, exact: true, start: day.start, end: day.end, text: day.hour === 0 ? 'midnight' : 'noon' } : null);
  if (day?.instantS !== null && day?.instantS !== undefined) return day.instantS <= moment.atS ? { at: localTime({ atS: day.instantS, zone: moment.zone }) } : unclear('which-time');
  if (clock !== null && day !== null && day.date !== null) return onDay(day, clock, { now, stat });
  if (clock !== null) {
    const wanted = day?.lastNight === true ? PART_HOURS.night : stat === null ? () => true : STAT_HOURS[stat];
    const time = lastShown(now, clock, wanted);
    return time === null ? unclear('which-time', { word: clock.text }) : { at: localIso(asPast(time, now)) };
  }
  if (day === null) return {};
  if (day.lastNight) return { at: localIso(now.startOf('day')), stat: 'low' };
  if (day.date === null) return unclear('which-time');
  const date = DateTime.fromISO(day.date, { zone: moment.zone });
  if (day.part === 'night') {
    const middle = date.plus({ days: 1 }).startOf('day');
    return middle <= now ? { at: localIso(middle), stat: 'low' } : unclear('which-time');
  }
  const isToday = date.hasSame(now, 'day');
  if (day.part !== null) {
    const time = date.set({ hour: day.part === 'morning' ? 6 : day.part === 'day' ? 15 : 20 });
    if (time <= now) return { at: localIso(time), ...(day.part === 'morning' ? { stat: 'low' as const } : {}) };
    return isToday ? (day.part === 'morning' ? { stat: 'low' } : {}) : unclear('which-time');
  }
  // "29 yesterday" could be of any hour of it; "the low yesterday" is enough to know the day.
  if (date > now || stat === null || stat === 'now') return unclear('which-time');
  return { at: localIso(date.set({ hour: 12 })) };
}
