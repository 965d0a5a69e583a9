import { Api } from 'grammy';

export const PUBLIC_API_ROOT = 'https://api.telegram.org';

/** How long to wait for the service, in seconds. */
export interface CallTimes {
  /** A call that sends or asks something. */
  readonly callS: number;
  /** How long the service may hold a poll open; it caps this at 50. */
  readonly pollS: number;
  /** What its answer may take beyond that. */
  readonly pollSlackS: number;
}

/** A photo goes up in this time on a slow line; grammY would wait 500 s. Project estimates. */
export const CALL_TIMES: CallTimes = { callS: 20, pollS: 30, pollSlackS: 15 };

/** An answer that is not the Bot API's own: a page of something in between. */
export class PageError extends Error {
  override readonly name = 'PageError';
  constructor(readonly status: number) {
    super(`expected JSON of the Bot API, got a page with status ${status}`);
  }
}

/** Node's own fetch names no addresses in its errors, and lets a page of a proxy be told from an answer of the service. */
const fetchAnswer = async (...request: Parameters<typeof fetch>): Promise<Response> => {
  const answer = await fetch(...request);
  if (/\bjson\b/u.test(answer.headers.get('content-type') ?? '')) return answer;
  await answer.body?.cancel().catch(() => undefined);
  throw new PageError(answer.status);
};

export interface BotApiCalls {
  /** For everything but polls. */
  readonly calls: Api;
  readonly polls: Api;
}

export function botApi(bot: { readonly token: string; readonly apiRoot: string }, times: CallTimes): BotApiCalls {
  const client = (timeoutSeconds: number): Api => new Api(bot.token, { apiRoot: bot.apiRoot, timeoutSeconds, fetch: fetchAnswer });
  return { calls: client(times.callS), polls: client(times.pollS + times.pollSlackS) };
}

/** grammY's types ask for the signal of an older package; it takes Node's own. */
export const asStopSignal = (signal: AbortSignal): NonNullable<Parameters<Api['getMe']>[0]> => signal as unknown as NonNullable<Parameters<Api['getMe']>[0]>;
