import type { MeasureToken, MeasureUnit } from './measure-grammar.js';
import type { Piece } from './house-text.js';

/** A number as it was said; without a unit where none was. */
export interface Quantity {
  readonly value: number;
  readonly unit: MeasureUnit | null;
}

/** Stands where a piece was that has been understood already. */
const TAKEN = '_';

/** A stretch of a description. What a rule has understood is taken out, so that no number counts twice and what is left can be told. */
export class Clause {
  private readonly taken = new Set<Piece>();
  /** The form as it stands; made anew after something was taken. */
  private current: string | null = null;

  constructor(readonly pieces: readonly Piece[]) {}

  /** The symbols with a blank on both sides, for the rules. */
  get form(): string {
    this.current ??= ` ${this.pieces.map((piece) => (this.taken.has(piece) ? TAKEN : piece.symbol)).join(' ')} `;
    return this.current;
  }

  has(pattern: RegExp): boolean {
    return pattern.test(this.form);
  }

  /** The first match, whose pieces are taken. Patterns begin and end with a blank. */
  take(pattern: RegExp): RegExpExecArray | null {
    const { form } = this;
    const found = pattern.exec(form);
    if (found === null) return null;
    const first = form.slice(0, found.index + 1).split(' ').length - 2;
    const count = found[0].trim().split(' ').length;
    for (const piece of this.pieces.slice(first, first + count)) this.taken.add(piece);
    this.current = null;
    return found;
  }

  /** As take, for whether there is one. */
  takes(pattern: RegExp): boolean {
    return this.take(pattern) !== null;
  }

  /** The measure of a symbol such as "#L3". */
  quantity(symbol: string | undefined): Quantity | null {
    const found: MeasureToken | undefined = this.pieces.find((piece) => piece.symbol === symbol)?.measure;
    return found === undefined ? null : { value: found.value, unit: found.unit };
  }

  piece(symbol: string | undefined): Piece | null {
    return this.pieces.find((piece) => piece.symbol === symbol) ?? null;
  }

  /** Takes every piece that fits. */
  takeAll(pattern: RegExp): readonly RegExpExecArray[] {
    const found: RegExpExecArray[] = [];
    for (let one = this.take(pattern); one !== null; one = this.take(pattern)) found.push(one);
    return found;
  }

  isTaken(piece: Piece): boolean {
    return this.taken.has(piece);
  }

  get rest(): readonly Piece[] {
    return this.pieces.filter((piece) => !this.taken.has(piece));
  }
}
