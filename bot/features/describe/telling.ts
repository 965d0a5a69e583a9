import type { Fact } from '../../language/house/house-fact.js';
import { readHouseText } from '../../language/house/house-text.js';
import type { CropWord } from '../../language/crop-word.js';
import { meanings, type Ask as AskedBack, type IntentKind } from '../../language/intent.js';
import { isQuestion } from '../../language/question.js';
import { understand } from '../../language/understand.js';
import { lineOf } from './line-of.js';
import type { Ask } from './state.js';

/** Kinds of message that may be a lasting change; in the others the same words speak of a night. */
export const MAY_CHANGE: ReadonlySet<IntentKind> = new Set<IntentKind>(['unclear', 'mark', 'settings', 'chat']);
/** Of what was done tonight, only what stays for good. */
export const LASTING: ReadonlySet<string> = new Set(['layers', 'water', 'stones', 'stone-box', 'wall', 'tubes', 'compost', 'none:water', 'none:stones', 'none:stone-box', 'none:wall', 'none:tubes', 'none:compost', 'none:heater', 'none:vents', 'none:curtain']);
const PLANTS = /\b(?:add(?:ed|ing)?|plant(?:ed|ing)?|sow(?:ed|n|ing)?|seed(?:ed|ing)?|transplant(?:ed|ing)?|new|now|row of|rows of|grow(?:s|ing)?|no more|no longer|removed?|pulled out|ripped out|took out|put in|have|has|got|is in|are in)\b|:/iu;
const OWNS = /\b(?:new|now|bought|have|has|got|switched|changed|replaced|use|using|is|are)\b/iu;
/** "It is wet outside" is of no bed. */
const SOIL = /\b(?:soil|ground|earth|dirt|beds?|paths?|walkways?|aisles?|loam|sand|sandy|clay|peat)\b/iu;
const MOVED = /\bmov(?:ed|e|ing)\b/iu;

