import { dayPhrases, type DayPhrase } from './day-phrases.js';
import { unclear, type Meaning, type Reading, type Statistic, type Unclear } from './intent.js';
import { localNow } from './local-now.js';
import { withPieces, type Message } from './message.js';
import type { Piece } from './piece.js';
import { readingMark, type ReadingMark } from './reading-marks.js';
import { isOfOthers, numbersIn, showsWhat, speaksOfOther, unknownWords } from './reading-talk.js';
import { readingTime } from './reading-time.js';
import { temperature, WARM_DAY_C } from './temperature.js';
import { strangePlace } from './strange-place.js';
import type { ClockToken, TempToken } from './value-grammar.js';
import { wordings } from './wordings.js';

/** A bare number sent in these hours is what the thermometer kept from the night. */
const LOW_READ_FROM_HOUR = 4;
const LOW_READ_UNTIL_HOUR = 12;
/** Ground and stores move so slowly that their thermometers are read for what they show. */
const SLOW_PLACES = new Set(['soil', 'water', 'stones', 'tube']);

interface Attached {
  readonly temp: TempToken;
  marks: ReadingMark[];
  clock: ClockToken | null;
  day: DayPhrase | null;
}

interface Sign {
  readonly piece: Piece;
  readonly mark: ReadingMark;
  readonly clock: ClockToken | null;
  readonly day: DayPhrase | null;
}

const SEPARATORS = new Set([',', ';', 'and', 'but', '/', 'while', 'with', 'which', 'because', 'though', 'although', 'mind', 'brr', 'brrr', 'brrrr', 'burr', 'yikes', 'sheesh', 'phew', 'ugh', 'wow', 'whew']);
const isSeparator = (symbol: string): boolean => SEPARATORS.has(symbol);
const isMark = ({ mark }: Sign): boolean => mark.place !== undefined || mark.stat !== undefined || mark.sun !== undefined || mark.isNow === true;
const tells = (sign: Sign): boolean => isMark(sign) || sign.clock !== null || sign.day !== null;

/** "Having my coffee now", "back in 20 minutes": a stretch without a number that says nothing of the one beside it. */
const isAside = (stretch: readonly Sign[]): boolean =>
  !stretch.some(({ mark }) => mark.place !== undefined || mark.stat !== undefined || mark.sun !== undefined) && unknownWords(stretch.map(({ piece }) => piece.symbol)) > 0;

const hasNumber = (stretch: readonly Sign[]): boolean => stretch.some(({ piece }) => piece.symbol.startsWith('#'));
/** "I was down at the allotment", where the number has a place of its own. */
const isElsewhere = (stretch: readonly Sign[]): boolean =>
  stretch.some(({ mark }) => mark.place !== undefined) && !stretch.some(({ mark }) => mark.stat !== undefined || mark.sun !== undefined) && stretch.some(({ piece }) => /^(?:i|we|he|she|been)$/.test(piece.symbol) || unknownWords([piece.symbol]) > 0);

/** "Went out at 10 and it was 30". */
const isOfThen = (next: readonly Sign[] | undefined): boolean => next !== undefined && hasNumber(next) && next.some(({ piece }) => piece.symbol === 'was') && next.every(({ clock, day }) => clock === null && day === null);

const FEW = 4;
/** What follows up to the next stop: "was -5 at dawn, now it is 2" is of two times. */
function nextSymbols(signs: readonly Sign[], at: number): string {
  const next = signs.slice(at + 1, at + 1 + FEW).map(({ piece }) => piece.symbol);
  const stop = next.findIndex(isSeparator);
  return next.slice(0, stop < 0 ? FEW : stop).join(' ');
}

