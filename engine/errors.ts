/** The engine's one policy for values outside their valid range: say which value, what was expected, and stop. */
export class OutOfRangeError extends Error {
  override readonly name = 'OutOfRangeError';

  constructor(
    readonly quantity: string,
    readonly value: number,
    readonly unit: string,
    readonly validRange: string,
  ) {
    super(`${quantity} = ${value} ${unit}: expected ${validRange}`);
  }
}

/** Throws unless the value is finite and inside [lowest, highest]. */
export function assertInRange(quantity: string, value: number, range: { lowest: number; highest: number; unit: string }): void {
  if (Number.isFinite(value) && value >= range.lowest && value <= range.highest) return;
  throw new OutOfRangeError(quantity, value, range.unit, `${range.lowest} to ${range.highest} ${range.unit}`);
}
