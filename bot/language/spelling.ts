import type { CropNames } from './crop-names.js';
import { editDistance } from './edit-distance.js';
import { isEverydayWord } from './everyday-words.js';
import { ITEM_BY_PHRASE } from './item-words.js';
import { ORDINARY_WORDS } from './ordinary-words.js';
import { PLACE_BY_PHRASE } from './place-words.js';
import { SHORT_WORDS, VOCABULARY } from './vocabulary.js';
import { isShortForm, singular } from './word-forms.js';

const allowed = (letters: number): number => (letters >= 6 ? 2 : letters >= 4 ? 1 : 0);

interface Spellings {
  /** What a slip may have been meant for. */
  readonly targets: readonly string[];
  /** What is no slip. */
  readonly known: ReadonlySet<string>;
  /** What was corrected before: a message is read in parts, and its parts again. */
  readonly corrected: Map<string, string>;
}

const MOST_KEPT = 2000;
/** A longer word is no slip of any that is known. */
const LONGEST = 18;

const PHRASE_WORDS = [...ITEM_BY_PHRASE.keys(), ...PLACE_BY_PHRASE.keys()].flatMap((phrase) => phrase.split(' '));
const spellingsByCrops = new WeakMap<CropNames, Spellings>();

function spellingsOf(crops: CropNames): Spellings {
  const before = spellingsByCrops.get(crops);
  if (before !== undefined) return before;
  const names = [...crops.words].filter((word) => word.length >= 4 && !ORDINARY_WORDS.has(word));
  const phrases = [...crops.idsByPhrase.keys()].flatMap((phrase) => phrase.split(' '));
  const found = { targets: [...new Set([...VOCABULARY, ...names])], known: new Set([...VOCABULARY, ...SHORT_WORDS, ...crops.words, ...phrases, ...PHRASE_WORDS]), corrected: new Map<string, string>() };
  spellingsByCrops.set(crops, found);
  return found;
}

const swapped = (word: string, at: number): string => word.slice(0, at) + (word[at + 1] ?? '') + (word[at] ?? '') + word.slice(at + 2);
const letters = (word: string): string => [...word].sort().join('');

/**
 * The word that was meant, where exactly one lies nearest within the allowed number of slips; else the word as it is.
 * The first letter must agree or have changed places with the second, and no everyday word is touched: a wrong correction is
 * worse than a question.
 */
export function correctedWord(word: string, crops: CropNames): string {
  const one = singular(word);
  if (word.length < 3 || word.length > LONGEST || !/^[a-z]+$/.test(word) || isShortForm(word) || isEverydayWord(word) || isEverydayWord(one)) return word;
  const spellings = spellingsOf(crops);
  const before = spellings.corrected.get(word);
  if (before !== undefined) return before;
  const meant = nearestTo(word, one, { ...spellings, crops });
  if (spellings.corrected.size >= MOST_KEPT) spellings.corrected.clear();
  spellings.corrected.set(word, meant);
  return meant;
}

function nearestTo(word: string, one: string, { targets, known, crops }: Spellings & { readonly crops: CropNames }): string {
  if (known.has(word) || known.has(one)) return word;
  // "Freezin", "runnin".
  if (word.length > 4 && word.endsWith('in') && isEverydayWord(`${word}g`)) return `${word}g`;
  const swaps = [...word].slice(1).map((_, at) => swapped(word, at)).filter((other) => SHORT_WORDS.has(other));
  if (swaps.length === 1) return swaps[0] ?? word;
  // Two names of one crop are no tie.
  const meaningOf = (target: string): string => crops.idsByPhrase.get(singular(target))?.join(' ') ?? singular(target);
  const near = targets.filter((target) => (target[0] === word[0] || swapped(word, 0) === target) && Math.abs(target.length - word.length) <= 2).map((target) => ({ target, slips: editDistance(word, target) })).filter(({ target, slips }) => slips <= Math.min(allowed(word.length), allowed(target.length)));
  const best = Math.min(...near.map(({ slips }) => slips));
  const nearest = near.filter(({ slips }) => slips === best).map(({ target }) => target);
  const samePlayers = nearest.filter((target) => letters(target) === letters(word));
  const meant = samePlayers.length > 0 ? samePlayers : nearest;
  return new Set(meant.map(meaningOf)).size === 1 ? (meant[0] ?? word) : word;
}

/** The text with its slips corrected, before values are looked for: "31 lsat nihgt", "4 dgerees". */
export const respelled = (plain: string, crops: CropNames): string => plain.replace(LONE_WORD, (word) => correctedWord(word, crops));

/** Words that stand by themselves: no part of an address, a handle or a code. */
const LONE_WORD = /(?<![\w'@#/.:-])[a-z]{3,}(?![\w'@/]|-\w|\.\w)/g;

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
