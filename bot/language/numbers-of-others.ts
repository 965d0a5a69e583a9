import { withPieces, type Message } from './message.js';
import type { Piece } from './piece.js';
import { isOfOthers, numbersIn as numbersInStretch, showsWhat, speaksOfOther } from './reading-talk.js';
import { stretchesOf } from './stretches.js';

/** "He always told us about 1963, minus 20 for weeks": what stands in one sentence with a year is of that year. */
function isOfLongAgo(stretch: readonly Piece[], { form, pieces }: Message): boolean {
  const before = pieces.slice(0, pieces.indexOf(stretch[0]!)).filter(({ symbol }) => /^[;?]$/.test(symbol)).length;
  return / \*year /.test(` ${form.trim().split(/ [;?] ?/)[before] ?? ''} `) && !/ since \*year /.test(form);
}

const numbersIn = (stretch: readonly Piece[], message: Message): ReturnType<typeof numbersInStretch> => (isOfLongAgo(stretch, message) ? 'other' : numbersInStretch(stretch, message.temps));

/** Whether no number of the message is of this house: what is somebody's, was once, or counts something. */
export function isAllOfOther(message: Message): boolean {
  const numbered = numberedIn(message);
  return numbered.length > 0 && numbered.every((stretch) => numbersIn(stretch, message) === 'other' || speaksOfOther(stretch.map(({ symbol }) => symbol), message.temps));
}

/** Whether every number is of somebody else's house, or of a time long ago. */
export const isAllOfOthers = (message: Message): boolean => numberedIn(message).length > 0 && numberedIn(message).every((stretch) => (isOfOthers(stretch.map(({ symbol }) => symbol)) || isOfLongAgo(stretch, message)));

const numberedIn = ({ pieces }: Message): readonly (readonly Piece[])[] => stretchesOf(pieces).filter((stretch) => stretch.some(({ symbol }) => symbol.startsWith('#')));

/** The message without the stretches whose numbers are no temperatures; null where some may be or not, or none is left. */
export function onlyTemperatures(message: Message): Message | null {
  const told = stretchesOf(message.pieces).map((stretch) => ({ stretch, of: stretch.some(({ symbol }) => symbol.startsWith('#')) ? numbersIn(stretch, message) : null }));
  const symbolsOf = (stretch: readonly Piece[]): readonly string[] => stretch.map(({ symbol }) => symbol);
  const isSure = told.some(({ stretch, of }) => of === 'temperatures' && stretch.length > 1 && showsWhat(symbolsOf(stretch), message.temps));
  for (const one of told) if (isSure && one.of === 'unknown' && speaksOfOther(symbolsOf(one.stretch), message.temps)) one.of = 'other';
  const kept = told.filter(({ of }) => of !== 'other');
  if (kept.length === told.length && !told.some(({ of }) => of === 'unknown')) return message;
  if (told.some(({ of }) => of === 'unknown') || !kept.some(({ of }) => of === 'temperatures')) return null;
  return withPieces(message, kept.flatMap(({ stretch }) => stretch));
}
