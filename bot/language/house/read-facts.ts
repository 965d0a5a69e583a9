import { cropNames, type CropNames } from '../crop-names.js';
import type { CropWord } from '../crop-word.js';
import { ORDINARY_WORDS } from '../ordinary-words.js';
import type { Fact, Thing } from './house-fact.js';
import { FUNCTION_WORDS, readHouseText, type HouseText, type Piece } from './house-text.js';
import { curtainFact, fanFact, tubesFact, ventsFact } from './read-air.js';
import { bedFacts } from './read-beds.js';
import { frameFacts } from './read-frame.js';
import { groundFacts } from './read-ground.js';
import { compostFact, heaterFact, type Now } from './read-heat.js';
import { readCoordinates, readTown } from './read-place.js';
import { storeFacts } from './read-stores.js';
import { thermometerFact } from './read-thermometer.js';
import { stretchesOf, type Stretch, type Subject } from './stretches.js';

/** What a question just asked for, so that a short answer can be understood. */
export type Asked = 'place' | 'size' | 'layers' | 'covers' | 'water' | 'stones' | 'soil' | 'fan' | 'tubes' | 'compost' | 'heater' | 'crops' | 'thermometers' | 'evening' | 'units' | 'vents' | 'edge' | 'stone-box';

export interface HouseSaid {
  readonly facts: readonly Fact[];
  /** What no rule understood, as it was written: numbers, and words that are no everyday ones. */
  readonly left: readonly string[];
}

const EXPECTED: Readonly<Record<Asked, Subject>> = {
  place: 'house', size: 'house', layers: 'house', covers: 'beds', water: 'water', stones: 'stones', soil: 'house', fan: 'fan', tubes: 'tubes', compost: 'compost', heater: 'heater', crops: 'beds',
  thermometers: 'thermometer', evening: 'house', units: 'house', vents: 'vents', edge: 'edge', 'stone-box': 'stone-box',
};

const THING: Readonly<Record<Exclude<Subject, 'house' | 'beds'>, Thing>> = {
  water: 'water', stones: 'stones', 'stone-box': 'stone-box', wall: 'wall', edge: 'edge', curtain: 'curtain', vents: 'vents', tubes: 'tubes', fan: 'fan', compost: 'compost', heater: 'heater', thermometer: 'thermometers',
};

/** What somebody said of a greenhouse: every fact in it, in order, and what is left over. */
export function readFacts(text: string, said: { readonly crops: readonly CropWord[]; readonly now: Now; readonly asked: Asked | null }): HouseSaid {
  const { asked } = said;
  const whole = readHouseText(text, said.crops);
  const place = readCoordinates(whole.plain, asked === 'place') ?? readTown(whole, asked === 'place');
  const rest = place === null ? whole : without(whole, place);
  const stretches = stretchesOf(rest.pieces, asked === null ? null : EXPECTED[asked]);
  const read = stretches.map((stretch) => factsOf(stretch, { plain: rest.plain, now: said.now, asked, names: cropNames(said.crops) }));
  const facts = [...(place === null ? [] : [place.fact]), ...read.flatMap(({ facts: found }) => found)];
  const left = read.flatMap(({ rest: pieces }) => pieces).filter(worthTelling).sort((a, b) => a.start - b.start);
  return { facts, left: left.map(({ written }) => written) };
}

const without = (text: HouseText, spot: { readonly start: number; readonly end: number }): HouseText => ({ ...text, pieces: text.pieces.filter(({ start, end }) => end <= spot.start || start >= spot.end) });

function factsOf(stretch: Stretch, said: { readonly plain: string; readonly now: Now; readonly asked: Asked | null; readonly names: CropNames }): { readonly facts: readonly Fact[]; readonly rest: readonly Piece[] } {
  const { clause, subject, denied } = stretch;
  const { asked } = said;
  if (subject === 'house') {
    const facts = [...groundFacts(clause, asked === 'evening' ? 'time' : asked === 'units' ? 'units' : null), ...frameFacts(clause, { denied, asked: asked === 'size' || asked === 'layers' ? asked : null })];
    const noBlower = denied && facts.length === 0 && clause.takes(/ @blower /);
    clause.takeAll(/ @house /);
    return { facts: noBlower ? [{ about: 'none', thing: 'blower' }] : facts, rest: clause.rest };
  }
  if (subject === 'beds') return bedFacts(clause, { denied, asked: asked === 'covers' || asked === 'crops' ? asked : null, names: said.names });
  if (denied) return { facts: [{ about: 'none', thing: THING[subject] }], rest: [] };
  // "Peat and compost", where the soil was asked for.
  if (subject === 'compost' && asked === 'soil') return { facts: [{ about: 'soil', kind: 'compost-rich' }], rest: [] };
  const fact = thingFact(subject, stretch, said);
  return !stretch.isNamed && isHollow(fact) ? { facts: [], rest: clause.pieces } : { facts: [fact], rest: clause.rest };
}

function thingFact(subject: Exclude<Subject, 'house' | 'beds'>, { clause }: Stretch, said: { readonly plain: string; readonly now: Now }): Fact {
  switch (subject) {
    case 'tubes':
      return tubesFact(clause);
    case 'fan':
      return fanFact(clause);
    case 'curtain':
      return curtainFact(clause);
    case 'vents':
      return ventsFact(clause);
    case 'compost':
      return compostFact(clause, said.plain, said.now);
    case 'heater':
      return heaterFact(clause);
    case 'thermometer':
      return thermometerFact(clause);
    default:
      return storeFacts[subject](clause);
  }
}

/** Nothing was said of the thing but that there is one. */
const isHollow = (fact: Fact): boolean => Object.entries(fact).every(([name, value]) => name === 'about' || name === 'kind' || (typeof value === 'object' && value !== null && Object.keys(value as object).length === 0));

/** Numbers, and words that could have meant something; small words and known things beside what was understood are no loss. */
const worthTelling = ({ symbol }: Piece): boolean => /^[#~]/.test(symbol) || (/^[a-z][a-z0-9']{2,}$/.test(symbol) && !ORDINARY_WORDS.has(symbol) && !FUNCTION_WORDS.has(symbol));
