export type StoreErrorCode =
  | 'bad-path'
  | 'not-writable'
  | 'in-use'
  | 'not-a-database'
  | 'damaged'
  | 'another-program'
  | 'newer-version'
  | 'unsafe-settings'
  | 'bad-row'
  | 'no-such-reading'
  | 'reading-not-standing'
  | 'other-greenhouse'
  | 'closed';

/** The store refused: the code is for programs, the message says what, expected, got and what to do. */
export class StoreError extends Error {
  override readonly name = 'StoreError';

  constructor(
    readonly code: StoreErrorCode,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options);
  }
}
