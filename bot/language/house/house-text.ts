import { cropNames, DOUBTFUL_CROP_WORDS, type CropHit, type CropNames } from '../crop-names.js';
import type { CropWord } from '../crop-word.js';
import { ORDINARY_WORDS } from '../ordinary-words.js';
import { plainText } from '../plain-text.js';
import { nearestWord } from '../spelling.js';
import { readTokens, type ClockToken } from '../value-grammar.js';
import { plainWords, singular } from '../word-forms.js';
import { HOUSE_KEY_WORDS, houseWord, LONGEST_PHRASE } from './house-words.js';
import { readMeasures, type MeasureToken, type MeasureUnit } from './measure-grammar.js';

/**
 * A word, a mark, or a symbol for something known: "#L" and a measure's number (the letter says what it measures), "~0" a
 * clock time, "%0" a crop, "@drum" a thing that a greenhouse can have.
 */
export interface Piece {
  readonly symbol: string;
  readonly written: string;
  /** Offsets in the plain text. */
  readonly start: number;
  readonly end: number;
  readonly measure?: MeasureToken;
  readonly clock?: ClockToken;
  readonly crop?: CropHit;
}

export interface HouseText {
  readonly original: string;
  readonly plain: string;
  readonly pieces: readonly Piece[];
}

/** What a unit measures, as one letter; N where no unit is said. */
const MEASURES: Readonly<Record<MeasureUnit, string>> = {
  ft: 'L', in: 'L', m: 'L', cm: 'L', mm: 'L', yd: 'Y',
  'sq ft': 'A', m2: 'A',
  'cu ft': 'V', 'cu yd': 'V', m3: 'V', gal: 'V', l: 'V',
  kg: 'M', lb: 'M', ton: 'M', tonne: 'M',
  'g/m2': 'G', oz: 'G', mil: 'X', micron: 'X',
  w: 'P', kw: 'P', btu: 'P', wh: 'E', kwh: 'E', ah: 'H', v: 'U',
  cfm: 'Q', 'm3/h': 'Q', 'l/s': 'Q',
  C: 'T', F: 'T', degree: 'T', percent: 'S', money: 'C',
  minute: 'D', hour: 'D', day: 'D', week: 'D', month: 'D', year: 'D',
};

const MARKS: Readonly<Record<string, string>> = { '.': ';', ';': ';', '!': ';', '\n': ';', '?': '?', ',': ',', ':': ':', '/': ',', '(': ',', ')': ',', '&': 'and', '+': 'and', '*': 'x', '=': 'is' };

/** Slips that lie too far from the word for the rule, or too near to another one. */
const SLIPS: Readonly<Record<string, string>> = {
  tal: 'tall', hieght: 'height', heigth: 'height', hight: 'height', lenght: 'length', lenth: 'length', widht: 'width', wdith: 'width', wdie: 'wide', dubble: 'double', duble: 'double', dbl: 'double',
  laers: 'layers', layrs: 'layers', layres: 'layers', galss: 'glass', plastik: 'plastic', hoopouse: 'hoophouse', hoophous: 'hoophouse', greenhose: 'greenhouse', barells: 'barrels', barels: 'barrels', hav: 'have', peek: 'peak', pique: 'peak', peack: 'peak', blowr: 'blower', fann: 'fan', lome: 'loam', lom: 'loam', wth: 'with', nort: 'north', sotuh: 'south',
  gnd: 'ground', approx: 'about', w: 'with', bldg: 'building', elec: 'electric',
};

