import { attach, placeOfMarks, statOf, stretches, type Attached, type Sign } from './attached.js';
import { dayPhrases, type DayPhrase } from './day-phrases.js';
import { unclear, type Meaning, type Reading, type Statistic, type Unclear } from './intent.js';
import { localNow } from './local-now.js';
import { withPieces, type Message } from './message.js';
import { onlyTemperatures } from './numbers-of-others.js';
import type { Piece } from './piece.js';
import { readingMark } from './reading-marks.js';
import { readingTime } from './reading-time.js';
import { temperature, WARM_DAY_C } from './temperature.js';
import { strangePlace } from './strange-place.js';
import { wordings } from './wordings.js';

/** A bare number sent in these hours is what the thermometer kept from the night. */
const LOW_READ_FROM_HOUR = 4;
const LOW_READ_UNTIL_HOUR = 12;
/** Ground and stores move so slowly that their thermometers are read for what they show. */
const SLOW_PLACES = new Set(['soil', 'water', 'stones', 'tube']);

const only = <T>(values: readonly (T | null | undefined)[]): T | null => {
  const said = [...new Set(values.filter((value) => value !== null && value !== undefined))];
  return said.length === 1 ? (said[0] ?? null) : null;
};

function bareStatistic(message: Message, place: string | undefined): Statistic {
  const { hour } = localNow(message);
  return hour >= LOW_READ_FROM_HOUR && hour < LOW_READ_UNTIL_HOUR && !SLOW_PLACES.has(place ?? '') ? 'low' : 'now';
}

/** From here on it was the sun that brought the house there. Project estimate. */
const SUN_WARMED_C = 12;
/** A house warms up in these hours whatever the season. */
const WARM_FROM_HOUR = 10;
const WARM_UNTIL_HOUR = 17;

function isByDay({ atS, zone }: Message): boolean {
  const { hour } = localNow({ atS, zone });
  return hour >= WARM_FROM_HOUR && hour < WARM_UNTIL_HOUR;
}

/** "Lows: in 29, out 14, soil 41". */
const LOWS_AHEAD = /^\W*(?:the )?(?:lows|minimums|mins)\b\W*:/;

/** "It got to 81": the most that it was, where the sun brought it there. */
const reached = ({ said, temps }: Message, { temp }: Attached): boolean =>
  new RegExp(` (?:got to|hit|reached|made it to) (?:about |around |like |a |nearly |almost )?#${temps.indexOf(temp)} `).test(said);
const isToday = ({ said }: Message): boolean => said.includes(' today ');

function oneReading(own: Attached, shared: { readonly message: Message; readonly all: readonly Attached[] }): Reading | Unclear {
  const { message, all } = shared;
  const said = statOf(own.marks) ?? (LOWS_AHEAD.test(message.plain) ? 'low' : null);
  const isNow = said === null && (own.marks.some((mark) => mark.isNow === true) || ALL_NOW.test(message.form));
  const sun = only(own.marks.map((mark) => mark.sun));
  const named = placeOfMarks(own.marks);
  // A thermometer's own name says more than the room it hangs in.
  const ownNames = named.filter((place) => message.names.includes(place));
  const places = ownNames.length > 0 ? ownNames : named;
  if (places.length > 1) return unclear('which-place', { word: own.temp.text.trim(), choices: places });
  const pair = all.length === 2 && all.every(({ marks }) => statOf(marks) !== null && statOf(marks) !== 'now');
  // Hour by hour of one thermometer.
  const isSeries = own.clock !== null && all.every((other) => other.clock !== null);
  const place = places[0] ?? (pair || isSeries ? only(all.flatMap(({ marks }) => placeOfMarks(marks))) : null) ?? undefined;
  // One time in the message is of all its numbers, unless a number is of now.
  const clock = own.clock ?? (own.day === null && !isNow && said === null ? only(all.map((other) => other.clock)) : null);
  const day = own.day ?? (isNow ? null : only(all.map((other) => other.day)));
  const time = readingTime({ clock, day, stat: said }, message);
  if ('kind' in time) return time;
  // "Low was 31 inside and under the cover it was 36".
  const isOfSameNight = said === null && !isNow && clock === null && all.some(({ marks }) => statOf(marks) === 'low') && all.every(({ marks }) => [null, 'low'].includes(statOf(marks))) && isOfLow(message, message.temps.indexOf(own.temp));
  const stat = said ?? (isOfSameNight ? 'low' : null) ?? (isNow || sun === true || clock !== null || (day !== null && time.stat === undefined && time.at !== undefined) ? 'now' : (time.stat ?? bareStatistic(message, place)));
  const found = temperature(own.temp, { ...message, among: all.map(({ temp }) => temp), canBeWarm: stat === 'high' || (isToday(message) && reached(message, own)) || sun === true || (place === 'inside' && own.temp.value <= WARM_DAY_C && isByDay(message)) });
  if ('kind' in found) return found;
  const isHigh = stat === 'now' && said === null && clock === null && found.c >= SUN_WARMED_C && (isByDay(message) || isToday(message)) && reached(message, own);
  return { c: found.c, stat: isHigh ? 'high' : stat, ...(place === undefined ? {} : { place }), ...(sun === null ? {} : { sun }), ...(time.at === undefined ? {} : { at: time.at }) };
}

