import type { DayPhrase } from './day-phrases.js';
import type { Statistic } from './intent.js';
import type { Message } from './message.js';
import type { Piece } from './piece.js';
import type { ReadingMark } from './reading-marks.js';
import { unknownWords } from './reading-talk.js';
import { isSeparator } from './stretches.js';
import type { ClockToken, TempToken } from './value-grammar.js';

/** A number with all that is said of it. */
export interface Attached {
  readonly temp: TempToken;
  marks: ReadingMark[];
  clock: ClockToken | null;
  day: DayPhrase | null;
}

/** A piece with what it says of the number near it. */
export interface Sign {
  readonly piece: Piece;
  readonly mark: ReadingMark;
  readonly clock: ClockToken | null;
  readonly day: DayPhrase | null;
}

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
export function stretches(signs: readonly Sign[]): readonly (readonly Sign[])[] {
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
export function attach(stretch: readonly Sign[], message: Message): Attached[] {
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
  // "Tunnel min -1 max 14": one thermometer's two extremes.
  const placed = [...new Set(list.flatMap(({ marks }) => placeOfMarks(marks)))];
  if (list.length > 1 && placed.length === 1 && list.every(({ marks }) => ['low', 'high'].includes(statOf(marks) ?? ''))) for (const one of list) if (placeOfMarks(one.marks).length === 0) one.marks.push({ place: placed[0]! });
  return list;
}

export const statOf = (marks: readonly ReadingMark[]): Statistic | null => marks.find(({ stat }) => stat !== undefined)?.stat ?? null;
export const placeOfMarks = (marks: readonly ReadingMark[]): readonly string[] => [...new Set(marks.flatMap(({ place }) => (place === undefined ? [] : [place])))];
