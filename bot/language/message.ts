import { settleBareHours } from './clock-hours.js';
import { countsSomething, isBetween, isYear } from './counted.js';
import { cropNames, DOUBTFUL_CROP_WORDS, type CropHit, type CropNames } from './crop-names.js';
import type { CropWord } from './crop-word.js';
import type { Units } from './intent.js';
import { COUNTED_ITEMS, ITEM_BY_PHRASE } from './item-words.js';
import { namesSaid, withoutBracketsAfter } from './names-said.js';
import type { Piece } from './piece.js';
import { PLACE_BY_PHRASE } from './place-words.js';
import { isQuestion } from './question.js';
import { plainText } from './plain-text.js';
import { correctedWord, respelled } from './spelling.js';
import { readTokens, type AmountToken, type ClockToken, type TempToken } from './value-grammar.js';
import { plainlySaid } from './ways-of-speech.js';
import { plainWords, singular } from './word-forms.js';

/** A message and all that is needed to understand it. */
export interface Heard {
  readonly text: string;
  readonly atS: number;
  readonly zone: string;
  readonly units: Units;
  readonly crops: readonly CropWord[];
  readonly thermometers?: readonly string[];
}

export interface Message extends Heard {
  readonly plain: string;
  readonly pieces: readonly Piece[];
  /** The symbols with a blank on both sides, for the rules. */
  readonly form: string;
  /** The same without marks. */
  readonly said: string;
  readonly asks: boolean;
  readonly temps: readonly TempToken[];
  readonly clocks: readonly ClockToken[];
  readonly amounts: readonly AmountToken[];
  readonly hits: readonly CropHit[];
  readonly names: readonly string[];
}

const MARKS: Readonly<Record<string, string>> = { '?': '?', '.': ';', ';': ';', '!': ';', '\n': ';', ',': ',', ':': ':', '/': '/', '&': 'and', '+': 'and', '@': 'at', '-': '-', '>': '>', '<': '<', '*': '*' };
const GREETING = new Set([
  'hi', 'hey', 'hello', 'good', 'morning', 'evening', 'afternoon', 'ok', 'so', 'well', 'and', 'um', 'please', 'also', 'btw', 'ah', 'hiya',
  'howdy', 'yo', 'oh', 'just', 'yes', 'yeah', 'yep', 'yup', 'hmm', 'brr', 'brrr', 'wow', ',', ';', '-', 'duskward', 'thanks', 'but',
]);
const LABELLED = /^(?:beds?|rows|zones|houses|house|zone|row|sensor|probe|thermometer|number|no|bay|tunnel|greenhouse|station|box)$/;

/** The house itself: "in the tunnel 4, outside -1" is no tunnel number four. */
const HOUSES = /^(?:house|tunnel|greenhouse|box|station)$/;

/** Whether a number is the name of what stands before it: "bed 2", "rows 3 and 4". */
function isLabel(words: readonly Word[], token: TempToken, plain: string): boolean {
  if (token.sign !== 'none' || token.unit !== null || token.degree || !Number.isInteger(token.value) || token.value >= 20) return false;
  const [before, second, third] = [words.at(-1)?.word ?? '', words.at(-2), words.at(-3)];
  if (/^(?:and|,|-|to|&)$/.test(before) && second?.word === '*label') return third?.word.endsWith('s') === true || words.at(-5)?.word.endsWith('s') === true;
  // "No 9 not 19" denies; "house no 9" is a name.
  if (before === 'no' && !LABELLED.test(second?.word ?? '')) return false;
  if (!LABELLED.test(before) || isNamed(second)) return false;
  const isSubject = /^\s*(?:is|was|says|reads|shows|:|at|had|has|reading|got)\b/.test(plain.slice(token.end));
  return !HOUSES.test(before) || isSubject || !(/^(?:the|my|our|in|stone|rock)$/.test(second?.word ?? '') || /\b(?:outside|out|soil|under|covers?|in)\b/.test(plain));
}

/** "Shed thermometer 18": a thermometer that has a name needs no number. */
const isNamed = (word: Word | undefined): boolean => word?.symbol?.startsWith('$') === true;

interface Word {
  readonly word: string;
  readonly written: string;
  readonly start: number;
  readonly end: number;
  readonly symbol?: string;
}

/** Names of thermometers go first, as words of their own: they may hold digits ("bench 2"). */
function hideNames(plain: string, thermometers: readonly string[]): string {
  const names = thermometers.map((name, index) => ({ name: plainText(name).trim(), index })).filter(({ name }) => name !== '');
  return names.sort((a, b) => b.name.length - a.name.length).reduce((sofar, { name, index }) => {
    const escaped = name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
    return sofar.replace(new RegExp(`(?<![a-z0-9])${escaped}(?![a-z0-9])`, 'g'), `qqname${String.fromCharCode(97 + (index % 26))}${'z'.repeat(Math.floor(index / 26))}qq`);
  }, plain);
}

