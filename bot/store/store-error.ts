/** The database could not be opened, or refused what was asked; the message says what, expected, got and what to do. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
}
