import type { SendResult } from '../../chat.js';
import type { CallFailure } from './call-failure.js';
import type { NotNow } from './pace.js';

/** While the service or the way to it is broken, or our token refused. Project estimates: whoever keeps the outbox backs off further. */
const TROUBLE_REST_S = 10;
const TOKEN_REST_S = 60;
/** Between us and the service somebody waited for it in vain: the message may have got through. */
const GATEWAY_TROUBLE = new Set([502, 504]);
/** A chat that is not there, in the words of the server's source; other refusals of a chat come with 403. */
const NO_SUCH_CHAT = /chat not found|user not found|PEER_ID_INVALID/u;

/** How a failed send ended. `tooMuch` is asked when the service says that it was too much. */
export function failedSend(failure: CallFailure, tooMuch: (retryAfterS: number) => NotNow): SendResult {
  const { cause } = failure;
  if (failure.kind === 'no-answer') return { kind: 'unknown', cause };
  if (failure.kind === 'not-sent') return { kind: 'later', afterS: TROUBLE_REST_S, scope: 'channel', cause };
  if (failure.kind === 'page') return GATEWAY_TROUBLE.has(failure.status) ? { kind: 'unknown', cause } : { kind: 'later', afterS: TROUBLE_REST_S, scope: 'channel', cause };
  const { code, retryAfterS, movedTo } = failure;
  if (movedTo !== null) return { kind: 'moved', to: movedTo };
  if (code === 429) return { kind: 'later', ...tooMuch(retryAfterS ?? TROUBLE_REST_S), cause };
  if (code === 401 || code === 404) return { kind: 'later', afterS: TOKEN_REST_S, scope: 'channel', cause };
  if (code >= 500) return { kind: 'later', afterS: TROUBLE_REST_S, scope: 'channel', cause };
  if (code === 403 || NO_SUCH_CHAT.test(cause)) return { kind: 'gone', cause };
  return { kind: 'refused', cause };
}