const nameIndex = (word: string): number | null => {
  const found = /^qqname([a-z])(z*)qq$/.exec(word);
  return found === null ? null : (found[1] ?? 'a').charCodeAt(0) - 97 + 26 * (found[2] ?? '').length;
};

function isHeat(words: readonly Word[], at: number): boolean {
  const before = words[at - 1]?.word ?? '';
  const after = words[at + 1]?.word ?? '';
  return /^(?:the|no|run|turned|turn|put|have|without|my|some|switched|left|on|off|use|started|start|with|our|any)$/.test(before) || /^(?:on|off|running|set|tonight)$/.test(after);
}

function phraseAt(words: readonly Word[], at: number, crops: CropNames): { readonly symbol: string; readonly length: number; readonly hit?: CropHit } | null {
  for (let length = Math.min(5, words.length - at); length >= 1; length--) {
    const part = words.slice(at, at + length);
    if (part.some(({ symbol }) => symbol !== undefined)) continue;
    const phrase = part.map(({ word }) => singular(word)).join(' ');
    const item = ITEM_BY_PHRASE.get(phrase);
    // One side is a place in the house, "sides" are what is rolled up and down; "heat" is mostly no device.
    const isLot = /^(?:heap|pile)$/.test(phrase) && words[at + length]?.word === 'of' && !/^(?:compost|manure|muck|dung|leaves|chips|woodchips)$/.test(words[at + length + 1]?.word ?? '');
    const isItem = item !== undefined && !isLot && !(phrase === 'side' && part[0]?.word !== 'sides') && !(/^heat(?:ing)?$/.test(phrase) && !isHeat(words, at));
    if (isItem) return { symbol: `@${item}`, length };
    const place = PLACE_BY_PHRASE.get(phrase);
    if (place !== undefined) return { symbol: `&${place}`, length };
    const ids = crops.idsByPhrase.get(phrase);
    const pointed = !DOUBTFUL_CROP_WORDS.has(phrase) || /^(?:the|my|our|those|these|all|your|tomato|pepper)$/.test(words[at - 1]?.word ?? '') || (words.length === 2 && words[1]?.word === '?');
    if (ids !== undefined && pointed) return { symbol: '%', length, hit: { ids, words: part.map(({ written }) => written).join(' ') } };
  }
  return null;
}

/** The message with everything known in it named, so that rules can speak of "a crop" and "a number". */
export function readMessage(heard: Heard): Message {
  const crops = cropNames(heard.crops);
  const saidNames = namesSaid(heard.text, crops);
  const names = [...(heard.thermometers ?? []), ...saidNames];
  const plain = respelled(plainlySaid(hideNames(withoutBracketsAfter(plainText(heard.text), saidNames), names)), crops);
  const tokens = settleBareHours(plain, readTokens(plain));
  const temps: TempToken[] = [];
  const clocks: ClockToken[] = [];
  const amounts: AmountToken[] = [];
  const hits: CropHit[] = [];
  const words: Word[] = [];
  for (const token of tokens) {
    const spot = { written: token.text, start: token.start, end: token.end };
    const add = (symbol: string): void => void words.push({ word: symbol, symbol, ...spot });
    const before = words.at(-1)?.word ?? '';
    if (token.type === 'word') {
      const index = nameIndex(token.text);
      if (index !== null) add(`$${index}`);
      else for (const word of plainWords(token.text)) words.push({ word: correctedWord(word, crops), ...spot });
    } else if (token.type === 'temp' && isLabel(words, token, plain)) add('*label');
    else if (token.type === 'temp') add(`#${temps.push(token) - 1}`);
    else if (token.type === 'clock') add(`~${clocks.push(token) - 1}`);
    else if (token.type === 'amount') add(`=${amounts.push(token) - 1}`);
    else if (token.type === 'ordinal') words.push({ word: token.text, ...spot });
    else if (token.type === 'mark' && token.text === '?' && before === '?') continue;
    else if (token.type === 'mark' && token.text in MARKS) add(MARKS[token.text] ?? token.text);
    // Another alphabet is no noise around a number, but words that nobody here can read.
    else if (token.type !== 'mark' || /\p{L}/u.test(token.text)) add(`*${token.type}`);
  }
  const pieces: Piece[] = [];
  for (let at = 0; at < words.length; ) {
    const found = words[at]?.symbol === undefined ? phraseAt(words, at, crops) : null;
    const part = words.slice(at, at + (found?.length ?? 1));
    const [first] = part;
    if (first === undefined) break;
    const symbol = found?.hit === undefined ? (found?.symbol ?? first.word) : `%${hits.push(found.hit) - 1}`;
    pieces.push({ symbol, written: part.map(({ written }) => written).join(' '), start: first.start, end: part.at(-1)?.end ?? first.end });
    at += part.length;
  }
  const { pieces: kept, temps: numbers } = countItems(withoutGreeting(pieces), temps, amounts);
  return withPieces({ ...heard, plain, temps: numbers, clocks, amounts, hits, names }, kept);
}

