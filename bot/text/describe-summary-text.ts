import type { Line } from '../features/describe/state.js';
import { plainName } from './describe-text.js';
import type { Fact } from '../language/house/house-fact.js';

export const LINE_TITLES = {
  place: 'Place', size: 'Size', layers: 'Film', covers: 'Covers', water: 'Water and stones', soil: 'Soil', air: 'Fan and tubes', compost: 'Compost', heater: 'Heater', crops: 'Crops', thermometers: 'Thermometers', evening: 'Evening message', units: 'Units', other: 'Also',
} as const satisfies Record<Line, string>;

/** What is counted on where nothing was said. */
const TAKEN = {
  place: 'not told yet', size: 'not told yet', layers: 'not told yet', covers: 'not told, taken as none', water: 'not told, taken as none', soil: 'not told, taken as moist loam', air: 'not told, taken as none', compost: 'not told, taken as none', heater: 'not told, taken as none', crops: 'not told yet', thermometers: 'not told', evening: 'early enough for the work', units: 'not told', other: '',
} as const satisfies Record<Line, string>;

export const notTold = (line: Line, none: boolean): string => (none ? 'none' : TAKEN[line]);

export const skippedText = (line: Line, words: string): string => `Skipped. ${LINE_TITLES[line]}: ${words}.`;

const THING_WORDS: Partial<Readonly<Record<Fact['about'], string>>> = { cover: 'fabric', stones: 'stones', 'stone-box': 'a stone box', fan: 'a fan', compost: 'a heap', vents: 'vents', curtain: 'a curtain', edge: 'foam in the ground', layers: 'film' };

/** What was said of a thing that lacks something, in brief. */
function known(fact: Fact): string {
  switch (fact.about) {
    case 'bed':
      return fact.crops.map(({ name }) => name).join(', ');
    case 'heater':
      return fact.fuel === undefined ? 'a heater' : fact.fuel === 'candles' ? 'candles' : `${fact.fuel} heat`;
    case 'water':
      return fact.count === undefined ? 'water' : `${fact.count} vessels of water`;
    case 'tubes':
      return fact.count === undefined ? 'tubes' : `${fact.count} tubes`;
    default:
      return THING_WORDS[fact.about] ?? 'one thing';
  }
}

/** Something that was said and cannot be counted on yet; `parked`: it was asked about in vain. */
export const waitingWords = (fact: Fact, parked: boolean): string => `${plainName(known(fact))} noted, ${parked ? 'but left out until you tell me more' : 'I ask more in a moment'}`;

export const summaryText = (lines: readonly string[]): string => ['This is what I have:', ...lines, 'To change a line, say it anew, for example "the tunnel is 10 feet tall". Or say "change 2".'].join('\n');

/** What was just understood. */
export const notedText = (parts: readonly { readonly line: Line; readonly words: string }[]): string => parts.map(({ line, words }) => `${LINE_TITLES[line]}: ${words}.`).join('\n');

/** What the first advice still waits for. */
export const missingText = (missing: readonly Line[]): string => `I still need: ${missing.map((line) => LINE_TITLES[line].toLowerCase()).join(', ')}.`;

/** A question about a night, before there is a house to answer it for. */
export const answerLater = (missing: readonly Line[]): string => `I can answer that once I know the house. I still need: ${missing.map((line) => LINE_TITLES[line].toLowerCase()).join(', ')}.`;
