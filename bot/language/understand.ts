import { advice, openAdvice } from './advice.js';
import { condition } from './condition.js';
import { cropQuestion } from './crop-question.js';
import { did } from './did.js';
import { effect } from './effect.js';
import { fix } from './fix.js';
import { unclear, type Intent } from './intent.js';
import { mark } from './mark.js';
import { readMessage, type Heard, type Message } from './message.js';
import { outcome } from './outcome.js';
import { outlook } from './outlook.js';
import { chat, firstWords, plainAsk } from './plain-asks.js';
import { reading } from './reading.js';
import { asksWithNumber, readingAnd } from './several-things.js';
import { suppose } from './suppose.js';

type Rule = (message: Message) => Intent | null;

/** Carriers act on these words themselves, so that none of them may get a meaning of ours. */
const CARRIER_WORDS = /^ (?:cancel|end|quit|yes)(?: ;)* $/;

/** Someone else's number: a forecast that is told is no thermometer that was read. */
const FORETOLD = / (?:forecast|forecasts|calling for|supposed to|predicted|predicting|predicts|expected|expecting|going to|will|might|may|could|should hit|should get|weather app|radio) /;

/** What only tells; these write something down, so each must be sure of itself. */
const TELLING: readonly Rule[] = [(message) => plainAsk('settings', message), condition, outcome, mark, did];

/** What asks, from the most particular to the most general. */
const ASKING: readonly Rule[] = [
  (message) => plainAsk('why', message),
  suppose,
  effect,
  (message) => plainAsk('next', message),
  (message) => plainAsk('record', message),
  openAdvice,
  cropQuestion,
  (message) => plainAsk('history', message),
  outlook,
  advice,
];

const firstOf = (rules: readonly Rule[], message: Message): Intent | null => {
  for (const rule of rules) {
    const found = rule(message);
    if (found !== null) return found;
  }
  return null;
};

function withNumber(message: Message): Intent | null {
  const set = plainAsk('settings', message);
  if (set !== null) return set;
  if (message.asks && asksWithNumber(message)) return firstOf(ASKING, message) ?? unclear('which-meaning', { choices: ['reading', 'outlook'] });
  const done = message.asks ? null : did(message);
  if (done !== null) return done;
  const also = readingAnd(message);
  if (also !== null) return also;
  if (FORETOLD.test(message.said)) return firstOf(ASKING, message) ?? unclear('which-meaning', { choices: ['reading', 'outlook'] });
  return reading(message);
}

/** What a grower's message means. What is not sure is asked back: nothing is guessed. */
export function understand(heard: Heard): Intent {
  const message = readMessage(heard);
  if (message.form.trim() === '' || CARRIER_WORDS.test(message.form)) return unclear('what');
  const before = firstOf([firstWords, fix], message);
  if (before !== null) return before;
  const found = message.temps.length > 0 ? withNumber(message) : firstOf([...TELLING, ...ASKING, reading, chat], message);
  return found ?? unclear('what');
}
