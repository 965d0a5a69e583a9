import type { CropWord } from './crop-word.js';
import { singular } from './word-forms.js';
import { listed } from './wordings.js';

export interface CropHit {
  /** More than one where several crops claim the name and none of them has it as its id. */
  readonly ids: readonly string[];
  readonly words: string;
}

export interface CropNames {
  /** Ids by the words of a name in the singular, joined by blanks. */
  readonly idsByPhrase: ReadonlyMap<string, readonly string[]>;
  readonly longest: number;
  /** The names of one word as they are written: a word of a longer name ("scotch kale") is no name of its own. */
  readonly words: ReadonlySet<string>;
}

/** Names that are everyday words too ("leaks", "starts", "beats me"): a crop only where the sentence points at one. */
export const DOUBTFUL_CROP_WORDS: ReadonlySet<string> = new Set(listed(`
  start|beat|leak|cos|vit|snap|pot|tray|container|orange|hardy|tender|pink|spear|curd|bright light|hill hardy|vine|transplant|frost tolerant
  very hardy|winter hardy|half hardy|semi hardy
`));

const wordsOf = (name: string): readonly string[] =>
  name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/['’]/g, '').split(/[^a-z0-9]+/).filter((word) => word !== '');

const known = new WeakMap<readonly CropWord[], CropNames>();

/** The names in a form that can be looked up. Where a name is the id of one crop (a family's plain name), that one is meant. */
export function cropNames(crops: readonly CropWord[]): CropNames {
  const before = known.get(crops);
  if (before !== undefined) return before;
  const claims = new Map<string, Set<string>>();
  const words = new Set<string>();
  const owners = new Map<string, string>();
  for (const crop of crops) {
    owners.set(wordsOf(crop.id).map(singular).join(' '), crop.id);
    for (const name of [...crop.names, crop.id]) {
      const written = wordsOf(name);
      const [alone, ...more] = written;
      if (alone !== undefined && more.length === 0) words.add(alone);
      const phrase = written.map(singular).join(' ');
      claims.set(phrase, (claims.get(phrase) ?? new Set()).add(crop.id));
    }
  }
  const idsByPhrase = new Map([...claims].map(([phrase, ids]) => [phrase, owners.has(phrase) ? [owners.get(phrase) ?? ''] : [...ids]] as const));
  const names = { idsByPhrase, longest: Math.max(1, ...[...idsByPhrase.keys()].map((phrase) => phrase.split(' ').length)), words };
  known.set(crops, names);
  return names;
}
