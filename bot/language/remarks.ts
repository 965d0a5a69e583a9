import type { Meaning } from './intent.js';
import type { Message } from './message.js';
import { wordings } from './wordings.js';

const TOLD_ONLY: ReadonlySet<Meaning['kind']> = new Set(['outlook', 'history', 'why', 'record', 'next', 'effect', 'advice', 'crop']);
/** Who wants something says so: "show me", "send it in celsius". */
const WANTS = wordings`
  please|show|give|send|tell|list|change|switch|set|use|make|want|wants|prefer|would like|need|can you|could you|plan|forecast|outlook|log|history
  worried|wonder|wondering|curious|tonight|tomorrow|should|shall
`;
const PAST = / (?:yesterday|last (?:week|month|year|winter)|the other day|days ago|weeks ago) /;

/**
 * Whether a part of a message that reports a number only remarks on it: "so strange after last week", "had 20 cm of snow
 * yesterday", "in Fahrenheit for some reason". Only a question, a wish, a deed or a state of now is meant beside a reading.
 */
export function isRemark({ said, asks }: Message, { kind }: Meaning): boolean {
  if (asks) return false;
  if (kind === 'condition') return PAST.test(said) && / (?:had|got|was|were) /.test(said);
  return kind === 'settings' ? !WANTS.test(said) : TOLD_ONLY.has(kind) && !WANTS.test(said);
}
