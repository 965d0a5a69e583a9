import { kelvinToCelsius, type Explanation } from '../../../engine/index.js';
import type { Records, StoredReading } from '../../ports.js';
import type { ToleranceQuestion } from '../tolerance/ask-tolerance.js';
import type { JudgedReading } from './judge.js';

/** One answer to a question about a reading. */
export interface Choice {
  readonly judged: Exclude<StoredReading['judged'], 'open'>;
  readonly tempC: number;
  /** The number as it was meant, in its own unit; absent where it is what was typed. */
  readonly meant?: { readonly value: number; readonly unit: 'C' | 'F' };
}

/** A stored reading that is asked about. */
export interface OpenReading {
  readonly id: number;
  readonly choices: readonly Choice[];
}

/** What a chat is in the middle of about readings, kept as JSON in its dialogue. */
export type Pending = (
  | { readonly about: 'choice'; readonly open: readonly OpenReading[] }
  /** Just kept and read back: one word takes it back. */
  | { readonly about: 'kept'; readonly ids: readonly number[] }
  /** The low was asked for: a bare number is that, whatever the hour. */
  | { readonly about: 'low' }
  /** It was asked how these crops came through a night: a state alone is of all of them. */
  | { readonly about: 'outcome'; readonly crops: readonly string[]; readonly night?: string }
  /** Something else was just told, perhaps with a change of the house: one word takes it back. */
  | { readonly about: 'told'; readonly text: string; readonly house?: { readonly version: number; readonly before: string; readonly sinceS: number } }
  /** How readily to call was asked. */
  | ToleranceQuestion
  /** A word of a message was asked about: the message, the word, and what was asked. */
  | { readonly about: 'word'; readonly text: string; readonly word: string; readonly ask: 'which-place' | 'which-unit' | 'which-sign' }
) & { readonly atS: number };

/** In the dialogue it stands beside what the chat was in the middle of before. */
interface PendingDialogue {
  readonly asks: 'reading';
  readonly pending: Pending;
  readonly rest: string | null;
}

/** A question is open for a day, the morning's until the evening; "no" and the like are of the last reading only while it is fresh (decision rule of this project). */
const OPEN_S: Readonly<Record<Pending['about'], number>> = { choice: 86_400, low: 36_000, word: 3600, kept: 1800, told: 1800, outcome: 86_400, tolerance: 3600 };

/** The dialogue of a chat with what is pending; what it was in the middle of before comes back after it. */
export const dialogueWith = (pending: string | null, rest: string | null): string | null => (pending === null ? rest : JSON.stringify({ asks: 'reading', pending: JSON.parse(pending) as Pending, rest } satisfies PendingDialogue));

/** What is pending in a dialogue, if it is still open, and what else the chat is in the middle of. */
export function readPending(dialogue: string | null, nowS: number): { readonly pending: Pending | null; readonly rest: string | null } {
  const found = parsed(dialogue);
  if (found === null) return { pending: null, rest: dialogue };
  const { pending, rest } = found;
  return { pending: nowS - pending.atS <= OPEN_S[pending.about] ? pending : null, rest };
}

function parsed(dialogue: string | null): PendingDialogue | null {
  try {
    const found = dialogue === null ? null : (JSON.parse(dialogue) as Partial<PendingDialogue> | null);
    return found?.asks === 'reading' && found.pending !== undefined ? { asks: 'reading', pending: found.pending, rest: found.rest ?? null } : null;
  } catch {
    return null;
  }
}

/** An open question stays where the next message only kept another reading, or the morning's question comes. */
export function goesBefore(dialogue: string | null, next: string): boolean {
  const { about, atS } = JSON.parse(next) as Pending;
  return (about === 'kept' || about === 'low' || about === 'told' || about === 'outcome' || about === 'tolerance') && readPending(dialogue, atS).pending?.about === 'choice';
}

/** The dialogue of a chat that was asked for the low, or how crops came through. Who is in the middle of something else may answer that. */
export function dialogueAsked(dialogue: string | null, question: Extract<Pending, { about: 'low' | 'outcome' }>): string | null {
  const asked = JSON.stringify(question);
  const isBusy = readPending(dialogue, question.atS).rest !== null;
  return isBusy || goesBefore(dialogue, asked) ? dialogue : dialogueWith(asked, null);
}

/** Remembers what a short answer will mean, where there is a chat to remember it in. */
export const remember = async (pending: Pending | null, store: Records): Promise<void> => store.keepPending?.(pending === null ? null : JSON.stringify(pending));

/** What may be answered: the likely suggestion before what was typed, the others after it. "Yes" is the first. */
export function choicesOf({ verdict, tempC, typed }: JudgedReading): readonly Choice[] {
  const suggested = verdict.suggestions.flatMap((one) => choiceOf(one, { tempC, typed }));
  if (verdict.reason === 'impossible') return suggested;
  const asTyped: Choice = { judged: 'good', tempC };
  return verdict.isSuggestionLikely ? [...suggested, asTyped] : [asTyped, ...suggested];
}

function choiceOf({ kind, meant, tempK }: Explanation, { tempC, typed }: Pick<JudgedReading, 'tempC' | 'typed'>): readonly Choice[] {
  if (kind === 'sunlit') return [{ judged: 'sunlit', tempC }];
  if (kind === 'not-reset') return [{ judged: 'not-reset', tempC }];
  if (meant === null || tempK === null) return [];
  return [{ judged: 'good', tempC: Math.round(kelvinToCelsius(tempK) * 100) / 100, meant: { value: meant, unit: kind === 'other-unit' ? (typed.unit === 'F' ? 'C' : 'F') : typed.unit } }];
}
