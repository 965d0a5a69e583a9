import type { PlaceFact, TownFact } from './house-fact.js';
import { ORDINARY_WORDS } from '../ordinary-words.js';
import { singular } from '../word-forms.js';
import { FUNCTION_WORDS, type HouseText } from './house-text.js';
import { houseWord, type HouseWord } from './house-words.js';

export interface PlaceSaid {
  readonly fact: PlaceFact | TownFact;
  /** The stretch of the plain text that it stands in. */
  readonly start: number;
  readonly end: number;
}

const DECIMAL = String.raw`(-?\d{1,3}(?:[.,]\d+)?)`;
const [N, E] = ['(n|s|north|south)', '(e|w|east|west)'];
const GAP = String.raw`[\s,;/]+`;
const DEGREE = String.raw`\s*°?\s*`;
const AFTER = new RegExp(String.raw`(?<![\d.])${DECIMAL}${DEGREE}${N}${GAP}${DECIMAL}${DEGREE}${E}(?![a-z])`);
const BEFORE = new RegExp(String.raw`(?<![a-z])${N}\s*${DECIMAL}°?${GAP}${E}\s*${DECIMAL}`);
const PLAIN = new RegExp(String.raw`(?<![\d.])${DECIMAL}°?${GAP}${DECIMAL}(?![\d%]|\.\d)`);
const MINUTES = String.raw`(\d{1,3})\s*[°d ]\s*(\d{1,2}(?:[.,]\d+)?)\s*['m]?\s*(?:(\d{1,2}(?:[.,]\d+)?)\s*(?:"|''|s(?=\s*[nsew]))?)?`;
const SEXAGESIMAL = new RegExp(String.raw`${MINUTES}\s*${N}${GAP}${MINUTES}\s*${E}(?![a-z])`);
const SEXAGESIMAL_BEFORE = new RegExp(String.raw`(?<![a-z])${N}\s*${MINUTES}${GAP}${E}\s*${MINUTES}`);

const LABELLED = new RegExp(String.raw`\blat(?:itude)?[\s:=.]*${DECIMAL}[\s,;]*(?:lon|long|lng|longitude)[\s:=.]*${DECIMAL}`);

const number = (text: string | undefined): number => Number((text ?? '0').replace(',', '.'));
const signed = (value: number, side: string | undefined): number => (/^[sw]/.test(side ?? '') ? -Math.abs(value) : value);
const MINUTES_PER_DEGREE = 60;
const sexagesimal = (parts: readonly (string | undefined)[]): number => number(parts[0]) + number(parts[1]) / MINUTES_PER_DEGREE + number(parts[2]) / MINUTES_PER_DEGREE ** 2;

/** Coordinates as people copy them from a map: signs or letters, decimals or minutes. */
export function readCoordinates(plain: string, asked: boolean): PlaceSaid | null {
  const place = (found: RegExpExecArray, latitude: number, longitude: number): PlaceSaid => ({ fact: { about: 'coordinates', latitude, longitude }, start: found.index, end: found.index + found[0].length });
  const minutes = SEXAGESIMAL.exec(plain);
  if (minutes !== null) return place(minutes, signed(sexagesimal(minutes.slice(1, 4)), minutes[4]), signed(sexagesimal(minutes.slice(5, 8)), minutes[8]));
  const minutesBefore = SEXAGESIMAL_BEFORE.exec(plain);
  if (minutesBefore !== null) return place(minutesBefore, signed(sexagesimal(minutesBefore.slice(2, 5)), minutesBefore[1]), signed(sexagesimal(minutesBefore.slice(6, 9)), minutesBefore[5]));
  const after = AFTER.exec(plain);
  if (after !== null) return place(after, signed(number(after[1]), after[2]), signed(number(after[3]), after[4]));
  const before = BEFORE.exec(plain);
  if (before !== null) return place(before, signed(number(before[2]), before[1]), signed(number(before[4]), before[3]));
  const labelled = LABELLED.exec(plain);
  if (labelled !== null) return place(labelled, number(labelled[1]), number(labelled[2]));
  const pair = PLAIN.exec(plain);
  if (pair === null) return null;
  const decimals = [pair[1], pair[2]].every((text) => /[.,]\d/.test(text ?? ''));
  const negative = /-\d/.test(pair[0]);
  const named = /\b(?:lat|latitude|coordinates?|coords|gps|lon|long?itude)\b/.test(plain);
  return (decimals && (asked || negative)) || named || (asked && negative) ? place(pair, number(pair[1]), number(pair[2])) : null;
}

