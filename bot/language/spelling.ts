import type { CropNames } from './crop-names.js';
import { editDistance } from './edit-distance.js';
import { ITEM_BY_PHRASE } from './item-words.js';
import { ORDINARY_WORDS } from './ordinary-words.js';
import { PLACE_BY_PHRASE } from './place-words.js';
import { singular } from './word-forms.js';

/**
 * Words that carry a meaning in the rules and are often mistyped. Short or rare names of devices are not among them:
 * "quit" is no quilt and "tore" no tote.
 */
const KEY_WORDS = `tonight tomorrow yesterday forecast survive survived inside outside covered covers minimum maximum temperature thermometer settings history
  accurate weather freezing overnight harvest harvested fahrenheit celsius greenhouse midnight correction unsubscribe
  heater heaters curtain curtains vents drums barrels compost fleece tunnel electricity message messages messaging reading measurement improvement please blanket blankets insulation plastic polytunnel propane lowest highest`.split(/\s+/);

const keep = (word: string): boolean => word.length >= 4 && !ORDINARY_WORDS.has(word);
const allowed = (letters: number): number => (letters >= 6 ? 2 : letters >= 4 ? 1 : 0);

interface Targets {
  readonly targets: ReadonlySet<string>;
  readonly singulars: ReadonlySet<string>;
}

const known = new WeakMap<CropNames, Targets>();

function targetsOf(crops: CropNames): Targets {
  const before = known.get(crops);
  if (before !== undefined) return before;
  const targets = new Set([...KEY_WORDS, ...[...crops.words].filter(keep)]);
  const found = { targets, singulars: new Set([...targets].map(singular)) };
  known.set(crops, found);
  return found;
}

/**
 * The word that was meant, where exactly one lies nearest within the allowed number of slips; else the word as it is.
 * The first letter must agree, and neither side may be an everyday word: a wrong correction is worse than a question.
 */
export function correctedWord(word: string, crops: CropNames): string {
  const one = singular(word);
  if (word.length < 4 || ORDINARY_WORDS.has(word) || ORDINARY_WORDS.has(one) || !/^[a-z]+$/.test(word)) return word;
  if (ITEM_BY_PHRASE.has(one) || PLACE_BY_PHRASE.has(one)) return word;
  const { targets, singulars } = targetsOf(crops);
  if (targets.has(word) || targets.has(one) || singulars.has(one)) return word;
  // Two names of one crop are no tie.
  const nearest = nearestWord(word, targets, (name) => crops.idsByPhrase.get(name)?.join(' ') ?? name);
  return nearest ?? word;
}

/** The singular of the one target within the allowed number of slips that lies nearest; null where none or several do. */
export function nearestWord(word: string, targets: Iterable<string>, meaningOf: (singularName: string) => string): string | null {
  let best = Number.POSITIVE_INFINITY;
  let found = new Map<string, string>();
  for (const target of targets) {
    if (target[0] !== word[0] || Math.abs(target.length - word.length) > 2) continue;
    const slips = editDistance(word, target);
    if (slips > Math.min(allowed(word.length), allowed(target.length)) || slips > best) continue;
    if (slips < best) found = new Map();
    best = slips;
    const name = singular(target);
    const meaning = meaningOf(name);
    if (!found.has(meaning)) found.set(meaning, name);
  }
  return found.size === 1 ? ([...found.values()][0] ?? null) : null;
}
