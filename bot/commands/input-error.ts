/** A fault in what the user gave: printed as it is, without a stack. */
export class InputError extends Error {
  override readonly name = 'InputError';
}
