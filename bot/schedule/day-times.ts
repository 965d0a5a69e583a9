import { DateTime } from 'luxon';
import { mostMinutes, nextCivilDuskS, nextSunriseS, nextSunsetS, toHouse, type Greenhouse } from '../../engine/index.js';

/** When what happens on one local day of one greenhouse, epoch seconds. */
export interface DayTimes {
  /** Local date, "2026-11-25". */
  readonly date: string;
  /** Hand work must be finished: civil dusk or bedtime, whichever comes first. */
  readonly deadlineS: number;
  readonly bedtimeS: number;
  /** The nights ahead are looked at. */
  readonly weekS: number;
  readonly advisoryS: number;
  /** One reminder, where the evening's work is still not answered. */
  readonly reminderS: number;
  /** A last look at a newer forecast. */
  readonly recheckS: number;
  /** Morning plan and question of this day, for the night before. */
  readonly morningS: number;
  /** An evening message is of no use any more. */
  readonly uselessAfterS: number;
  readonly nextDayS: number;
}

/** Where the sun does not set, or only after midnight, the evening's work ends at this clock time. */
const DUSK_WITHOUT_SUNSET = '17:00';
const WEEK_AT = '12:00';
const DAY_BEGINS_AT = '03:00';
const USELESS_FROM = '01:00';
/** Work takes longer than it should, and the message must be seen before it starts (decision rule of this project). */
const TIME_MARGIN = 1.25;
const REPLY_SLACK_S = 45 * 60;
/** Also who chose a later hour must see the message before the work has to begin: at that very moment it is too late for it (project estimate). */
const SEEN_WITHIN_S = 10 * 60;
const REMIND_BEFORE_START_S = 15 * 60;
const EARLIEST = '11:00';
const BEFORE_BEDTIME_S = 30 * 60;
const SECONDS_PER_MINUTE = 60;

/** The clock of one local day. Times that a change of the clocks skips move on with it, those that come twice count once. */
export function dayTimes(greenhouse: Greenhouse, zone: string, date: string): DayTimes {
  const { grower, place } = greenhouse;
  const at = (clock: string, day = date): number => {
    const [hour, minute] = clock.split(':').map(Number) as [number, number];
    return Math.round(DateTime.fromISO(day, { zone }).set({ hour, minute }).toSeconds());
  };
  const nextDate = DateTime.fromISO(date, { zone }).plus({ days: 1 }).toISODate()!;
  // A bedtime after midnight belongs to the evening before it.
  const bedtimeS = at(grower.bedtime, grower.bedtime < DAY_BEGINS_AT.padStart(5, '0') ? nextDate : date);
  const deadlineS = Math.min(duskS(place, { noonS: at('12:00'), endOfDayS: at(DAY_BEGINS_AT, nextDate) }) ?? at(DUSK_WITHOUT_SUNSET), bedtimeS);
  const workS = TIME_MARGIN * SECONDS_PER_MINUTE * mostMinutes(greenhouse, toHouse(greenhouse));
  const latestStartS = deadlineS - workS;
  const wantedS = grower.eveningAt === undefined ? latestStartS - REPLY_SLACK_S : Math.min(at(grower.eveningAt), latestStartS - SEEN_WITHIN_S);
  const advisoryS = Math.max(at(EARLIEST), Math.min(Math.floor(wantedS / SECONDS_PER_MINUTE) * SECONDS_PER_MINUTE, bedtimeS - BEFORE_BEDTIME_S));
  return {
    date,
    deadlineS,
    bedtimeS,
    weekS: Math.min(at(WEEK_AT), advisoryS),
    advisoryS,
    reminderS: Math.max(advisoryS, latestStartS - REMIND_BEFORE_START_S),
    recheckS: bedtimeS - BEFORE_BEDTIME_S,
    morningS: at(grower.morningAt),
    uselessAfterS: at(USELESS_FROM, nextDate),
    nextDayS: at(DAY_BEGINS_AT, nextDate),
  };
}

/** Civil dusk of the afternoon; null where the sun does not set before the small hours, or does not rise at all. */
function duskS(place: Greenhouse['place'], day: { noonS: number; endOfDayS: number }): number | null {
  const sunsetS = nextSunsetS(day.noonS, place);
  const sunriseS = nextSunriseS(day.noonS, place);
  if (sunsetS === null || sunsetS > day.endOfDayS) return null;
  // The sun that is down at noon rises before it sets: the afternoon has no dusk of its own.
  if (sunriseS !== null && sunriseS < sunsetS) return null;
  const dusk = nextCivilDuskS(sunsetS, place);
  return dusk === null || dusk > day.endOfDayS ? sunsetS : dusk;
}

/** The local date that an instant belongs to: before three in the morning it is still the evening before. */
export function dateOf(atS: number, zone: string): string {
  const local = DateTime.fromSeconds(atS, { zone });
  return (local.hour < Number(DAY_BEGINS_AT.slice(0, 2)) ? local.minus({ days: 1 }) : local).toISODate()!;
}

/** Is it a time at which nothing is sent unasked? */
export function isQuiet(greenhouse: Greenhouse, zone: string, atS: number): boolean {
  const clock = DateTime.fromSeconds(atS, { zone }).toFormat('HH:mm');
  const pad = (time: string): string => time.padStart(5, '0');
  const [from, until] = [pad(greenhouse.grower.quiet.from), pad(greenhouse.grower.quiet.until)];
  return from <= until ? clock >= from && clock < until : clock >= from || clock < until;
}
