import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import { Agent, interceptors, request, type Dispatcher } from 'undici';
import { ServiceCallError } from './errors.js';

/** Times that an operator may want to change, all in milliseconds. */
export interface TransportTimes {
  readonly connectMs: number;
  readonly headersMs: number;
  readonly bodyMs: number;
  readonly retryAfterMs: number;
}

export const TRANSPORT_TIMES: TransportTimes = { connectMs: 5_000, headersMs: 10_000, bodyMs: 10_000, retryAfterMs: 800 };

export interface Reply {
  readonly status: number;
  readonly contentType: string;
  readonly location: string | null;
  readonly text: string;
  /** Any header, by its name in small letters. */
  readonly header: (name: string) => string | null;
}

const RETRIES = 2;
const RETRY_GROWTH = 2;
const LONGEST_RETRY_MS = 5_000;
// Fifteen past days and a week ahead of two models are about 0.3 MB.
const LARGEST_BODY_BYTES = 8_000_000;
// Not 429: each refusal is billed, so it is obeyed by its reason instead.
const RETRIED_STATUSES = [500, 502, 503, 504];
const RETRIED_CODES = [
  'ECONNRESET', 'ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'ETIMEDOUT', 'ENETDOWN', 'ENETUNREACH', 'EHOSTDOWN', 'EPIPE',
  'UND_ERR_SOCKET', 'UND_ERR_CONNECT_TIMEOUT', 'UND_ERR_HEADERS_TIMEOUT', 'UND_ERR_BODY_TIMEOUT',
];

/** HTTP with retries of what can heal by itself, on one connection. */
export class Transport {
  private readonly agent: Agent;
  private readonly dispatcher: Dispatcher;

  /** redirections: how many times an answer may send on to another address; none when not said. */
  constructor(times: TransportTimes = TRANSPORT_TIMES, redirections = 0) {
    this.agent = new Agent({
      connections: 1,
      pipelining: 1,
      connect: { timeout: times.connectMs },
      headersTimeout: times.headersMs,
      bodyTimeout: times.bodyMs,
      maxResponseSize: LARGEST_BODY_BYTES,
    });
    this.dispatcher = this.agent.compose(
      interceptors.retry({
        maxRetries: RETRIES,
        minTimeout: times.retryAfterMs,
        timeoutFactor: RETRY_GROWTH,
        maxTimeout: LONGEST_RETRY_MS,
        statusCodes: RETRIED_STATUSES,
        errorCodes: RETRIED_CODES,
        throwOnError: false,
      }),
      interceptors.redirect({ maxRedirections: redirections }),
    );
  }

  /** One exchange, retries included, within the budget. Throws ServiceCallError: network, time-out or cut-off. */
  async get(url: string, headers: Readonly<Record<string, string>>, budgetMs: number): Promise<Reply> {
    const signal = AbortSignal.timeout(Math.max(1, Math.ceil(budgetMs)));
    let begun = false;
    try {
      const answer = await request(url, { dispatcher: this.dispatcher, headers: { ...headers }, signal });
      begun = true;
      const header = (name: string): string | null => single(answer.headers[name]);
      const text = await unpacked(Buffer.from(await answer.body.arrayBuffer()), header('content-encoding'));
      return { status: answer.statusCode, contentType: header('content-type') ?? '', location: header('location'), text, header };
    } catch (cause) {
      throw asCallError(cause, { url, begun, budgetMs });
    }
  }

  async close(): Promise<void> {
    await this.agent.destroy();
  }
}

const single = (header: string | string[] | undefined): string | null => (Array.isArray(header) ? (header[0] ?? null) : (header ?? null));

/** Text of a body, also of one in gzip: request() does not unpack it by itself. */
async function unpacked(body: Buffer, encoding: string | null): Promise<string> {
  const isGzip = encoding?.trim().toLowerCase() === 'gzip' && body.length > 0;
  return new TextDecoder().decode(isGzip ? await promisify(gunzip)(body, { maxOutputLength: LARGEST_BODY_BYTES }) : body);
}

function asCallError(cause: unknown, call: { readonly url: string; readonly begun: boolean; readonly budgetMs: number }): ServiceCallError {
  const { url, begun, budgetMs } = call;
  const host = new URL(url).origin;
  const code = cause instanceof Error && 'code' in cause && typeof cause.code === 'string' ? cause.code : '';
  const detail = cause instanceof Error ? `${code === '' ? cause.name : code}: ${cause.message}` : String(cause);
  if (cause instanceof Error && cause.name === 'TimeoutError') {
    return new ServiceCallError('time-out', `${host}: expected an answer within ${Math.round(budgetMs)} ms in all, got none`, { cause });
  }
  if (begun) return new ServiceCallError('cut-off', `${host}: expected a whole answer, got the beginning of one (${detail})`, { cause });
  if (/TIMEOUT/.test(code)) return new ServiceCallError('time-out', `${host}: expected an answer in time, got none (${detail})`, { cause });
  return new ServiceCallError('network', `${host}: expected an answer, got no connection or a broken one (${detail})`, { cause });
}
