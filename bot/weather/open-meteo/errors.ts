/** Why a call brought no JSON from the service. */
export type CallFailure =
  | 'network' // no connection, or it broke before the answer began
  | 'time-out'
  | 'cut-off' // the body ended early, or is not the JSON that it claims to be
  | 'not-json' // a web page instead of data
  | 'server' // the service says that it is broken
  | 'refused' // the service says that the request is wrong
  | 'limited' // the service says: too much, later
  | 'resting'; // not asked at all, because of one of the above a short while ago

/** A call that brought nothing. The message says what was expected, what came and what to do. */
export class ServiceCallError extends Error {
  override readonly name = 'ServiceCallError';

  constructor(
    readonly kind: CallFailure,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options);
  }
}

/** An answer that came, but that must not be used. The message says what was expected, what came and what to do. */
export class AnswerRefusedError extends Error {
  override readonly name = 'AnswerRefusedError';

  constructor(what: string, detail: { readonly expected: string; readonly got: string; readonly todo: string }) {
    super(`${what}: expected ${detail.expected}, got ${detail.got}. ${detail.todo}`);
  }
}

/** What to do when a core value is missing. */
export const WHOLE_ANSWER = 'The answer is not usable without it: ask again, or use a saved answer that has it.';