const NEAR = /\b(?:near to|near|close to|just outside of|just outside|outside of|not far from|(?:north|south|east|west) of|miles from|minutes from|km from|kilometres from|kilometers from|moved to|move it to|moving to)\s+(?:the town of |the village of |the city of )?/;
const IN = /\b(?:in|at|from|around)\s+(?=\p{Lu})(?!(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec|Mon|Tue|Wed|Thu|Fri|Sat|Sun|Christmas|Easter|I\b|Spring|Summer|Autumn|Fall|Winter))/u;
const MOST_WORDS = 4;
/** Things of a house that no town is called by; "bench" and "clay" are both. */
const STOPS: ReadonlySet<HouseWord | null> = new Set<HouseWord | null>(['hoops', 'half-round', 'gothic', 'gable', 'lean-to', 'house', 'two', 'single', 'double', 'layer', 'film', 'blower', 'drum', 'heater', 'cover', 'tube', 'fan', 'thermometer']);
/** "Stow on the Wold", "North Alder". */
const LINKS = new Set(['of', 'on', 'the', 'upon', 'under', 'le', 'la', 'de', 'sur', 'new', 'north', 'south', 'east', 'west', 'old', 'great', 'little', 'long', 'high', 'center', 'centre', 'big', 'small', 'middle', 'end', 'side', 'home', 'spring', 'summer', 'fall', 'back']);
const NUMBER_WORDS = new Set(['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'twelve', 'twenty', 'thirty', 'forty', 'fifty', 'half', 'dozen']);
const NO_REGION_CODES = new Set(['is', 'it', 'we', 'in', 'on', 'at', 'my', 'so', 'up', 'of', 'to', 'an', 'as', 'or', 'if', 'by', 'no', 'do', 'he', 'us', 'me', 'hi', 'oh', 'ok']);

/** A full stop, unless it only shortens a name ("St. Alder"). */
const SENTENCE_END = /(?<!\b(?:st|ste|mt|ft|pt))\.(?:\s|$)/iu;

interface TownWords {
  readonly words: readonly string[];
  readonly end: number;
}

/** The words of one part between commas that can be of a name. `free`: nothing else was asked, so that everyday words may be a name. */
function nameWords(text: HouseText, part: { readonly from: number; readonly until: number; readonly first: boolean }, free: boolean): TownWords & { readonly whole: boolean } {
  let sure = false;
  const written = text.original.slice(part.from, part.until);
  const own = [...written.matchAll(/\p{L}[\p{L}'’.-]*/gu)].filter((word, at) => !(at === 0 && !part.first && /^(?:in|near|at|up|over|down)$/i.test(word[0])));
  const words: string[] = [];
  let end = part.from;
  for (const [at, found] of own.entries()) {
    const word = found[0].replace(/\.$/, '');
    const lower = word.toLowerCase();
    const capital = /^\p{Lu}/u.test(word);
    const isCode = lower.length === 2 && (at > 0 || !part.first) && !NO_REGION_CODES.has(lower);
    const everyday = FUNCTION_WORDS.has(lower) && !capital && !isCode && !(free && LINKS.has(lower));
    const crop = !free && text.pieces.some(({ start, crop: hit }) => hit !== undefined && start === part.from + found.index);
    const stops = STOPS.has(houseWord(singular(lower)));
    // "Two layers" and "min max thermometer" begin with no name.
    if (stops && !sure) return { words: [], end: part.from, whole: false };
    if (stops || everyday || crop || words.length >= MOST_WORDS) break;
    sure ||= !ORDINARY_WORDS.has(lower) && !FUNCTION_WORDS.has(lower) && !NUMBER_WORDS.has(lower);
    words.push(word);
    end = part.from + found.index + word.length;
  }
  return { words, end, whole: words.length === own.length };
}

/** A town from an offset on, with the region behind a comma. */
function townFrom(text: HouseText, from: number, free: boolean): { readonly town: string; readonly end: number } | null {
  const stretch = (/^[^\d;!?()\n]*/.exec(text.original.slice(from))?.[0] ?? '').split(SENTENCE_END)[0] ?? '';
  const found: TownWords[] = [];
  let offset = from;
  for (const [at, part] of stretch.split(',').entries()) {
    const read = nameWords(text, { from: offset, until: offset + part.length, first: at === 0 }, free);
    offset += part.length + 1;
    if (read.words.length === 0 || (at > 0 && !read.whole)) break;
    found.push(read);
    if (!read.whole) break;
  }
  const last = found.at(-1);
  return last === undefined ? null : { town: found.map(({ words }) => words.join(' ')).join(', '), end: last.end };
}

const LEADING = /^(?:[\s,]|(?:hi|hello|hey|hiya|ok|okay|um|uh|well|so|sure|yes|its|it's|it is|it|we're|we are|we|i'm|i am|i|im|my|our|that's|that is|this is|greenhouse|hoop house|hoophouse|tunnel|polytunnel|farm|garden|place|location|nearest|closest|biggest|town|village|city|is|are|live|living|located|based|situated|up|down|out|over|here|just|right|somewhere|near|close to|in|at|by|from|around|outside of|outside|to|called|the (?=(?:greenhouse|hoop|tunnel|poly|farm|garden|place|nearest|closest|town|village|city)))\b(?!,? *$))+/i;
const POSTAL_CODE = /^\s*(?:zip|postcode|postal code)?\s*([a-z]{0,2}\d[a-z\d]{1,5}(?:[ -]?\d[a-z\d]{2,3})?)\s*$/;
const LEAST_CODE_DIGITS = 2;

/** "Clay loam", "two beds", "kale and spinach" answer another question; "Clay, Kentucky" and "Clay" are places. */
function isOfTheHouse({ pieces, original }: HouseText, { from, end, town }: { readonly from: number; readonly end: number; readonly town: string }): boolean {
  if (town.includes(',') || /^\p{Lu}/u.test(original.slice(from))) return false;
  return town.split(' ').every((word) => NUMBER_WORDS.has(word) || houseWord(singular(word)) !== null) || pieces.some(({ start, crop }) => crop !== undefined && start >= from && start < end);
}

/** A town: after "near", or as the answer to the question where the greenhouse is. */
export function readTown(text: HouseText, asked: boolean): PlaceSaid | null {
  const near = NEAR.exec(text.plain) ?? IN.exec(text.original);
  if (near !== null) {
    const from = near.index + near[0].length;
    const town = townFrom(text, from, asked);
    const isThing = !asked && !/^\p{Lu}/u.test(text.original.slice(from)) && text.pieces.some(({ start, symbol }) => start === from && /^[@%]/.test(symbol));
    if (town !== null && !isThing) return { fact: { about: 'town', town: town.town }, start: near.index, end: town.end };
  }
  if (!asked) return null;
  const code = POSTAL_CODE.exec(text.plain)?.[1];
  if (code !== undefined && code.replace(/\D/g, '').length >= LEAST_CODE_DIGITS && !/^\d{1,3}(?:ft|in|m|cm|x)?$/.test(code)) return { fact: { about: 'town', town: code.toUpperCase() }, start: 0, end: text.original.length };
  const from = LEADING.exec(text.original)?.[0].length ?? 0;
  const town = townFrom(text, from, true);
  return town === null || isOfTheHouse(text, { from, ...town }) ? null : { fact: { about: 'town', town: town.town }, start: from, end: town.end };
}
