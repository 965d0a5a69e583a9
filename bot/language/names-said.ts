import type { CropNames } from './crop-names.js';
import { isEverydayWord } from './everyday-words.js';
import { ITEM_BY_PHRASE } from './item-words.js';
import { PLACE_BY_PHRASE } from './place-words.js';
import { correctedWord } from './spelling.js';
import { VOCABULARY } from './vocabulary.js';
import { isShortForm, singular } from './word-forms.js';
import { wordings } from './wordings.js';

const NUMBER = String.raw`(?=(?:it'?s |it is |about |around |only |just |a |still |that it'?s )*(?:minus |negative |[-+−–])?\s?(?:\d|zero\b|one\b|two\b|three\b|four\b|five\b|six\b|seven\b|eight\b|nine\b|ten\b|eleven\b|twelve\b|\w+teen\b|twenty\b|thirty\b|forty\b|fifty\b|sixty\b))`;
/** "Gertie (my old one by the door) says 1.5". */
const SAYS = new RegExp(String.raw`(?<![\w'])([a-z][a-z0-9-]*)(?: ?\([^)]*\))?,? (?:is saying|is reading|is showing|says|reads|shows|say|reckons|claims|thinks) ${NUMBER}`, 'gi');
/** "T2 0.4", "s1: -3". */
const CODE = /(?<![\w'-])((?:t|s|p|th|tp|tx|ch|tt)\d{1,2})(?:\s*[:=]\s*|\s+(?:is |was |at )?)(?=[-+−–]?\d)/gi;

/** Who tells what will be, or what is elsewhere. */
const TELLERS = new Set('app apps tv phone google siri alexa accuweather bbc noaa iphone ipad bom wunderground yr nws metoffice metservice meteo cnn radio tv wifey hubby everybody everyone'.split(' '));
const NO_NAME = wordings`
  ^(?:jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|january|february|april|june|july|august|september|october|november|december|christmas|easter|monday|
  tuesday|wednesday|thursday|friday|saturday|sunday|fahrenheit|celsius)$
`;

const isName = (word: string, crops: CropNames): boolean =>
  word.length > 1 && !/^(?:it|he|she|they|we|i|me|u|ye)$/.test(word) && !isEverydayWord(word) && !isEverydayWord(singular(word)) && !isShortForm(word) && !VOCABULARY.has(word) && !TELLERS.has(word) && !NO_NAME.test(word) && !crops.words.has(word) && correctedWord(word, crops) === word && !ITEM_BY_PHRASE.has(singular(word)) && !PLACE_BY_PHRASE.has(singular(word));

/** Thermometers that are called by a name of their own with what they say, as they are written. */
export function namesSaid(text: string, crops: CropNames): readonly string[] {
  const named = [...text.matchAll(SAYS)].map(([, name = '']) => name).filter((name) => isName(name.toLowerCase(), crops));
  return [...new Set([...named, ...[...text.matchAll(CODE)].map(([, name = '']) => name)])];
}

/** The text without what is said of a thermometer between brackets after its name. */
export const withoutBracketsAfter = (text: string, names: readonly string[]): string => names.reduce((sofar, name) => sofar.replace(new RegExp(`(?<![\\w'])(?:(?:good )?old )?(${name.replace(/[.*+?^$\{}()|[\]\\]/g, '\\$&')})(?: ?\\([^)]*\\))?`, 'i'), '$1'), text);