/** The message with these pieces, and the forms that follow from them. */
export function withPieces(message: Omit<Message, 'pieces' | 'form' | 'said' | 'asks'>, pieces: readonly Piece[]): Message {
  const form = ` ${pieces.map(({ symbol }) => symbol).join(' ')} `;
  const said = ` ${pieces.map(({ symbol }) => symbol).filter((symbol) => !/^[?;,:/\-<>]$/.test(symbol)).join(' ')} `;
  return { ...message, pieces, form, said, asks: isQuestion(form, said) };
}

/** The message with its numbers as figures that are no temperatures. */
export const withoutNumbers = (message: Message): Message =>
  withPieces({ ...message, temps: [] }, message.pieces.map((piece) => (piece.symbol.startsWith('#') ? { ...piece, symbol: '*figure' } : piece)));

/** The pieces after "hi", "good morning", "ok so"; a message of nothing else is kept. */
function withoutGreeting(pieces: readonly Piece[]): readonly Piece[] {
  const first = pieces.findIndex(({ symbol }, index) => !GREETING.has(symbol) || ((symbol === 'hi' || symbol === '-') && /^(?:[#/].*|of|was|is|temperature)$/.test(pieces[index + 1]?.symbol ?? '')) || (symbol === 'well' && pieces[index + 1]?.symbol === 'done'));
  // "Thanks a lot" is no greeting before "a lot".
  const isThanks = pieces.slice(0, first).some(({ symbol }) => symbol === 'thanks') && /^(?:a|for|again|so|very|to|you|much)$/.test(pieces[first]?.symbol ?? '');
  return first <= 0 || isThanks ? pieces : pieces.slice(first);
}

/** "Six 200 litre barrels": what a thing holds or weighs. */
const HOLDS = /^(?:l|lit|gal|kg|kilo|lb|pound|w|kw|watt)/;

/** "4 more blue drums". */
const MOST_BETWEEN = 4;

/** "4 drums" is an amount and no temperature. */
function countItems(pieces: readonly Piece[], temps: readonly TempToken[], amounts: AmountToken[]): { readonly pieces: readonly Piece[]; readonly temps: readonly TempToken[] } {
  const numbers: TempToken[] = [];
  const counted = pieces.map((piece, index): Piece => {
    const temp = piece.symbol.startsWith('#') ? temps[Number(piece.symbol.slice(1))] : undefined;
    if (temp === undefined) return piece;
    if (isYear(pieces, index, temp)) return { ...piece, symbol: '*year' };
    if (countsSomething(pieces, index, temp)) return { ...piece, symbol: `=${amounts.push({ type: 'amount', value: temp.value, noun: 'other', text: temp.text, start: temp.start, end: temp.end }) - 1}` };
    // "Ate 11 pancakes. Eleven."
    const isSaidAgain = amounts.some(({ value, start }) => value === temp.value && start < temp.start) && /^(?:|;)$/.test(pieces[index - 1]?.symbol ?? '') && /^(?:|;)$/.test(pieces[index + 1]?.symbol ?? '') && temp.sign === 'none' && temp.unit === null && !temp.degree;
    if (isSaidAgain) return { ...piece, symbol: '*figure' };
    // "3 greenhouses".
    const isOfHouses = /^&(?:inside|outside)$/.test(pieces[index + 1]?.symbol ?? '') && /[a-z]{3}s$/.test(pieces[index + 1]?.written ?? '') && temp.sign === 'none' && temp.unit === null && !temp.degree && Number.isInteger(temp.value);
    if (isOfHouses) return { ...piece, symbol: `=${amounts.push({ type: 'amount', value: temp.value, noun: 'other', text: temp.text, start: temp.start, end: temp.end }) - 1}` };
    const next = pieces.slice(index + 1, index + MOST_BETWEEN).find(({ symbol }) => !isBetween(symbol));
    const isCounted = HOLDS.test(amounts[Number(/^=(\d+)$/.exec(pieces[index + 1]?.symbol ?? '')?.[1])]?.noun ?? '') || next !== undefined && [...COUNTED_ITEMS].some((item) => next.symbol === `@${item}`) && (/s\b/.test(next.written) || temp.value === 1);
    if (!isCounted || temp.sign !== 'none' || temp.unit !== null || temp.degree || temp.against !== null || !Number.isInteger(temp.value) || temp.value === 0) return { ...piece, symbol: `#${numbers.push(temp) - 1}` };
    return { ...piece, symbol: `=${amounts.push({ type: 'amount', value: temp.value, noun: 'count', text: temp.text, start: temp.start, end: temp.end }) - 1}` };
  });
  return { pieces: counted, temps: numbers };
}