/** A number that goes on with the lows before it: "it was 36", or nothing but its place. */
const isOfLow = ({ form, said }: Message, at: number): boolean =>
  said.includes(` was #${at} `) || new RegExp(` (?:and|,|;) (?:the )?(?:#${at} (?:in the |in )?&\\w+|&\\w+ #${at}) (?:[,;]|and|$)`).test(form);

/** "Right now soil 36, inside 27": said first, it is said of all. */
const ALL_NOW = /^ (?:it is )?(?:right now|now|currently|at the moment) [^#]*#|#[^#;]* (?:right now|at the moment) (?:and|,|but) [^;]*#|^ [^;]*#\d+ [^;#]*#\d+ (?:&\w+ )?(?:right now|at the moment|currently) (?:; )?$/;

/** Values that the day phrases must not be looked for in. */
export const spotsOfValues = (message: Message): readonly { readonly start: number; readonly end: number }[] => [...message.temps, ...message.clocks, ...message.amounts.filter(({ noun }) => !/^(?:h|min|day|night|week|month)/.test(noun))];

/** "Never below 31", "fell 10 degrees", "low twenties": a bound, a difference or a span, and no temperature. */
const NO_VALUE = wordings`
  (?:below|under|above|over|least|than|beneath|sub) #\d+
  (?:fell|dropped|rose|gained|lost|climbed|warmed|cooled|sank|dipped) (?:by |another |about )?#\d+|by #\d+|or #\d+|(?<!(?:ended|woke|wound|finished) )(?:up|down) #\d+
  #\d+ (?:out )?of #\d+
`;
const SPAN = / \d0s | (?:twenties|thirties|forties|fifties|teens) /;

const PAIRED = wordings`
  (low|minimum|high|maximum) (?:/|and|-|,) (low|minimum|high|maximum) (?:(&\w+) )?(?:[:;,-] |is |was |were |are |of |says |reads |shows |showing |thermometer |
  reading )*(#\d+) (?:/|and|,|;|-) (#\d+)
`;

/** "min/max 29/58" as "min 29, max 58". */
function inPairs(message: Message): Message {
  const found = PAIRED.exec(message.form);
  if (found === null) return message;
  const from = message.form.slice(0, found.index).trim().split(' ').filter((symbol) => symbol !== '').length;
  const count = found[0].trim().split(' ').length;
  const part = message.pieces.slice(from, from + count);
  const piece = (symbol: string | undefined): readonly Piece[] => part.filter((one) => one.symbol === symbol).slice(0, 1);
  const comma = { symbol: ',', written: ',', start: part[0]?.start ?? 0, end: part[0]?.start ?? 0 };
  return { ...message, pieces: [...message.pieces.slice(0, from), ...piece(found[3]), ...piece(found[1]), ...piece(found[4]), comma, ...piece(found[2]), ...piece(found[5]), ...message.pieces.slice(from + count)] };
}

/** A sign that stands by itself belongs to one of the numbers, but which? "Minus, 3", "5 or so below". */
const SIGN_ASTRAY = / (?:minus|negative|neg|below|subzero) | - #\d| #\d+ under (?:&outside|&inside|,|;|and|but|in|last|at|this|by|on|when|overnight|out|again|tonight|already|now|~\d+|$)/;

/** "Hi/lo thermometer": what it is called, and no mark of a number. */
const CALLED = / (?:low|minimum|high|maximum|hi) (?:[/&-] |and )?(?:low|minimum|high|maximum) (?:thermometer|gauge)(?: :)?(?= )/;

function withoutName(message: Message): Message {
  const found = CALLED.exec(message.form);
  if (found === null) return message;
  const from = message.form.slice(0, found.index).split(' ').filter((symbol) => symbol !== '').length;
  const to = from + found[0].trim().split(' ').length;
  return withPieces(message, message.pieces.filter((_, at) => at < from || at >= to));
}

/** "- 6", and nothing else, in the hours in which lows are read: the dash is a minus. */
function withOpeningMinus(message: Message): Message {
  const [temp, ...more] = message.temps;
  const alone = temp?.sign === 'loose' && more.length === 0 && /^\s*-\s+[\d.,]+\s*(?:°|degrees)?\s*[cf]?\W*$/.test(message.plain) && bareStatistic(message, undefined) === 'low';
  return alone ? { ...message, temps: [{ ...temp, sign: 'minus' }] } : message;
}

/** The temperatures that the message reports. */
export function reading(heard: Message): Meaning | null {
  const whole = withOpeningMinus(withoutName(heard));
  if (SPAN.test(whole.said)) return unclear('which-number');
  if (whole.temps.length === 0) return null;
  const message = onlyTemperatures(whole);
  if (SIGN_ASTRAY.test(whole.form)) return unclear('which-sign', { word: whole.temps.map(({ text }) => text.trim()).join(', ') });
  if (message === null) return strangePlace(whole) ?? unclear('which-reading', { word: whole.temps.map(({ text }) => text.trim()).join(', ') });
  if (/ hi #\d/.test(message.form) && !/ (?:low|minimum) /.test(message.form)) return unclear('which-stat', { word: 'hi', choices: ['low', 'high'] });
  const days = dayPhrases(message.plain, { atS: message.atS, zone: message.zone, direction: 'past' }, spotsOfValues(message));
  const taken = new Set<DayPhrase>();
  const paired = inPairs(message);
  const signs = paired.pieces.map((piece, at): Sign => {
    const day = days.find((phrase) => !taken.has(phrase) && piece.start < phrase.end && piece.end > phrase.start) ?? null;
    if (day !== null) taken.add(day);
    const clock = piece.symbol.startsWith('~') ? (message.clocks[Number(piece.symbol.slice(1))] ?? null) : null;
    const inDay = days.some((phrase) => piece.start < phrase.end && piece.end > phrase.start);
    return { piece, mark: inDay ? {} : readingMark(paired, at), clock, day };
  });
  const all = stretches(signs).flatMap((stretch) => attach(stretch, message));
  if (NO_VALUE.test(message.said) || / [<>] #\d| or (?:maybe |even |perhaps |possibly |more like |rather )?#\d/.test(message.form) || (/ #\d+ \/ #\d+ /.test(message.form) && paired === message)) return unclear('which-number', { choices: message.temps.map(({ text }) => text.trim()) });
  const strange = strangePlace(message);
  if (strange !== null) return strange;
  const readings = all.map((own) => oneReading(own, { message, all }));
  const open = readings.find((one) => 'kind' in one);
  if (open !== undefined) return open;
  const clear = readings.filter((one): one is Reading => !('kind' in one));
  const told = clear.map(({ stat, place, at, sun }) => `${stat} ${place ?? ''} ${at ?? ''} ${String(sun ?? '')}`);
  // "Only half a degree, so 0.5" is one number said twice.
  // So is "zero, dead zero outside".
  const once = clear.filter((one, at) => !clear.some((other, otherAt) => other.c === one.c && ((otherAt < at && told[otherAt] === told[at]) || (one.place === undefined && other.place !== undefined && one.stat === other.stat))));
  if (once.length < clear.length && new Set(once.map((one) => told[clear.indexOf(one)])).size === once.length) return { kind: 'reading', readings: once };
  // Two numbers for the same thing: one of them is meant, or something that was not understood.
  if (new Set(told).size < told.length) return unclear('which-number', { choices: message.temps.map(({ text }) => text.trim()) });
  return clear.length === 0 ? null : { kind: 'reading', readings: clear };
}
