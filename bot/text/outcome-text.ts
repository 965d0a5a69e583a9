import { nightWords } from './reading-text.js';
import { UNDO } from './undo-text.js';

type State = 'fine' | 'marked' | 'dead';

const STATE_WORDS = { fine: 'came through fine', marked: 'is marked', dead: 'is lost' } as const satisfies Record<State, string>;

interface OutcomeWords {
  readonly crop: string;
  /** As it was said. */
  readonly bed: string | null;
  readonly state: State;
  readonly night: string;
}

const shortOutcome = ({ crop, bed, state }: Omit<OutcomeWords, 'night'>): string => `${crop}${bed === null ? '' : ` in ${bed}`} ${STATE_WORDS[state]}`;

/** It moves where harm begins for the crop, by as much as the numbers of the table are unsure. */
const COUNTS = 'I count it when I judge that crop again.';

/** What was stored, for which night, what comes of it, and how to take it back. */
export const outcomeKept = (outcome: OutcomeWords, said: { readonly today: string; readonly isRiskiest: boolean; readonly counts: boolean }): string =>
  `Noted: ${shortOutcome(outcome)}, night of ${nightWords(outcome.night, said.today)}${said.isRiskiest ? ', the riskiest of the last three' : ''}. ${said.counts ? `${COUNTS} ` : ''}${UNDO}`;

export const outcomeTakenBack = (outcome: Omit<OutcomeWords, 'night'>): string => shortOutcome(outcome);
