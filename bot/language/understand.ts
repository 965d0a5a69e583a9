/**
 * How a message is understood, and how to teach it a phrase by a line.
 *
 * plain-text   one form for quotes, dashes, degree signs
 * value-grammar   what is a number: clock, day, amount, temperature, or a code that is none (peggy)
 * ways-of-speech   dialects, oaths, and what is taken back in the same breath ("22, no wait, 23"), as plain words
 * word-forms, spelling, everyday-words   abbreviations, slips of the thumb; what is English as it stands is no slip
 * names-said, counted   a thermometer's own name; numbers that count (plants, ages, years) and are no degrees
 * message   words become symbols (#0 a temperature, %0 a crop, @cover an item, &inside a place), so that a rule speaks of kinds
 * foretold, numbers-of-others   numbers that are no readings of this house: forecasts, hearsay, a neighbour's, what is only counted
 * stretches, attached, reading   where speech is cut, which words belong to which number, and what it then says
 * command   what begins with a slash; a file for each intent (did, outcome, ...): its rule and its word lists; several-things: two at once; remarks: what is only said beside a reading
 * asides   what is left out where the whole is not understood: greetings, excuses, who is at home
 * tolerance   how readily to be called out, where nothing else is meant
 * key-words   the last resort for a message that no rule knows; no number and no deed comes from there
 *
 * To add a phrase: write it with its meaning in tests/bot/language/corpus-*.ts, see it fail, then add one word to one list:
 * - a misspelling or short form ("tmrw"): SAID_AS in word-forms; an everyday word that spelling spoils: ordinary-words
 * - a name of a device or place ("quilt", "hoop"): item-words, place-words; a crop: the crop table, never here
 * - a word that growers put beside a temperature ("brr"): TALK in reading-talk, and AFTER there if it follows the number
 * - something that is measured and no temperature ("humidity"): OTHER_MEASURES there; somebody else's thermometer: ELSEWHERE
 * - a unit that follows a number ("mph"): NOUNS in value-grammar
 * - a way to say a deed, a state, a question: the list in the file of that intent, a wording a line (wordings says how they are read)
 *
 * What is stored must have been said: a number among words that are not known is asked about (which-reading). So a list may be
 * too short, never too long; after a change run `node --import tsx tests/soak/language-fuzz.ts`.
 */
import { advice, anyAdvice, openAdvice } from './advice.js';
import { isOnlyPleasant, isSmallTalk, withoutAsides, withoutFillers } from './asides.js';
import { command } from './command.js';
import { condition } from './condition.js';
import { cropQuestion } from './crop-question.js';
import { did } from './did.js';
import { effect } from './effect.js';
import { isForetold } from './foretold.js';
import { fix, unitOfReading } from './fix.js';
import { unclear, type Intent } from './intent.js';
import { keyWords } from './key-words.js';
import { mark } from './mark.js';
import { readMessage, withoutNumbers, type Heard, type Message } from './message.js';
import { outcome } from './outcome.js';
import { outlook } from './outlook.js';
import { chat, firstWords, plainAsk } from './plain-asks.js';
import { isAllOfOther, isAllOfOthers } from './numbers-of-others.js';
import { reading } from './reading.js';
import { isQuestion } from './question.js';
import { severalThings } from './several-things.js';
import { suppose } from './suppose.js';
import { ofTrips, toleranceSaid } from './tolerance.js';

type Rule = (message: Message) => Intent | null;

/** Beside a number only who wants something set speaks of settings: "got a new thermometer and it is in celsius". */
const SETS = / (?:switch|change|set|use|send|show|want|prefer|give|talk|speak|message|messages|text|texts|wake|alert|call|remind|bedtime|evening|morning|pause|move|make|please|moved|update|location|coordinates) /;
/** Carriers act on these words themselves, so that none of them may get a meaning of ours. */
const CARRIER_WORDS = /^ (?:cancel|end|quit|yes)(?: ;)* $/;

/** "Will it be colder than last night" asks about the night to come. */
const COMPARES_AHEAD = / (?:will|going to|tonight|tomorrow) .*(?:than|like|as (?:cold|bad|low|warm) as) (?:last|yesterday|the (?:last|past))/;

/** What only tells; these write something down, so each must be sure of itself. */
const TELLING: readonly Rule[] = [condition, outcome, mark, did];

/** What asks, from the most particular to the most general. */
const ASKING: readonly Rule[] = [
  (message) => plainAsk('why', message),
  suppose,
  effect,
  (message) => (/ (?:tonight|this evening) /.test(message.said) ? null : plainAsk('next', message)),
  (message) => plainAsk('record', message),
  openAdvice,
  cropQuestion,
  (message) => (COMPARES_AHEAD.test(message.said) ? null : plainAsk('history', message)),
  outlook,
  advice,
  anyAdvice,
];

