import type { Item } from '../language/intent.js';
import { nightWords } from './reading-text.js';
import { UNDO } from './undo-text.js';

const DEED_WORDS: Readonly<Partial<Record<Item, string>>> = { tube: 'tube fan', harvest: 'picking', water: 'drums', layer: 'second film' };

export const deedWords = (item: Item): string => DEED_WORDS[item] ?? item;

interface Deeds {
  readonly done: readonly Item[];
  readonly not: readonly Item[];
  /** Null where none was named. */
  readonly beds: readonly string[] | null;
  /** Local date; null for the night to come. */
  readonly night: string | null;
}

/** What was kept of tonight or of a night that is over. */
export function deedsKept({ done, not, beds, night }: Deeds, today: string): string {
  const parts = [...(done.length > 0 ? [`done: ${done.map(deedWords).join(', ')}`] : []), ...(not.length > 0 ? [`not done: ${not.map(deedWords).join(', ')}`] : [])];
  const when = night === null ? 'tonight' : `the night of ${nightWords(night, today)}`;
  return `Noted for ${when}${beds === null ? '' : ` (${beds.join(' and ')})`}: ${parts.join('; ') || 'nothing done'}. The next answer counts on it. ${UNDO}`;
}

/** The plan of the evening is left. */
export const planLeft = (not: readonly Item[]): string => `Noted: you leave it tonight${not.length === 0 ? '' : ` (${not.map(deedWords).join(', ')})`}. I remind you no more. If you do it after all, say "done".`;
