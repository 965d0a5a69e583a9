import type { Outgoing } from '../../chat.js';
import { meanings, type Meaning, type Unclear } from '../../language/intent.js';
import { understand } from '../../language/understand.js';
import { askBack } from '../../text/reply-text.js';
import { READING_WORDS } from '../../text/reading-text.js';
import type { Records } from '../../ports.js';
import type { ReadingMessage } from './judge.js';
import { remember, type Pending } from './pending.js';
import { thermometerNames } from './thermometer.js';

type WordAsked = Extract<Pending, { about: 'word' }>;

const ASKS_FOR_WORD = new Set<string>(['which-place', 'which-unit', 'which-sign'] satisfies WordAsked['ask'][]);

/** Asks back; where one word of a reading is missing, the word alone will do as an answer. */
export async function askBackAbout(intent: Unclear, message: ReadingMessage, store: Records): Promise<Outgoing> {
  const { asks, word, choices } = intent;
  if (word !== undefined && ASKS_FOR_WORD.has(asks)) await remember({ about: 'word', text: message.text, word, ask: asks as WordAsked['ask'], atS: message.receivedAtS }, store);
  const names = thermometerNames(message.greenhouse);
  if (asks === 'which-place' && word !== undefined && names.length > 0) return { text: READING_WORDS.whichThermometer(word, [...READING_WORDS.places, ...names]) };
  return { text: askBack(asks, word, choices) };
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
