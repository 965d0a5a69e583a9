import { describe, expect, it } from 'vitest';
import { COMMAND_WORDS } from '../../../bot/text/command-words.js';
import { GROWERS_1 } from './corpus-growers-1.js';
import { GROWERS_2 } from './corpus-growers-2.js';
import { GROWERS_3 } from './corpus-growers-3.js';
import { GROWERS_4 } from './corpus-growers-4.js';
import { GROWERS_5 } from './corpus-growers-5.js';
import { GROWERS_6 } from './corpus-growers-6.js';
import { GROWERS_7 } from './corpus-growers-7.js';
import { GROWERS_8 } from './corpus-growers-8.js';
import { GROWERS_9 } from './corpus-growers-9.js';
import { GROWERS_10 } from './corpus-growers-10.js';
import { GROWERS_11 } from './corpus-growers-11.js';
import { GROWERS_12 } from './corpus-growers-12.js';
import { FRESH } from './corpus-fresh-1.js';
import { FRESH_2 } from './corpus-fresh-2.js';
import { CORPUS_READINGS } from './corpus-readings.js';
import { CORPUS_TALK } from './corpus-talk.js';
import { fits, storesWrongly } from './fits.js';
import { heard, type Phrase } from './phrase.js';

const title = ({ says, units, when }: Phrase): string => `${JSON.stringify(says)} [${units ?? 'F'} ${when ?? 'morning'}]`;

/** Not understood yet. A thermometer's name where the house has none by it; of the first the crop but not that its blossom is meant; the rest are asked about and store nothing. */
const NOT_YET: ReadonlySet<string> = new Set([
  'Hello again :) my neighbor Carl keeps telling me I need some black water barrels in there. If I had 4 of the 55 gallon ones what would that do?',
  'Oh dear I had the wrong glasses on, that should have said 23 for the greenhouse',
  "Evening! Going to my daughter's in Leeds, be away 4 days from Friday, can you hold off with the messages till I'm back?",
  'Hello! 6 hours on my knees weeding, I can hardly stand. It peaked at 19.5 in the tunnel today would you believe',
  "You're a clever little thing aren't you, remind me of my nan and she lived to 96",
  'leek and garlic, tomorrow night?',
  'my strawberries are blooming in there will the blossoms be alright tonight',
  '4 below zero outside right now. FOUR. BELOW.',
  'thermomiter on the back bench sez 33',
  'Big news! I just finished installing a thermal curtain in the greenhouse',
  "Bok choy got its tips singed but she'll live",
  'two below outside. greenhouse at 11',
  'so the outside one bottomed at 9 around... well at 6:15 exactly according to the gadget',
  'Dipped to just under minus one... call it -1.2. Inside, about ten past six',
]);

describe.each([
  ['temperatures', CORPUS_READINGS],
  ['talk', CORPUS_TALK],
  ['North America', GROWERS_1],
  ['islands and mountains', GROWERS_2],
  ['many voices', FRESH],
  ['many voices again', FRESH_2],
  ['three continents', GROWERS_3],
  ['one winter', GROWERS_4],
  ['both halves of the earth', GROWERS_5],
  ['ten voices', GROWERS_6],
  ['ten more voices', GROWERS_7],
  ['ten voices again', GROWERS_8],
  ['plain messages', GROWERS_9],
  ['talk with asides', GROWERS_10],
  ['curt and regional', GROWERS_11],
  ['ten more growers', GROWERS_12],
] as const)('corpus of %s', (_, phrases) => {
  it.each(phrases.map((phrase) => [title(phrase), phrase] as const))('%s', (_title, phrase) => {
    const intent = heard(phrase);
    expect(storesWrongly(intent, phrase.is), JSON.stringify(intent)).toBe(false);
    expect(fits(intent, phrase.is), JSON.stringify(intent)).toBe(!NOT_YET.has(phrase.says));
  });
});

describe('commands', () => {
  const MEANT: Readonly<Record<string, unknown>> = {
    tonight: { kind: 'outlook', night: '2026-01-15' },
    week: { kind: 'outlook', span: { nights: 7 } },
    crop: { kind: 'unclear', asks: 'which-crop' },
    done: { kind: 'did' },
    reading: { kind: 'unclear', asks: 'which-reading' },
    why: { kind: 'why' },
    record: { kind: 'record' },
    history: { kind: 'history' },
    export: { kind: 'export' },
    settings: { kind: 'settings' },
    help: { kind: 'help' },
    stop: { kind: 'stop' },
  };

  it.each(COMMAND_WORDS.map(({ name }) => name))('/%s is understood, by whatever name the assistant is called and in whatever case', (name) => {
    expect(MEANT).toHaveProperty(name);
    for (const says of [`/${name}`, `/${name}@some_greenhouse_bot`, ` /${name.toUpperCase()} `]) expect(fits(heard({ says, when: 'evening', is: {} }), MEANT[name]), says).toBe(true);
  });

  it.each(COMMAND_WORDS.flatMap(({ description }) => [.../\/\w+ .+$/.exec(description) ?? []]))('the example %s is understood', (says) => {
    expect(heard({ says, when: 'evening', is: {} }).kind).not.toBe('unclear');
  });

  it.each(['/start A-b_9', '/start 12', '/start 28F', '/start@some_bot -4', '/start28', 'start 12', 'Start -3', '/start low was 28', '/START 31 inside'])('%s is no reading', (says) => {
    for (const units of ['F', 'C'] as const) expect(heard({ says, units, is: {} })).toEqual({ kind: 'start' });
  });

  it.each(['/join abcd1234', 'join 12345678', '/frost 28', '/low -3', '/28', '/settings 28', '/week 28', '/help 28', '/done 28'])('%s stores nothing', (says) => {
    for (const units of ['F', 'C'] as const) expect(storesWrongly(heard({ says, units, is: {} }), {}), says).toBe(false);
  });
});
