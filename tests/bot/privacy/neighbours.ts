import type { FoundPlace } from '../../../bot/ports.js';
import type { IntentKind } from '../../../bot/language/intent.js';
import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import type { Grower } from '../../soak/world.js';

/** A grower of whom every word is known: none of them occurs by chance in what is sent to another. */
export interface Neighbour extends Grower {
  /** A message for each kind of meaning, in the order in which they are said. */
  readonly says: Readonly<Record<IntentKind, string>>;
  /** Where the house moves in the course of it. */
  readonly town: FoundPlace;
  /** What is this grower's alone: names, crops, ids, places to 3 decimals, readings in both units. */
  readonly telling: readonly string[];
}

const FIRST_CHAT = 730_041;

interface Told {
  readonly n: number;
  readonly file: GreenhouseFile;
  readonly town: FoundPlace;
  readonly says: Readonly<Record<IntentKind, string>>;
  /** The readings among them, rounded as they are shown in each unit. */
  readonly readings: readonly string[];
}

function neighbour({ n, file, town, says, readings }: Told): Neighbour {
  const check = checkGreenhouse(file);
  if (!check.ok) throw new Error(`expected a good greenhouse, got ${JSON.stringify(check.faults)}`);
  const { greenhouse } = check;
  const [chat, id] = [FIRST_CHAT + 11 * n, `id-of-${greenhouse.name}`];
  const places = [greenhouse.place, town].flatMap(({ latitude, longitude }) => [latitude, longitude].map((degrees) => Math.abs(degrees).toFixed(3)));
  const inHouse = [...greenhouse.beds.map(({ name }) => name), ...greenhouse.beds.flatMap(({ crops }) => crops.map((crop) => (typeof crop === 'string' ? crop : crop.crop))), ...greenhouse.thermometers.map(({ name }) => name)];
  return { chat, id, zone: file.place.timeZone ?? 'UTC', file, greenhouse, says, town, telling: [String(chat), greenhouse.name, town.name, ...inHouse, ...places, ...readings] };
}

const size = { width: 4, length: 8, height: 2.4 };
const fabric = { kind: 'fabric', weight: 50 } as const;
const found = (name: string, latitude: number, longitude: number): FoundPlace => ({ name, region: null, country: null, countryCode: null, latitude, longitude });

/** Invented people at invented places, one in degrees C and one in F. */
export const QUILLONBY = neighbour({
  n: 0,
  file: {
    name: 'Quillonby', place: { latitude: 45.173, longitude: -72.284, timeZone: 'America/Toronto' }, size, layers: [{ film: 'standard' }],
    beds: [{ name: 'zarnwick', area: 8, crops: ['radicchio'], worth: 150, cover: fabric }, { name: 'tolmere', area: 6, crops: ['komatsuna'], worth: 90 }],
    thermometers: [{ name: 'osprey', place: 'inside' }],
  },
  town: found('Wexcombe', 45.318, -72.611),
  says: {
    reading: 'low was -7.3C at osprey', fix: 'no, -6.8C', did: 'covered zarnwick', advice: 'should I cover?', why: 'why?', crop: 'will the radicchio survive tonight?', outlook: 'any frost this week?',
    suppose: 'what if I leave the covers off?', condition: 'the power is out', outcome: 'the komatsuna looks fine', mark: 'added 3 drums to tolmere', effect: 'did the drums help?',
    next: 'what should I build next?', record: 'how right were you?', history: 'show me the last nights', settings: 'use fahrenheit', help: 'help', chat: 'thanks!', unclear: 'flurble the wix',
    export: 'export my data', erase: 'please delete all my data', stop: 'please stop texting me', start: 'start',
  },
  readings: ['7.3', '19F', '6.8', '20F'],
});

export const HARROWMET = neighbour({
  n: 1,
  file: {
    name: 'Harrowmet', place: { latitude: 47.619, longitude: 10.253, timeZone: 'Europe/Berlin' }, size: { ...size, width: 5 }, layers: [{ film: 'standard' }, { film: 'standard' }],
    beds: [{ name: 'ostrick', area: 10, crops: ['kohlrabi'], worth: 150, cover: fabric }, { name: 'plenmoor', area: 9, crops: ['tatsoi'], worth: 90 }],
    thermometers: [{ name: 'lapwing', place: 'inside' }], grower: { units: 'F' },
  },
  town: found('Obersulz', 47.842, 10.977),
  says: {
    reading: '12.4F at lapwing this morning', fix: 'sorry, 13.6F', did: 'ostrick is covered', advice: 'do I need to cover tonight?', why: 'how come?', crop: 'is my tatsoi safe tonight?', outlook: 'how cold on Friday?',
    suppose: 'what if I add ten drums?', condition: '20 cm of snow on the roof', outcome: 'the tatsoi got marked', mark: 'added 2 drums to plenmoor', effect: 'did adding the drums make a difference?',
    next: 'what is the best upgrade?', record: 'how accurate are you?', history: 'my readings so far', settings: 'use celsius', help: 'what can you do?', chat: 'good morning', unclear: 'zzz grumbix',
    export: 'download my data', erase: 'erase my account', stop: 'leave me alone', start: 'resume',
  },
  readings: ['10.9', '12.4', '12F', '10.2', '13.6', '14F'],
});

/** Which of a grower's words stand in a text: "7.3" in "-7.3C", and not in "17.34". */
export const wordsOf = ({ telling }: Neighbour, text: string): readonly string[] => telling.filter((word) => new RegExp(`(?<![\\w.])${word.replaceAll('.', '\\.')}(?!\\d|\\.\\d)`, 'iu').test(text));
