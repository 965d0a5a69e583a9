import type { PlainLength } from './file-quantities.js';
import type { Detail, DraftFile } from './state.js';
import type { Habits } from './units-of-place.js';

/** How plain numbers are read once the size is known. */
export interface Measures {
  readonly plain: PlainLength;
  readonly habits: Habits;
}

/** What came of a fact: the file with it, or what it still lacks, or why it cannot be. */
export type Put =
  | { readonly kind: 'put'; readonly file: DraftFile }
  | { readonly kind: 'lacks'; readonly detail: Detail }
  | { readonly kind: 'problem'; readonly problem: Problem };

/** What is wrong with something that was said; the words are made elsewhere. */
export type Problem =
  | { readonly code: 'layers'; readonly count: number }
  | { readonly code: 'unknown-shape'; readonly words: string }
  | { readonly code: 'no-house' }
  | { readonly code: 'not-there'; readonly what: string }
  | { readonly code: 'fault'; readonly field: string; readonly message: string }
  | { readonly code: 'place-name'; readonly town: string }
  | { readonly code: 'place-search'; readonly town: string; readonly failure: string }
  | { readonly code: 'bad-coordinates' }
  | { readonly code: 'bad-choice'; readonly most: number }
  | { readonly code: 'no-evening'; readonly from: string; readonly until: string };

export const put = (file: DraftFile): Put => ({ kind: 'put', file });
export const lacks = (detail: Detail): Put => ({ kind: 'lacks', detail });
export const problem = (found: Problem): Put => ({ kind: 'problem', problem: found });