/** Cuts the message where it is cut in speech, and joins a stretch without a number to the number that it speaks of. */
function stretches(signs: readonly Sign[]): readonly (readonly Sign[])[] {
  const cut: Sign[][] = [[]];
  const isOfNow = (at: number): boolean => /^(?:now|currently)$/.test(signs[at]?.piece.symbol ?? '') && cut.at(-1)?.some(({ piece }) => piece.symbol.startsWith('#')) === true && / ?#/.test(nextSymbols(signs, at));
  for (const [at, sign] of signs.entries()) {
    if (isOfNow(at)) cut.push([]);
    if (isSeparator(sign.piece.symbol)) cut.push([]);
    else cut.at(-1)?.push(sign);
  }
  const first = signs.findIndex(({ piece }) => piece.symbol.startsWith('#'));
  const headsFirst = signs.findIndex(({ mark }) => mark.place !== undefined || mark.stat !== undefined) < first;
  const isPlaced = cut.filter(hasNumber).every((stretch) => stretch.some(({ mark }) => mark.place !== undefined));
  const whole: Sign[][] = [];
  let waiting: Sign[] = [];
  for (const [at, stretch] of cut.entries()) {
    if (hasNumber(stretch)) {
      whole.push([...waiting, ...stretch]);
      waiting = [];
    } else if (isAside(stretch) && stretch.some(({ clock }) => clock !== null) && isOfThen(cut[at + 1])) waiting.push(...stretch.filter(({ clock }) => clock !== null));
    else if (isAside(stretch) || (isPlaced && isElsewhere(stretch))) continue;
    else if (whole.length > 0 && !headsFirst) whole.at(-1)?.push(...stretch);
    else waiting.push(...stretch);
  }
  whole.at(-1)?.push(...waiting);
  return whole;
}

/** In "low 28 high 60" the words stand before their number, in "28 inside 22 outside" after it. */
function attach(stretch: readonly Sign[], message: Message): Attached[] {
  const numbers = stretch.flatMap(({ piece }, at) => (piece.symbol.startsWith('#') ? [at] : []));
  const leads = (isOfKind: (sign: Sign) => boolean): boolean => {
    const lead = stretch.findIndex(isOfKind);
    return lead >= 0 && lead < (numbers[0] ?? 0);
  };
  // "Low of 22 outside 30 inside", "low 26 at 4am high 58 at 2pm": each kind has an order of its own.
  const placesFirst = leads(({ mark }) => mark.place !== undefined);
  const statsFirst = leads(({ mark }) => mark.stat !== undefined);
  const timesFirst = leads(({ clock, day }) => clock !== null || day !== null);
  const hasPlaces = stretch.some(({ mark }) => mark.place !== undefined);
  const isBefore = ({ mark, clock, day }: Sign): boolean => (clock !== null || day !== null ? timesFirst : mark.stat !== undefined ? statsFirst : mark.place !== undefined || hasPlaces ? placesFirst : statsFirst);
  const list = numbers.flatMap((at): Attached[] => {
    const temp = message.temps[Number(stretch[at]?.piece.symbol.slice(1))];
    return temp === undefined ? [] : [{ temp, marks: [], clock: null, day: null }];
  });
  stretch.forEach((sign, at) => {
    if (!tells(sign)) return;
    const next = numbers.findIndex((number) => number > at);
    const previous = next === -1 ? numbers.length - 1 : next - 1;
    const owner = list[isBefore(sign) ? (next === -1 ? previous : next) : Math.max(previous, 0)];
    if (owner === undefined) return;
    // "-31 outside at the coldest inside -9.5": a second place is of the number to come.
    const ahead = next === -1 ? undefined : list[next];
    const isSecond = sign.mark.place !== undefined && placeOfMarks(owner.marks).some((place) => place !== sign.mark.place) && ahead !== undefined && ahead !== owner && ahead.marks.every(({ place }) => place === undefined);
    (isSecond ? ahead : owner).marks.push(sign.mark);
    owner.clock ??= sign.clock;
    owner.day ??= sign.day;
  });
  return list;
}

const only = <T>(values: readonly (T | null | undefined)[]): T | null => {
  const said = [...new Set(values.filter((value) => value !== null && value !== undefined))];
  return said.length === 1 ? (said[0] ?? null) : null;
};

const statOf = (marks: readonly ReadingMark[]): Statistic | null => marks.find(({ stat }) => stat !== undefined)?.stat ?? null;
const placeOfMarks = (marks: readonly ReadingMark[]): readonly string[] => [...new Set(marks.flatMap(({ place }) => (place === undefined ? [] : [place])))];

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

