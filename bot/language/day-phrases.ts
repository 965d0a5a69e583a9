import * as chrono from 'chrono-node';
import { DateTime } from 'luxon';
import { localNow } from './local-now.js';

export type DayPart = 'morning' | 'day' | 'evening' | 'night';

/** A word for a day, a part of a day or an instant, where it stands in the plain text. */
export interface DayPhrase {
  readonly start: number;
  readonly end: number;
  /** Local date; `null` where only a part of the day was said ("overnight", "at noon"). */
  readonly date: string | null;
  readonly part: DayPart | null;
  /** Set where the phrase names the instant itself: "an hour ago". */
  readonly instantS: number | null;
  /** "noon", "midnight". */
  readonly hour: number | null;
  /** The night that was last, or is running, whatever its dates. */
  readonly lastNight: boolean;
}

interface Own {
  readonly pattern: RegExp;
  /** Days from today; `null`: no day is said. */
  readonly days: number | null;
  readonly part: DayPart | null;
  readonly hour?: number;
  readonly lastNight?: true;
}

/** What the date library does not know, or places in the coming night where growers mean the last one. */
const OWN: readonly Own[] = [
  { pattern: /\b(?:two|2) nights ago\b|\bnight before last\b/g, days: -2, part: 'night' },
  { pattern: /\b(?:all |over |through |thru |during |in )?(?:the )?(?:last night|all night|overnight|over night|in the night|during the night|through the night)(?:'s)?\b/g, days: null, part: 'night', lastNight: true },
  { pattern: /\bthe night(?= (?:was|has been|were|went)\b)/g, days: null, part: 'night', lastNight: true },
  // "Night min -9 outside": what was measured is of the night that is over.
  { pattern: /^\W*night(?='?s? (?:min|minimum|low|lowest|report|reading|readings|numbers|temps?|temperatures?)\b)/g, days: null, part: 'night', lastNight: true },
  { pattern: /\b(?:the )?day after tomorrow\b/g, days: 2, part: null },
  { pattern: /\b(?:this|today) afternoon\b/g, days: 0, part: 'day' },
  { pattern: /\b(?:at |around |about )?midnight\b/g, days: null, part: null, hour: 0 },
  { pattern: /\b(?:at |around |about )?(?:noon|midday)\b/g, days: null, part: null, hour: 12 },
  { pattern: /\b(?:at |around |about |before )?(?:dawn|sunrise|sun ?up|daybreak|first light)\b/g, days: 0, part: 'morning' },
  { pattern: /\b(?:at |around |about |before )?(?:dusk|sunset|sundown)\b/g, days: null, part: 'evening' },
  { pattern: /\bthis morning(?:'s)?\b|\btoday in the morning\b/g, days: 0, part: 'morning' },
];

// "In the sun" is no Sunday and "sat at 31" no Saturday: such short forms count only where a day is being named.
const NO_DAY = /(?<!\b(?:on|last|this|next|since|til|until|till|for|by) )\b(?:sun|sat|mon|wed|fri|thu|tue)\b(?! (?:night|morning|evening|afternoon|am|pm|low|high)\b)|\bgood (?:morning|evening|night|afternoon)\b|\bsecond\b|\bnow\b|\bmay be\b/g;

/** The fourth Thursday of November. */
const thanksgiving = (year: number): number => 22 + ((11 - DateTime.local(year, 11, 1).weekday) % 7);
/** Nights that are called by a feast; a greeting names no night. */
const FEASTS: readonly (readonly [RegExp, number, number | ((year: number) => number)])[] = [
  [/(?<!\b(?:happy|merry) )\b(?:christmas|xmas|chrimbo) (?:eve|evening)\b/g, 12, 24],
  [/(?<!\b(?:happy|merry) )\b(?:christmas|xmas) (?:day|night)\b|(?<=\bon )(?:christmas|xmas)\b(?! eve)/g, 12, 25],
  [/\bboxing (?:day|night)\b|\bst\.? stephen'?s (?:day|night)\b/g, 12, 26],
  [/(?<!\bhappy )\b(?:new year'?s (?:eve|evening)|nye|hogmanay)\b/g, 12, 31],
  [/(?<!\bhappy )\bnew year'?s (?:day|night)\b/g, 1, 1],
  [/(?<!\bhappy )\bthanksgiving(?: day| night| eve)?\b(?=.*\b(?:cold|low|frost|night|freeze)\b|$)/g, 11, thanksgiving],
];

function nearest(now: DateTime, { month, day }: { readonly month: number; readonly day: number }, direction: Direction): DateTime {
  const thisYear = now.startOf('day').set({ month, day });
  if (direction === 'ahead') return thisYear < now.startOf('day') ? thisYear.plus({ years: 1 }) : thisYear;
  return thisYear > now ? thisYear.minus({ years: 1 }) : thisYear;
}

/** "On the 24th", which names no month. */
const DAY_OF_MONTH = /\b(?:on|for|by|until|of|till|til|since|from) the ([1-9]|[12]\d|3[01])(?:st|nd|rd|th)\b(?: night| evening| morning)?(?=\s*(?:$|[?,.;!]|at\b|in\b|please\b|and\b|or\b))/g;
const MONTHS_TO_LOOK = 3;

/** The nearest such day, ahead or in the past; today counts. */
function dayOfMonth(day: number, now: DateTime, direction: Direction): DateTime | null {
  for (let months = 0; months < MONTHS_TO_LOOK; months++) {
    const month = now.startOf('month').plus({ months: direction === 'ahead' ? months : -months });
    const found = day <= (month.daysInMonth ?? 0) ? month.set({ day }) : null;
    if (found !== null && (direction === 'ahead' ? found >= now.startOf('day') : found <= now)) return found;
  }
  return null;
}

/** Without one of these nothing is a day, and the library need not look. */
const MAY_BE_DAY = /\d|mon|tue|wed|thu|fri|sat|sun|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|day|tmr|tomorrow|night|noon|morning|evening|week|year|hour|\bhrs?\b|min|sec|quarter|ago\b|half/;

const blank = (text: string, start: number, end: number): string => text.slice(0, start) + ' '.repeat(end - start) + text.slice(end);

function partOf(text: string): DayPart | null {
  if (/night|overnight/.test(text)) return 'night';
  if (/morning|dawn/.test(text)) return 'morning';
  if (/evening/.test(text)) return 'evening';
  return /afternoon|noon/.test(text) ? 'day' : null;
}

/** Whether days without a year or week are looked for in the past (readings) or ahead (questions). */
export type Direction = 'past' | 'ahead';

/** The day phrases of a plain text; `hidden` are stretches that hold other values (temperatures, clocks). */
export function dayPhrases(plain: string, at: { readonly atS: number; readonly zone: string; readonly direction: Direction }, hidden: readonly { readonly start: number; readonly end: number }[]): readonly DayPhrase[] {
  const now = localNow(at);
  let text = hidden.reduce((sofar, { start, end }) => blank(sofar, start, end), plain).replace(NO_DAY, (found) => ' '.repeat(found.length));
  const found: DayPhrase[] = [];
  for (const own of OWN) {
    for (const match of text.matchAll(own.pattern)) {
      const date = own.days === null ? null : now.plus({ days: own.days }).toISODate();
      found.push({ start: match.index, end: match.index + match[0].length, date, part: own.part, instantS: null, hour: own.hour ?? null, lastNight: own.lastNight ?? false });
      text = blank(text, match.index, match.index + match[0].length);
    }
  }
  for (const match of text.matchAll(DAY_OF_MONTH)) {
    const day = dayOfMonth(Number(match[1]), now, at.direction);
    if (day === null) continue;
    found.push({ start: match.index, end: match.index + match[0].length, date: day.toISODate(), part: partOf(match[0]), instantS: null, hour: null, lastNight: false });
    text = blank(text, match.index, match.index + match[0].length);
  }
  for (const [feast, month, day] of FEASTS) {
    for (const match of text.matchAll(feast)) {
      const date = nearest(now, { month, day: typeof day === 'number' ? day : day(now.year) }, at.direction);
      found.push({ start: match.index, end: match.index + match[0].length, date: date.toISODate(), part: partOf(match[0]), instantS: null, hour: null, lastNight: false });
      text = blank(text, match.index, match.index + match[0].length);
    }
  }
  // The components are read in the grower's zone, so that a change of clocks between then and now does no harm.
  const results = !MAY_BE_DAY.test(text) ? [] : chrono.parse(text, { instant: new Date(at.atS * 1000), timezone: now.offset }, { forwardDate: at.direction === 'ahead' });
  for (const { index, text: words, start } of results) {
    if (/^(?:today|tonight|this night)$/.test(words.trim())) continue;
    // "Back in 20 minutes" is of no reading.
    if (at.direction === 'past' && /^(?:in|within|for|after) (?:an? |\d|half|few)/.test(words.trim())) continue;
    const local = (hour: number, minute: number): DateTime =>
      DateTime.fromObject({ year: start.get('year') ?? now.year, month: start.get('month') ?? now.month, day: start.get('day') ?? now.day, hour, minute }, { zone: at.zone });
    const isInstant = start.isCertain('hour') && start.isCertain('minute') && start.isCertain('day') && /ago|before|earlier|back/.test(words);
    let day = local(12, 0);
    if (at.direction === 'past' && start.isCertain('weekday') && !start.isCertain('day')) while (day.toISODate() !== null && day.startOf('day') > now.startOf('day')) day = day.minus({ weeks: 1 });
    found.push({
      start: index,
      end: index + words.length,
      date: day.toISODate(),
      part: partOf(words),
      instantS: isInstant ? local(start.get('hour') ?? 0, start.get('minute') ?? 0).toSeconds() : null,
      hour: null,
      lastNight: false,
    });
  }
  return found.sort((a, b) => a.start - b.start);
}
