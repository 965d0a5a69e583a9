import type { Ask, DescribeState, Line } from './state.js';
import type { Problem } from './thing.js';

/** What was taken from a message, before the next question is put. */
export interface Taken {
  readonly state: DescribeState;
  readonly parts: readonly string[];
  readonly lines: readonly Line[];
  readonly problems: readonly Problem[];
  readonly understood: boolean;
  /** Asked next, whatever else is open. */
  readonly ask?: Ask;
  /** The reply is whole: no question follows. */
  readonly isWhole?: boolean;
}