function oneReading(own: Attached, shared: { readonly message: Message; readonly all: readonly Attached[] }): Reading | Unclear {
  const { message, all } = shared;
  const said = statOf(own.marks);
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
  const found = temperature(own.temp, { ...message, among: all.map(({ temp }) => temp), canBeWarm: stat === 'high' || sun === true || (place === 'inside' && own.temp.value <= WARM_DAY_C && isByDay(message)) });
  if ('kind' in found) return found;
  // "It got to 81" by day is the most that it was.
  const isHigh = stat === 'now' && said === null && clock === null && found.c >= SUN_WARMED_C && (isByDay(message) || message.said.includes(' today ')) && new RegExp(` (?:got to|hit|reached|made it to) (?:about |around |like |a |nearly |almost )?#${message.temps.indexOf(own.temp)} `).test(message.said);
  return { c: found.c, stat: isHigh ? 'high' : stat, ...(place === undefined ? {} : { place }), ...(sun === null ? {} : { sun }), ...(time.at === undefined ? {} : { at: time.at }) };
}

/** A number that goes on with the lows before it: "it was 36", or nothing but its place. */
const isOfLow = ({ form, said }: Message, at: number): boolean =>
  said.includes(` was #${at} `) || new RegExp(` (?:and|,|;) (?:the )?(?:#${at} (?:in the |in )?&\\w+|&\\w+ #${at}) (?:[,;]|and|$)`).test(form);

/** "Right now soil 36, inside 27": said first, it is said of all. */
const ALL_NOW = /^ (?:it is )?(?:right now|now|currently|at the moment) [^#]*#|#[^#;]* (?:right now|at the moment) (?:and|,|but) [^;]*#/;

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

/** Whether no number of the message is of this house: what is somebody's, was once, or counts something. */
export function isAllOfOther(message: Message): boolean {
  const numbered = numberedIn(message);
  return numbered.length > 0 && numbered.every((stretch) => numbersIn(stretch, message.temps) === 'other' || speaksOfOther(stretch.map(({ symbol }) => symbol), message.temps));
}

/** Whether every number is of somebody else's house, or of a time long ago. */
export const isAllOfOthers = (message: Message): boolean => numberedIn(message).length > 0 && numberedIn(message).every((stretch) => isOfOthers(stretch.map(({ symbol }) => symbol)));

const numberedIn = ({ pieces }: Message): readonly (readonly Piece[])[] => stretchesOf(pieces).filter((stretch) => stretch.some(({ symbol }) => symbol.startsWith('#')));

function stretchesOf(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const cut: Piece[][] = [[]];
  for (const piece of pieces) {
    if (isSeparator(piece.symbol)) cut.push([]);
    cut.at(-1)?.push(piece);
  }
  return cut;
}

/** The message without the stretches whose numbers are no temperatures; null where some may be or not, or none is left. */
function onlyTemperatures(message: Message): Message | null {
  const told = stretchesOf(message.pieces).map((stretch) => ({ stretch, of: stretch.some(({ symbol }) => symbol.startsWith('#')) ? numbersIn(stretch, message.temps) : null }));
  const symbolsOf = (stretch: readonly Piece[]): readonly string[] => stretch.map(({ symbol }) => symbol);
  const isSure = told.some(({ stretch, of }) => of === 'temperatures' && stretch.length > 1 && showsWhat(symbolsOf(stretch), message.temps));
  for (const one of told) if (isSure && one.of === 'unknown' && speaksOfOther(symbolsOf(one.stretch), message.temps)) one.of = 'other';
  const kept = told.filter(({ of }) => of !== 'other');
  if (kept.length === told.length && !told.some(({ of }) => of === 'unknown')) return message;
  if (told.some(({ of }) => of === 'unknown') || !kept.some(({ of }) => of === 'temperatures')) return null;
  return withPieces(message, kept.flatMap(({ stretch }) => stretch));
}

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
  if (once.length < clear.length && new Set(told).size === once.length) return { kind: 'reading', readings: once };
  // Two numbers for the same thing: one of them is meant, or something that was not understood.
  if (new Set(told).size < told.length) return unclear('which-number', { choices: message.temps.map(({ text }) => text.trim()) });
  return clear.length === 0 ? null : { kind: 'reading', readings: clear };
}