const firstOf = (rules: readonly Rule[], message: Message): Intent | null => {
  for (const rule of rules) {
    const found = rule(message);
    if (found !== null) return found;
  }
  return null;
};

/** Whether the stretch with the number is itself what is asked ("will it go below 28?"). */
const asksWithNumber = (message: Message): boolean =>
  message.form.split(/ [;,] |(?<= \?) /).some((stretch) => stretch.includes('#') && isQuestion(` ${stretch.trim()} `, ` ${stretch.replace(/[?;,:]/g, '').trim()} `));

function withNumber(message: Message): Intent | null {
  if (message.asks && asksWithNumber(message)) return firstOf(ASKING, message) ?? unclear('which-meaning', { choices: ['reading', 'outlook'] });
  const done = message.asks ? null : did(message);
  if (done !== null) return done;
  if (isForetold(message)) return firstOf(ASKING, message) ?? (message.asks ? keyWords(withoutNumbers(message)) : null) ?? unclear('which-meaning', { choices: ['reading', 'outlook'] });
  const read = reading(message);
  // "I've got two in pots, are they going to get hurt": what is asked needs no number.
  const isOpenNumber = message.asks && read?.kind === 'unclear' && read.asks === 'which-reading' && message.temps.every(({ sign, unit, degree, against }) => sign === 'none' && unit === null && !degree && against === null);
  return (isOpenNumber ? firstOf(ASKING, message) : null) ?? read;
}

/** What the message means where it means one thing. */
function oneThing(message: Message): Intent {
  if (message.form.trim() === '' || CARRIER_WORDS.test(message.form)) return unclear('what');
  const before = firstOf([firstWords, unitOfReading, (one) => (one.temps.length > 0 && !SETS.test(one.said) ? null : plainAsk('settings', one)), ofTrips, fix], message);
  if (before !== null) return before;
  // "His tunnel was at -2 last year, thanks for asking": what else is said stands without a number that is none of ours.
  const beside = message.temps.length > 0 && isAllOfOther(message) ? firstOf(message.asks ? [...TELLING, ...ASKING, keyWords] : [...TELLING, chat], withoutNumbers(message)) : null;
  if (beside !== null) return beside;
  if (!message.asks && isAllOfOthers(message)) return { kind: 'chat' };
  const found = message.temps.length > 0 ? withNumber(message) : firstOf([...TELLING, ...ASKING, reading, chat], message);
  if ((found === null || found.kind === 'unclear') && toleranceSaid(message) !== null) return { kind: 'settings' };
  return found ?? unclear('what');
}

/** What a grower's message means. What is not sure is asked back: nothing is guessed. */
export function understand(heard: Heard): Intent {
  const commanded = command(heard.text, (text) => understand({ ...heard, text }));
  if (commanded !== null) return commanded;
  const message = readMessage(heard);
  // Asides and fillers leave most parts as they are.
  const known = new Map<string, Intent>();
  const understood = (text: string): Intent => {
    const found = known.get(text) ?? oneThing(readMessage({ ...heard, text }));
    known.set(text, found);
    return found;
  };
  const meant = allThings(message, understood);
  if (!isOpen(meant) || message.pieces.length > MOST_PIECES) return meant;
  // What is not understood may be so for an aside, or for a word that adds nothing.
  const told = withoutAsides(message);
  const barer = [told, withoutFillers(message), told === null ? null : withoutFillers(told)];
  for (const one of barer) {
    // Without its fillers a question must not become a deed.
    const again = one === null || (message.asks && !one.asks) ? meant : allThings(one, understood);
    if (again.kind !== 'unclear') return again;
  }
  const isOpenEnd = meant.kind === 'unclear' && (meant.asks === 'what' || (message.temps.length > 0 && isAllOfOther(message) && isLifeAlone(withoutNumbers(message))));
  return isOpenEnd ? lastResort(message.temps.length > 0 && isAllOfOther(message) ? withoutNumbers(message) : message) : meant;
}

function allThings(message: Message, understood: (text: string) => Intent): Intent {
  const whole = oneThing(message);
  return severalThings(message, whole, understood) ?? whole;
}

/** A longer message is no quick word with an aside. */
const MOST_PIECES = 60;
const OPEN: ReadonlySet<string> = new Set(['what', 'which-reading', 'which-meaning', 'which-place']);
const isOpen = (meant: Intent): boolean => meant.kind === 'unclear' && OPEN.has(meant.asks);

const isLifeAlone = (message: Message): boolean => isOnlyPleasant(message) || isSmallTalk(message);

function lastResort(message: Message): Intent {
  const told = withoutAsides(message);
  const meant = keyWords(message) ?? (told === null ? null : keyWords(told));
  return meant ?? (isLifeAlone(message) ? { kind: 'chat' } : unclear('what'));
}
