/** A word, a mark, or a symbol for something known: #0 number, ~0 clock, =0 amount, %0 crop, $0 thermometer, @item, &place. */
export interface Piece {
  readonly symbol: string;
  /** The word as it was written. */
  readonly written: string;
  readonly start: number;
  readonly end: number;
}
