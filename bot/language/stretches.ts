import type { Piece } from './piece.js';

/** Where speech goes over from one thing to the next. */
const SEPARATORS = new Set([',', ';', 'and', 'but', '/', 'while', 'with', 'which', 'because', 'though', 'although', 'mind', 'brr', 'brrr', 'brrrr', 'burr', 'yikes', 'sheesh', 'phew', 'ugh', 'wow', 'whew']);
export const isSeparator = (symbol: string): boolean => SEPARATORS.has(symbol);

/** The pieces cut where the message is cut in speech; each stretch begins with what cuts it. */
export function stretchesOf(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const cut: Piece[][] = [[]];
  for (const piece of pieces) {
    if (isSeparator(piece.symbol)) cut.push([]);
    cut.at(-1)?.push(piece);
  }
  return cut;
}
