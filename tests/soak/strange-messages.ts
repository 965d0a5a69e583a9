import fc from 'fast-check';
import { GROWERS_1 } from '../bot/language/corpus-growers-1.js';
import { GROWERS_2 } from '../bot/language/corpus-growers-2.js';
import { CORPUS_READINGS } from '../bot/language/corpus-readings.js';
import { CORPUS_TALK } from '../bot/language/corpus-talk.js';
import { HELD_OUT } from '../bot/language/held-out.js';
import { NIGHT_PHRASES } from '../bot/language/phrases-night.js';
import { OTHER_PHRASES } from '../bot/language/phrases-other.js';
import { READING_PHRASES } from '../bot/language/phrases-readings.js';

const SAID = [...GROWERS_1, ...GROWERS_2, ...CORPUS_READINGS, ...CORPUS_TALK, ...HELD_OUT, ...NIGHT_PHRASES, ...OTHER_PHRASES, ...READING_PHRASES].map(({ says }) => says);
const WORDS = [...new Set(SAID.flatMap((says) => says.split(/\s+/)))];
const LONGEST = 300;

const said = fc.constantFrom(...SAID);
const number = fc.oneof(
  fc.integer({ min: -99, max: 999 }).map(String),
  fc.double({ min: -70, max: 130, noNaN: true }).map((value) => value.toFixed(1)),
  fc.constantFrom('twenty', 'minus four', '½', '1/2', '28-29', '10,5', '1e3', '0x1f', '٣', '２８', '--3', '+-4', '28F', '-3c', '5am', '6:40', '12/24', 'a degree below'),
);
const glue = fc.constantFrom(' ', '  ', ', ', '. ', '? ', '\n', ' and ', ' but ', '', ' - ', '; ', ' 🥶 ', '/', ': ', '…');

type Change = (text: string, at: number, other: string) => string;
/** Slips of cold thumbs and of dictation; `at` is a place in the text. */
const CHANGES: readonly Change[] = [
  (text, at) => text.slice(0, at) + text.slice(at + 1),
  (text, at) => text.slice(0, at) + (text[at] ?? '') + text.slice(at),
  (text, at) => text.slice(0, at) + (text[at + 1] ?? '') + (text[at] ?? '') + text.slice(at + 2),
  (text, at, other) => text.slice(0, at) + other + text.slice(at),
  (text, at) => text.slice(0, at) + (text[at] ?? '').toUpperCase() + text.slice(at + 1),
  (text) => text.replace(/\s+/g, ''),
  (text) => text.replace(/[.,?!]/g, ''),
  (text) => text.split(/\s+/).reverse().join(' '),
  (text, at) => text.split(/\s+/).filter((_, n) => n !== at % 7).join(' '),
  (text) => text.replaceAll('-', '−'),
  (text) => text.replace(/\d+/g, (digits) => [...digits].reverse().join('')),
  (text) => text.toUpperCase(),
  (text, at) => text.slice(at),
  (text, _at, other) => `${text} ${other}`,
];

const changed = fc.tuple(said, fc.array(fc.tuple(fc.constantFrom(...CHANGES), fc.nat(60), fc.oneof(number, fc.constantFrom(...WORDS), fc.string({ maxLength: 3 }))), { minLength: 1, maxLength: 4 })).map(([text, changes]) => changes.reduce((sofar, [change, at, other]) => change(sofar, Math.min(at, sofar.length), other), text));

/** Messages that nobody would plan for: pure noise, shuffled words, things said with slips, and several run together. */
export const strangeMessage: fc.Arbitrary<string> = fc
  .oneof(
    { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 80 }) },
    { weight: 1, arbitrary: fc.string({ maxLength: 40 }) },
    { weight: 3, arbitrary: fc.array(fc.oneof(fc.constantFrom(...WORDS), number), { minLength: 1, maxLength: 12 }).map((words) => words.join(' ')) },
    { weight: 4, arbitrary: changed },
    { weight: 2, arbitrary: fc.tuple(changed, glue, said).map(([one, between, other]) => one + between + other) },
    { weight: 1, arbitrary: fc.tuple(fc.constantFrom('/start', 'start', '/join', '/start@some_bot', '/crop', '/reading', '/week'), fc.constantFrom(' ', ''), fc.oneof(number, fc.string({ maxLength: 12 }))).map((parts) => parts.join('')) },
  )
  .map((text) => text.slice(0, LONGEST));
