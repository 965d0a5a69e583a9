import { DateTime } from 'luxon';
import { dayPhrases } from './day-phrases.js';
import { unclear, type Unclear } from './intent.js';
import { localNow } from './local-now.js';
import type { Message } from './message.js';
import { wordings } from './wordings.js';

/** Until this hour the night that began yesterday is the running one. */
const NIGHT_ENDS_HOUR = 8;
/** Before this hour "tomorrow" is either the day that has just begun or the one after it. */
const SMALL_HOURS_END = 4;

export interface NightsMeant {
  /** Local date on which the night begins. */
  readonly night: string;
  /** False where no night was said, and tonight is meant. */
  readonly said: boolean;
  /** Nights in a row, where more than one was asked for. */
  readonly nights?: number;
}

const iso = (date: DateTime): string => date.toFormat('yyyy-MM-dd');

/** The night that a question speaks of. */
export function nightMeant(message: Message): NightsMeant | Unclear {
  const now = localNow(message);
  const today = now.startOf('day');
  const tonight = now.hour < NIGHT_ENDS_HOUR ? today.minus({ days: 1 }) : today;
  // "They went in three weeks ago" is of no night to come.
  const said = message.said.replace(/ (?:in )?=\d+ ago /g, ' ');
  const open = (dates: readonly DateTime[]): Unclear => unclear('which-night', { choices: dates.map(iso) });
  const ahead = / (?:in|next|coming|over the|for the|the next|this coming) (?:=\d+|few|couple) /.exec(said);
  if (/ (?:cold|bad|rough|mild|hard|frosty|nasty|warm) week /.test(said)) return { night: iso(tonight), said: false, nights: 7 };
  if (/ (?:this|the|next|coming|rest of the|all) week |^ week $/.test(said) || / (?:cold|warm|frost|freezing) (?:spell|snap|wave|front|blast) /.test(said) || wordings`
    (?:coming|next few|few|next couple of|next couple|next|following|coming few|upcoming|these next|these|days to come|several) (?:days|nights)
    (?:days|nights) (?:ahead|to come|coming)
  ` .test(said) || / (?:next|coming) (?:frost|freeze) /.test(said)) return { night: iso(tonight), said: false, nights: 7 };
  const nights = message.amounts.find(({ noun }) => /^(?:nights?|days?|weeks?)$/.test(noun));
  if (nights !== undefined && ahead !== null) {
    const count = Math.round(nights.value * (nights.noun.startsWith('week') ? 7 : 1));
    return / in =\d+ /.test(said) ? { night: iso(tonight.plus({ days: count })), said: true } : { night: iso(tonight), said: false, nights: count };
  }
  if (/ weekend /.test(said)) {
    const friday = today.plus({ days: (5 - today.weekday + 7) % 7 });
    return today.weekday > 5 ? { night: iso(tonight), said: true, nights: 8 - today.weekday } : { night: iso(friday), said: true, nights: 3 };
  }
  if (/ tomorrow morning /.test(said) || / tomorrow (?:at dawn|by dawn|at sunrise) /.test(said)) return now.hour < SMALL_HOURS_END ? open([today.minus({ days: 1 }), today]) : { night: iso(today), said: true };
  if (/ day after tomorrow | night after (?:this|that|next|tomorrow)(?: one)? /.test(said) && !/ night after this /.test(said)) return { night: iso(today.plus({ days: 2 })), said: true };
  if (/ (?:tomorrow|night after this|night after tonight|next night) /.test(said)) return now.hour < SMALL_HOURS_END ? open([today, today.plus({ days: 1 })]) : { night: iso(today.plus({ days: 1 })), said: true };
  if (/ (?:tonight|this evening|through the night|the night|tonights|by morning|in the morning|this night|till morning|until morning|by dawn|at dawn) /.test(said) && !((/ (?:mon|tues|wednes|thurs|fri|satur|sun)day /.test(said) || / \d+(?:st|nd|rd|th) /.test(said)) && !/ (?:tonight|tonights|this night|this evening) /.test(said))) return { night: iso(tonight), said: true };
  if (/ last night | overnight /.test(said)) {
    if (/ overnight /.test(said)) return { night: iso(tonight), said: true };
    return now.hour < SMALL_HOURS_END ? open([today.minus({ days: 2 }), today.minus({ days: 1 })]) : { night: iso(today.minus({ days: 1 })), said: true };
  }
  const [day] = dayPhrases(message.plain, { atS: message.atS, zone: message.zone, direction: 'ahead' }, message.temps).filter(({ date, hour }) => date !== null && hour === null);
  if (day === undefined || day.date === null || day.part === 'day') return { night: iso(tonight), said: false };
  const date = DateTime.fromISO(day.date, { zone: message.zone });
  return { night: iso(day.part === 'morning' ? date.minus({ days: 1 }) : date), said: true };
}