/** "Kale in the south bed": crops and their bed, and not a word on how they are. */
const BARE_BED = /^ (?:(?:%\d+|and|,|:|;|in|on|at|the|my|our|some|a|row|rows|of|also|plus|more|young|baby|little|@bed|number|#N\d+|[a-h]|north|south|east|west|middle|center|centre|left|right|front|back|rear|first|second|third|fourth|@side|side|end|please|thanks) )+$/u;
export const isBareBed = (fact: Fact, form: string): boolean => fact.about === 'bed' && fact.bed !== null && fact.crops.length > 0 && BARE_BED.test(form);

/** What is asked back of a temperature: that it is one is sure. */
export const OF_A_TEMPERATURE: ReadonlySet<AskedBack> = new Set<AskedBack>(['which-unit', 'which-sign', 'which-stat', 'which-time', 'impossible-temperature']);

/** Numbers of these may look like temperatures. */
export const OF_THE_SITE: ReadonlySet<Fact['about']> = new Set<Fact['about']>(['coordinates', 'town', 'size']);

const IN_ALL = /\b(?:now|in all|altogether|total|have|has|replaced|swapped|instead|changed)\b/iu;

/** "Put 6 drums in" tells of six more, "we have 6 drums now" of all. */
export const asAdded = (fact: Fact, text: string): Fact => (fact.about === 'water' && fact.count !== undefined && !IN_ALL.test(text) ? { ...fact, more: true } : fact);

/** What is so on a night is not so for good: "no heater tonight". */
export const OF_ONE_NIGHT = /\b(?:tonight|tonite|this evening|last night|overnight|yet)\b/iu;

const COUNTED: ReadonlySet<Fact['about']> = new Set<Fact['about']>(['water', 'stones', 'tubes', 'fan', 'layers', 'wall', 'compost', 'cover']);
const SOME = /\b(?:\d+|one|two|three|four|five|six|some|half|a few|a couple)\b/iu;

/** "Moved one drum", "took two drums out": what was done with some of a thing says not how much of it there is now. */
export const isOfSome = (fact: Fact, text: string): boolean => (MOVED.test(text) && COUNTED.has(fact.about)) || (fact.about === 'none' && COUNTED.has(fact.thing as Fact['about']) && SOME.test(text) && !/\bsecond\b/iu.test(text));

/** Whether a fact says enough by itself, outside of a conversation about the greenhouse. */
export function isTelling(fact: Fact, text: string): boolean {
  switch (fact.about) {
    case 'shape':
      return !fact.general;
    case 'town':
      return MOVED.test(text);
    case 'bed':
      return PLANTS.test(text) && (fact.bed !== null || fact.crops.length > 0);
    case 'cover':
      return OWNS.test(text) && (fact.weight !== undefined || fact.weightGsm !== undefined || fact.beds.length > 0);
    case 'layers':
      return fact.count !== undefined || fact.change !== undefined || fact.films.length > 0 || fact.blower !== undefined;
    case 'fan':
      return Object.keys(fact.fan).length > 0;
    case 'stones':
      return fact.amount !== undefined || fact.blackened !== undefined || fact.sunny !== undefined;
    case 'soil':
      return SOIL.test(text);
    case 'none':
      return true;
    default:
      return Object.keys(fact).length > 1;
  }
}

/** What speaks of a night and never of the house. */
const OF_A_NIGHT: ReadonlySet<IntentKind> = new Set<IntentKind>(['crop', 'advice', 'outlook', 'suppose', 'outcome', 'condition', 'record', 'history', 'next', 'effect', 'fix']);

/** Where a message is heard. */
interface Hearing {
  readonly atS: number;
  readonly zone: string;
  readonly units: 'C' | 'F';
  readonly crops: readonly CropWord[];
}

const ASKED_OF_A_NIGHT: ReadonlySet<IntentKind> = new Set<IntentKind>(['crop', 'advice', 'outlook', 'suppose', 'effect', 'next', 'record', 'history']);

/** "Should I cover?", "will the kale survive": a question by its words, whatever it seems to hold of the house. A mark alone makes none: "kale?" may be a shy answer. */
export function isNightQuestion(text: string, hearing: Hearing): boolean {
  const form = ` ${readHouseText(text, hearing.crops).pieces.map(({ symbol }) => symbol).filter((symbol) => symbol !== '?').join(' ')} `;
  return isQuestion(form, form) && meanings(understand({ text, ...hearing })).some(({ kind }) => ASKED_OF_A_NIGHT.has(kind));
}

/**
 * Whether a message is none of ours: a question about tonight or a reading, sent while the description is not finished. Facts
 * that it seems to hold are then none.
 */
export function isOfANight(text: string, facts: readonly Fact[], said: Hearing & { readonly ask: Ask | null }): boolean {
  const { ask } = said;
  if (ask !== null && ask.detail !== 'all') return false;
  const intent = understand({ text, atS: said.atS, zone: said.zone, units: said.units, crops: said.crops });
  const answers = facts.some((fact) => ask !== null && lineOf(fact) === ask.topic);
  const { pieces } = readHouseText(text, said.crops);
  const form = ` ${pieces.map(({ symbol }) => symbol).join(' ')} `;
  if (OF_A_NIGHT.has(intent.kind)) return !answers || intent.kind === 'outcome' || isQuestion(form, form);
  // "Low was 29" is no count of drums; the low side of a roof is a length.
  const isLow = ask?.topic !== 'size' && / (?:low|lowest|minimum|coldest) (?:\S+ ){0,3}?#N\d+ /.test(form);
  if (isLow && (intent.kind === 'reading' || (intent.kind === 'unclear' && intent.asks === 'which-unit'))) return true;
  const hasDegrees = pieces.some(({ symbol }) => symbol.startsWith('#T'));
  if (intent.kind === 'reading') return hasDegrees && ask?.topic !== 'heater';
  return intent.kind === 'did' && !answers && !facts.some((fact) => isTelling(fact, text) || (fact.about === 'cover' && (fact.weight !== undefined || fact.weightGsm !== undefined)));
}
