export type StoreErrorCode =
  // The file.
  | 'bad-path'
  | 'not-writable'
  | 'in-use'
  | 'not-a-database'
  | 'damaged'
  | 'another-program'
  | 'newer-version'
  | 'unsafe-settings'
  | 'stray-log'
  | 'not-there'
  | 'already-there'
  // The disk, or another program, while it runs.
  | 'full'
  | 'locked'
  | 'disk-fault'
  // What was asked.
  | 'bad-row'
  | 'no-such-reading'
  | 'reading-not-standing'
  | 'other-greenhouse'
  | 'no-such-chat'
  | 'not-open'
  | 'not-waiting'
  | 'not-sending'
  | 'known-code'
  // How it was asked.
  | 'nested'
  | 'too-long'
  | 'over'
  | 'undone'
  | 'closed';

/** The disk, or another program that holds the file: it may be over in a while, and what was asked is as good as before. */
export const isPassing = (error: unknown): boolean => error instanceof StoreError && (['full', 'locked', 'not-writable', 'disk-fault'] satisfies readonly StoreErrorCode[] as readonly StoreErrorCode[]).includes(error.code);

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
