import { GrammyError, HttpError } from 'grammy';
import { withoutTokens } from '../../without-tokens.js';
import { PageError } from './bot-api.js';

/** How a call of the Bot API failed. Causes carry no token. */
export type CallFailure =
  /** The service answered, and said no. */
  | { readonly kind: 'answered'; readonly code: number; readonly cause: string; readonly retryAfterS: number | null; readonly movedTo: string | null }
  /** The call never left: no connection. */
  | { readonly kind: 'not-sent'; readonly cause: string }
  /** A page of something in between. */
  | { readonly kind: 'page'; readonly status: number; readonly cause: string }
  /** The call left, or may have left, and nothing usable came back. */
  | { readonly kind: 'no-answer'; readonly cause: string };

/** Steps that come before the first byte of a request. */
const BEFORE_SENDING = new Set(['connect', 'getaddrinfo']);
const NO_CONNECTION = /^(?:UND_ERR_CONNECT_TIMEOUT|ERR_TLS_|CERT_|DEPTH_ZERO_|SELF_SIGNED_|UNABLE_TO_)/u;

export function callFailure(error: unknown): CallFailure {
  if (error instanceof GrammyError) {
    const { retry_after: retryAfterS, migrate_to_chat_id: movedTo } = error.parameters;
    return { kind: 'answered', code: error.error_code, cause: withoutTokens(error.description), retryAfterS: retryAfterS ?? null, movedTo: movedTo === undefined ? null : String(movedTo) };
  }
  const inner = error instanceof HttpError ? error.error : error;
  if (inner instanceof PageError) return { kind: 'page', status: inner.status, cause: inner.message };
  const cause = words(inner);
  return neverLeft(inner) ? { kind: 'not-sent', cause } : { kind: 'no-answer', cause };
}

/** fetch wraps what happened in "fetch failed"; several addresses of a host fail as one aggregate. */
function neverLeft(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if (error instanceof AggregateError && error.errors.length > 0) return error.errors.every(neverLeft);
  const { code, syscall } = error as { code?: unknown; syscall?: unknown };
  if ((typeof syscall === 'string' && BEFORE_SENDING.has(syscall)) || (typeof code === 'string' && NO_CONNECTION.test(code))) return true;
  return error.cause !== undefined && neverLeft(error.cause);
}

function words(error: unknown): string {
  if (!(error instanceof Error)) return withoutTokens(String(error));
  const { code } = error as { code?: unknown };
  const own = withoutTokens(typeof code === 'string' && !error.message.includes(code) ? `${code}: ${error.message}` : error.message);
  return error.cause === undefined ? own : `${own}: ${words(error.cause)}`;
}
