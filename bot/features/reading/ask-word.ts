import type { Outgoing } from '../../chat.js';
import { meanings, type Meaning, type Unclear } from '../../language/intent.js';
import { readMessage } from '../../language/message.js';
import { celsius, signedValue } from '../../language/temperature.js';
import { understand } from '../../language/understand.js';
import { askBack } from '../../text/reply-text.js';
import { READING_WORDS } from '../../text/reading-text.js';
import type { Records } from '../../ports.js';
import { SAME_C } from './as-typed.js';
import type { ReadingMessage } from './judge.js';
import { logReadings } from './log-reading.js';
import { remember, type Pending } from './pending.js';
import { thermometerNames } from './thermometer.js';

type WordAsked = Extract<Pending, { about: 'word' }>;

const ASKS_FOR_WORD = new Set<string>(['which-place', 'which-unit', 'which-sign'] satisfies WordAsked['ask'][]);

/** Asks back; where one word of a reading is missing, the word alone will do as an answer. */
export async function askBackAbout(intent: Unclear, message: ReadingMessage, store: Records): Promise<Outgoing> {
  const { asks, word, choices } = intent;
  const impossible = asks === 'impossible-temperature' && word !== undefined ? withImpossible(word, message) : null;
  if (impossible !== null) return logReadings(impossible, message, store);
  if (word !== undefined && ASKS_FOR_WORD.has(asks)) await remember({ about: 'word', text: message.text, word, ask: asks as WordAsked['ask'], atS: message.receivedAtS }, store);
  const names = thermometerNames(message.greenhouse);
  if (asks === 'which-place' && word !== undefined && names.length > 0) return { text: READING_WORDS.whichThermometer(word, [...READING_WORDS.places, ...names]) };
  return { text: askBack(asks, word, choices, message.units) };
}

/** Numbers that stand in for one that cannot be, so that the rest of the message is read. */
const STAND_INS = { C: 1.23, F: 34.56 } as const;

/** What a message reports with a number that cannot be a temperature: it is kept and asked about like any other that does not fit. */
function withImpossible(word: string, message: ReadingMessage): Extract<Meaning, { kind: 'reading' }> | null {
  const { text, receivedAtS: atS, zone, units, greenhouse } = message;
  const heard = { atS, zone, units, crops: [], thermometers: thermometerNames(greenhouse) };
  const token = readMessage({ ...heard, text }).temps.find((one) => one.text.trim() === word);
  const at = text.toLowerCase().indexOf(word);
  if (token === undefined || at < 0) return null;
  const unit = token.unit ?? units;
  const c = celsius(signedValue(token, unit), unit);
  const standIn = STAND_INS[unit];
  const understood = meanings(understand({ ...heard, text: `${text.slice(0, at)}${standIn}${token.unit ?? ''}${text.slice(at + word.length)}` }));
  const [only] = understood.filter((one) => one.kind === 'reading');
  if (only === undefined || understood.some(({ kind }) => kind === 'unclear')) return null;
  return { ...only, readings: only.readings.map((reading) => (Math.abs(reading.c - celsius(standIn, unit)) < SAME_C ? { ...reading, c } : reading)) };
}

/** The message with the answer in the place of the word that was asked about, if that makes a reading. */
export function withWord({ text, word, ask }: WordAsked, answer: string, message: ReadingMessage): Extract<Meaning, { kind: 'reading' }> | null {
  const said = answer.trim().replace(/[.!]+$/u, '').replace(/^(?:the|it is|it's|at the|at|in the) /iu, '').replace(/ (?:one|thermometer)$/iu, '');
  if (said === '' || said.split(/\s+/u).length > MOST_WORDS) return null;
  const at = text.toLowerCase().indexOf(word.toLowerCase());
  if (at < 0) return null;
  const put = ask === 'which-unit' ? `${word} ${said}` : said;
  const whole = `${text.slice(0, at)}${put}${text.slice(at + word.length)}`;
  const understood = meanings(understand({ text: whole, atS: message.receivedAtS, zone: message.zone, units: message.units, crops: [], thermometers: thermometerNames(message.greenhouse) }));
  // What else was said then was answered then.
  const told = understood.filter(({ kind }) => kind === 'reading' || kind === 'unclear');
  const [only] = told;
  return told.length === 1 && only?.kind === 'reading' ? only : null;
}
const MOST_WORDS = 4;
