import { transcriptsIn } from './transcript-files.js';

/** One line of a transcript in plain words. */
export type TranscriptLine =
  /** The grower writes, shares a place, or presses a button by what stands on it. */
  | { readonly kind: 'says'; readonly text: string }
  | { readonly kind: 'shares'; readonly latitude: number; readonly longitude: number }
  | { readonly kind: 'presses'; readonly label: string }
  /** The answer holds these words. */
  | { readonly kind: 'hears'; readonly words: string }
  /** The first advisory has come, after at most so many messages of the grower. */
  | { readonly kind: 'advisory'; readonly within: number }
  | { readonly kind: 'finished' }
  /** What the file holds in the end; null: nothing. */
  | { readonly kind: 'holds'; readonly field: string; readonly value: unknown }
  | { readonly kind: 'search-fails' };

export interface Transcript {
  readonly name: string;
  readonly lines: readonly (TranscriptLine & { readonly at: number })[];
}

const FOLDER = new URL('./transcripts/', import.meta.url);

function lineOf(written: string): TranscriptLine | null {
  const [mark = '', rest = ''] = [written.slice(0, 1), written.slice(1).trim()];
  switch (mark) {
    case '':
    case '#':
      return null;
    case '>':
      return { kind: 'says', text: rest };
    case '<':
      return { kind: 'hears', words: rest };
    case '@': {
      const [latitude = NaN, longitude = NaN] = rest.split(' ').map(Number);
      return { kind: 'shares', latitude, longitude };
    }
    case '[':
      return { kind: 'presses', label: rest.replace(/\]$/u, '').trim() };
    case '!':
      return { kind: 'search-fails' };
    case '*':
      return rest === 'finished' ? { kind: 'finished' } : { kind: 'advisory', within: Number(/^advisory within (\d+)$/u.exec(rest)?.[1]) };
    case '=': {
      const [field = '', ...value] = rest.split(' ');
      return { kind: 'holds', field, value: JSON.parse(value.join(' ')) };
    }
    default:
      throw new Error(`expected a line that begins with one of # > < @ [ ! * =, got ${JSON.stringify(written)}`);
  }
}

/** Every transcript of the folder. */
export const transcripts = (): readonly Transcript[] => transcriptsIn(FOLDER, lineOf);
