import type { Ask } from '../language/intent.js';
import { EXAMPLE, type TempUnits } from './temperature.js';
import { PLACE_ATTRIBUTION, SECOND_WEATHER_ATTRIBUTION, WEATHER_ATTRIBUTION } from './attribution.js';

export const noReadingYet = (units: TempUnits): string => `There is no reading to correct yet. Send one, for example ${EXAMPLE[units].inside} or ${EXAMPLE[units].low}.`;

export const NOTHING_TO_STOP = 'Nothing is sent unasked on the console. Say "bye" to leave.';

export const cropNotGrown = (names: readonly string[], grown: readonly string[]): string =>
  `${names.join(' and ')}: not in this greenhouse's file. ${grown.length > 0 ? `It has: ${grown.join(', ')}.` : 'It has no crops yet; add them to a bed.'}`;

const askWords = (units: TempUnits): Readonly<Record<Ask, string>> => ({
  what: 'I did not understand that.',
  'which-unit': 'Fahrenheit or Celsius? For example "29F" or "-2C".',
  'which-sign': 'Above or below zero? For example "-2C" or "+2C".',
  'which-number': 'Which of the numbers is it?',
  'which-stat': 'Is that now, the lowest or the highest?',
  'which-time': 'At what time was that?',
  'which-place': 'Which thermometer is that: inside, outside, under the cover?',
  'which-crop': 'Which crop do you mean?',
  'which-state': 'How is it: fine, marked or dead?',
  'which-night': 'Which night do you mean?',
  'which-item': 'What do you mean: covers, vents, heater?',
  'which-meaning': 'That could mean two things.',
  'which-reading': `What does your thermometer show? For example ${EXAMPLE[units].inside} or ${EXAMPLE[units].low}.`,
  'done-yet': 'Tell me once it is done, for example "covered the beds". Until then I do not count on it.',
  'impossible-temperature': `That cannot be a temperature in a greenhouse. Send it like ${EXAMPLE[units].bare}.`,
});

/** What a kind of message says, with an example. */
const MEANING_WORDS: Readonly<Record<string, string>> = {
  outcome: 'how a crop came through, as in "the leek is fine"',
  crop: 'whether it will survive, as in "will the leek survive tonight"',
  reading: 'what your thermometer shows, as in "inside 28F"',
  outlook: 'what is forecast, as in "how cold tonight"',
  did: 'what you did tonight, as in "covered the beds"',
  mark: 'a change for good, as in "put new covers up for good"',
};

function choiceWords(ask: Ask, choices: readonly string[]): string {
  // The question names the units already.
  if (choices.length === 0 || ask === 'which-unit') return '';
  return ` ${ask === 'which-meaning' ? `Do you mean ${choices.map((kind) => MEANING_WORDS[kind] ?? kind).join(', or ')}?` : `(${choices.map((choice) => choice.replaceAll('_', ' ')).join(', ')})`}`;
}

export const askBack = (ask: Ask, word: string | undefined, choices: readonly string[] | undefined, units: TempUnits): string =>
  `${word === undefined ? '' : `"${word}": `}${askWords(units)[ask]}${choiceWords(ask, choices ?? [])} Say "help" for what I can do.`;

export const notBuiltYet = (kind: string): string => `I understood "${kind}", but that is not built yet. Say "help" for what I can do now.`;

export const HELP = [
  'What I can do:',
  '- "tonight": what to do, how cold, which crops are safe',
  '- "will the kale survive tonight", "... on Friday": one crop, and why',
  '- "any frost this week", "how cold on Friday": the nights ahead, and what to prepare for a cold spell',
  '- "28F inside", "low was -2C under the cover": I note your reading',
  '- "no, -3C" or "scrap that": corrects or takes back the last reading',
  '- "covered the beds", "heater at 2C": what you did, so that I count on it',
  '- "the kale came through", "lettuce is mush": how a crop fared, kept with its night',
  '- "added 6 drums", "put a second film on", "kale in the west bed": what changed on the house',
  '- "be more careful", "I hate going out at night", "the kale is worth 60": how readily I call you out',
  '- "undo": takes back what you told last',
  '- "settings": units, times, place and care, and how to change them; "stop" for quiet',
  '- "bye": ends the conversation',
  '- "what if I add ten drums", "what if I leave the covers off": the same night otherwise',
  '- "20 cm of snow on the roof", "the power is out", "power is back": what is wrong, and what it means',
  '- "why": what makes the night so cold, or not',
  '- "how right have you been": how often the low lay in my range',
  '- "last week": what I said, what you read, what you did',
  '- "export": all that I keep, as files for a spreadsheet',
  WEATHER_ATTRIBUTION,
  SECOND_WEATHER_ATTRIBUTION,
  PLACE_ATTRIBUTION,
].join('\n');

export const NO_WEATHER = 'No weather to stand on, so no advice tonight: my last forecast is too old.\nUntil it is back: shut the house before sunset and cover what frost would hurt.';
export const NO_ADVICE = 'I could not work out tonight: the fault is mine, not the weather\'s. Be careful: shut the house before sunset and cover what frost would hurt.';
export const SOMETHING_FAILED = 'That went wrong, and the fault is mine. Nothing was lost: try again, or say it in other words.';