/** A sheet of film is a layer of the house; a sheet alone may lie on a bed. */
const SHEET_OF_FILM = /\bsheet(?=s? of (?:\w+ )?(?:plastic|film|poly|polythene|polyethylene)\b)/g;
const BETWEEN_LETTERS = /\b([nesw])\s?[/-]\s?([nesw])\b/g;
/** "20W x 48L x 9H": letters of catalogues. */
const CATALOGUE = /(\d\s*(?:ft|')?\s*)w(\s*[x*]\s*\d[\d.]*\s*(?:ft|')?\s*)l(?![a-wyz])/g;
const CATALOGUE_HEIGHT = /([x*]\s*\d[\d.]*\s*(?:ft|')?\s*)h\b/g;

function prepared(text: string): string {
  const plain = plainText(text).replace(/[×✕]/g, 'x').replace(/″/g, '"');
  // Kept at the same length, so that the original can be cut at the same places.
  return plain.replace(BETWEEN_LETTERS, (found, a: string, b: string) => `${a}${' '.repeat(found.length - 2)}${b}`).replace(SHEET_OF_FILM, 'layer').replace(CATALOGUE, '$1 $2 ').replace(CATALOGUE_HEIGHT, '$1 ');
}

const isKnown = (word: string, crops: CropNames): boolean => {
  const one = singular(word);
  return ORDINARY_WORDS.has(word) || ORDINARY_WORDS.has(one) || HOUSE_KEY_WORDS.has(word) || HOUSE_KEY_WORDS.has(one) || houseWord(one) !== null || crops.words.has(word) || crops.words.has(one) || crops.idsByPhrase.has(one) || FUNCTION_WORDS.has(word);
};

/** Short words of sentences, which no slip may turn into a thing. */
export const FUNCTION_WORDS: ReadonlySet<string> = new Set(
  `a an the my our your his her their its this that these those it he she we i you they me us them him one ones there here and or but so if then also too plus with without at in on of for from to into onto by near
  under over up down out off as is are was were be been being am has have had having do does did done will would can could should shall may might must not no yes yep ok okay hi hiya hey hello howdy hallo yo mate guys folks sure well um er oh ah
  about around roughly maybe perhaps probably approximately exactly just only really quite very pretty some any all each every both either neither most more less few several many much lot lots bit little
  what which who how why when where because since while though although like kind sort type thing stuff size sized shape shaped wide long tall high deep width length height depth across thick peak ridge top middle center centre
  total altogether apiece per x feet foot ft inches inch metres meters metre meter north south east west left right front back rear end side inside outside row rows inner outer min max minimum maximum thanks thank please cheers sir mate actually sorry wait oops correction instead make made change changed set now currently today again still
  got get gets getting put puts putting use uses using used keep keeps keeping need want think know say said says told tell call called named run runs running built build stand stands standing sit sits sitting lie lies lying grow grows growing planted plant plants sown sow sowed
  heaped piled dumped stacked buried dug filled painted hung mounted fixed bolted installed fitted bring brought keeps holds hold holding held warm warms cold cool hot heat heats heated freezing frost plants
  coordinates coordinate zone
  nope nah none nothing anything ours yours ones measures measure mix mixed fresh stays stay stayed closest nearest unheated lit
  add added adding remove removed take took taken sold moved new old used small big large tiny great good nice home made bought dad mum wife husband partner friend neighbour neighbor year years ago last next month week day winter summer spring autumn fall`.split(/\s+/),
);

function corrected(word: string, crops: CropNames): string {
  const slip = SLIPS[word];
  if (slip !== undefined) return slip;
  if (word.length < 4 || !/^[a-z]+$/.test(word) || isKnown(word, crops)) return word;
  const targets = [...HOUSE_KEY_WORDS, 'thermometer', 'gallons', 'evening', 'morning', 'fahrenheit', 'celsius', ...[...crops.words].filter((name) => name.length >= 4)].filter((target) => target.length >= SURE_LETTERS || !ORDINARY_WORDS.has(target));
  return nearestWord(word, targets, (name) => crops.idsByPhrase.get(name)?.join(' ') ?? name) ?? word;
}

/** Shorter everyday words lie too near to each other to be the target of a correction. */
const SURE_LETTERS = 6;

interface Word extends Piece {
  readonly word: string;
}

/** The words and measures of a description, with everything known in it named. */
export function readHouseText(text: string, cropWords: readonly CropWord[]): HouseText {
  const plain = prepared(text);
  const original = plain.length === text.length ? text : plain;
  const crops = cropNames(cropWords);
  const clocks = readTokens(plain).filter((token) => token.type === 'clock');
  const masked = clocks.reduce((sofar, { start, end }) => sofar.slice(0, start) + ' '.repeat(end - start) + sofar.slice(end), plain);
  const words: Word[] = clocks.map((clock, at) => ({ word: '', symbol: `~${at}`, written: clock.text, start: clock.start, end: clock.end, clock }));
  let count = 0;
  for (const token of readMeasures(masked)) {
    const spot = { written: original.slice(token.start, token.end).trim(), start: token.start, end: token.end };
    if (token.type === 'measure') words.push({ word: '', symbol: `#${token.unit === null ? 'N' : MEASURES[token.unit]}${count++}`, measure: token, ...spot });
    else if (token.type === 'word') for (const word of plainWords(token.text)) words.push({ word: isName(original, token.start) ? word : corrected(word, crops), symbol: '', ...spot });
    else if (token.text in MARKS) words.push({ word: '', symbol: MARKS[token.text] ?? ',', ...spot });
    else if (token.text === '-' && /\s/.test(plain[token.end] ?? ' ')) words.push({ word: '', symbol: ',', ...spot });
    else if (token.text === '\n' || plain.slice(token.start, token.end) === '\n') words.push({ word: '', symbol: ';', ...spot });
  }
  words.sort((a, b) => a.start - b.start);
  return { original, plain, pieces: named(words, crops) };
}

/** A word with a capital in the middle of a sentence is a name and is left as it is written. */
function isName(original: string, start: number): boolean {
  const before = original.slice(0, start).trimEnd();
  return /^[A-Z][a-z]/.test(original.slice(start)) && before !== '' && !/[.!?\n:]$/.test(before);
}

function named(words: readonly Word[], crops: CropNames): readonly Piece[] {
  const pieces: Piece[] = [];
  let hits = 0;
  for (let at = 0; at < words.length; ) {
    const found = phraseAt(words, at, crops);
    const part = words.slice(at, at + (found?.length ?? 1));
    const first = part[0]!;
    const written = part.map((word) => word.written).filter((one, i, all) => one !== all[i - 1]).join(' ');
    const spot = { written, start: first.start, end: part.at(-1)!.end };
    if (found?.crop) pieces.push({ symbol: `%${hits++}`, crop: found.crop, ...spot });
    else if (found) pieces.push({ symbol: `@${found.symbol}`, ...spot });
    else pieces.push({ ...first, symbol: first.symbol === '' ? first.word : first.symbol });
    at += part.length;
  }
  return pieces;
}

function phraseAt(words: readonly Word[], at: number, crops: CropNames): { readonly symbol: string; readonly length: number; readonly crop?: CropHit } | null {
  for (let length = Math.min(LONGEST_PHRASE, words.length - at); length >= 1; length -= 1) {
    const part = words.slice(at, at + length);
    if (part.some(({ symbol }) => symbol !== '')) continue;
    const phrase = part.map(({ word }) => singular(word)).join(' ');
    const ids = crops.idsByPhrase.get(phrase);
    const house = houseWord(phrase);
    const pointed = house === null && !DOUBTFUL_CROP_WORDS.has(phrase);
    if (ids !== undefined && pointed) return { symbol: '%', length, crop: { ids, words: part.map(({ word }) => word).join(' ') } };
    if (house !== null) return { symbol: house, length };
  }
  return null;
}
