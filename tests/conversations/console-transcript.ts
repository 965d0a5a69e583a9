import { transcriptsIn } from './transcript-files.js';

/** Who of those that share a greenhouse. */
export type Person = 1 | 2;

/** One line of a transcript, by its mark; `2` before a mark of speech: the second person. */
export type ConsoleLine =
  /** `:` what the greenhouse file holds besides the plain house; without it the house is described by talking. */
  | { readonly kind: 'house'; readonly fields: Readonly<Record<string, unknown>> }
  /** `>` somebody writes; {code} stands for the invite that was heard last. */
  | { readonly kind: 'says'; readonly person: Person; readonly text: string }
  /** `~` the clock moves. */
  | { readonly kind: 'clock'; readonly text: string }
  /** `<` since the last thing said or moved these words came, or with / / such words; `!<` they did not. */
  | { readonly kind: 'hears' | 'hears-not'; readonly person: Person; readonly words: string };

export interface ConsoleTranscript {
  readonly name: string;
  readonly lines: readonly (ConsoleLine & { readonly at: number })[];
}

const FOLDER = new URL('./console/', import.meta.url);
const FORM = /^(?<second>2?)(?<mark>!<|[:>~<])\s+(?<rest>.*)$/u;

function lineOf(written: string): ConsoleLine | null {
  if (written.trim() === '' || written.startsWith('#')) return null;
  const { second, mark, rest = '' } = FORM.exec(written)?.groups ?? {};
  const person: Person = second === '2' ? 2 : 1;
  switch (mark) {
    case ':':
      return { kind: 'house', fields: JSON.parse(rest) as Readonly<Record<string, unknown>> };
    case '>':
      return { kind: 'says', person, text: rest };
    case '~':
      return { kind: 'clock', text: rest };
    case '<':
      return { kind: 'hears', person, words: rest };
    case '!<':
      return { kind: 'hears-not', person, words: rest };
    default:
      throw new Error(`expected a line that begins with one of # : > ~ < !< 2> 2< 2!<, got ${JSON.stringify(written)}`);
  }
}

/** Every transcript of the folder. */
export const consoleTranscripts = (): readonly ConsoleTranscript[] => transcriptsIn(FOLDER, lineOf);
