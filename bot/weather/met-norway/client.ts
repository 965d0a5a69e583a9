import { SECONDS_PER_DAY, SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from '../../../engine/index.js';
import type { Clock, Log } from '../../ports.js';
import { ServiceCallError, type CallFailure } from '../open-meteo/errors.js';
import { Rest } from '../open-meteo/rest.js';
import type { Reply, Transport } from '../open-meteo/transport.js';
import { userAgent } from '../user-agent.js';
import { expiresAtS } from './expiry.js';
import type { Pace } from './pace.js';

/** What an exchange brought: a new body, or the word that the one we have still stands. */
export type Exchange =
  | { readonly kind: 'new'; readonly body: unknown; readonly lastModified: string | null; readonly expiresAtS: number }
  | { readonly kind: 'unchanged'; readonly expiresAtS: number };

export interface MetNorwayClientOptions {
  readonly transport: Pick<Transport, 'get'>;
  readonly clock: Clock;
  readonly log: Log;
  readonly pace: Pace;
  /** How the operator can be reached: the service refuses who does not say. */
  readonly contact: string;
  /** Network time for one request in all. */
  readonly budgetMs?: number;
}

const BUDGET_MS = 30_000;
const FRESH_ATTEMPTS = 1;
const OK = 200;
/** A beta version, or one that will end. */
const DEPRECATED = 203;
const NOT_MODIFIED = 304;
const FORBIDDEN = 403;
const TOO_MANY = 429;
const SERVER_ERROR = 500;
// Who goes on asking after these is locked out for good.
const FORBIDDEN_REST_S = SECONDS_PER_HOUR;
const THROTTLED_REST_S = 15 * SECONDS_PER_MINUTE;
const LONGEST_REST_S = SECONDS_PER_DAY;
const REASON_CHARACTERS = 160;
const WHO = 'second weather service';

/** Failures that say something about the service as a whole. */
const COUNTED: ReadonlySet<CallFailure> = new Set<CallFailure>(['network', 'time-out', 'cut-off', 'not-json', 'server']);

/** Asks the second service within its terms: named, one request at a time, paced, rest where it says so. */
export class MetNorwayClient {
  private readonly rest = new Rest();
  private readonly headers: Readonly<Record<string, string>>;
  private last: Promise<unknown> = Promise.resolve();

  constructor(private readonly options: MetNorwayClientOptions) {
    this.headers = { accept: 'application/json', 'accept-encoding': 'gzip', 'user-agent': userAgent(options.contact) };
  }

  /** lastModified: of the copy that we have, as the service wrote it; null when there is none. Throws ServiceCallError. */
  ask(url: string, lastModified: string | null): Promise<Exchange> {
    const mine = this.last.then(() => this.inTurn(url, lastModified));
    this.last = mine.catch(() => undefined);
    return mine;
  }

  private async inTurn(url: string, lastModified: string | null): Promise<Exchange> {
    const { clock } = this.options;
    const resting = this.rest.at(clock.nowS());
    if (resting !== null) throw new ServiceCallError('resting', `${WHO} not asked before ${new Date(resting.untilS * 1000).toISOString()}: ${resting.cause}`);
    try {
      const exchange = await this.attempts(url, lastModified);
      this.rest.succeeded();
      return exchange;
    } catch (error) {
      if (error instanceof ServiceCallError) {
        if (COUNTED.has(error.kind)) this.rest.failed(clock.nowS(), error.message);
        else if (error.kind === 'refused') this.rest.succeeded();
      }
      throw error;
    }
  }

  private async attempts(url: string, lastModified: string | null): Promise<Exchange> {
    const { transport, pace, budgetMs = BUDGET_MS } = this.options;
    const headers = lastModified === null ? this.headers : { ...this.headers, 'if-modified-since': lastModified };
    let leftMs = budgetMs;
    for (let freshLeft = FRESH_ATTEMPTS; ; freshLeft -= 1) {
      await pace.turn();
      const begun = performance.now();
      try {
        return this.exchangeOf(await transport.get(url, headers, leftMs), lastModified);
      } catch (error) {
        leftMs -= performance.now() - begun;
        if (!(error instanceof ServiceCallError) || error.kind !== 'cut-off' || freshLeft === 0 || leftMs <= 0) throw error;
      }
    }
  }

  private exchangeOf(reply: Reply, lastModified: string | null): Exchange {
    const nowS = this.options.clock.nowS();
    const until = expiresAtS({ expires: reply.header('expires'), date: reply.header('date') }, nowS);
    if (reply.status === NOT_MODIFIED && lastModified !== null) return { kind: 'unchanged', expiresAtS: until };
    if (reply.status !== OK && reply.status !== DEPRECATED) throw this.refusal(reply, nowS);
    if (reply.status === DEPRECATED) this.options.log.warn('second-weather-service-deprecated', { todo: 'this version of the service is a beta or will end: look for a newer Duskward' });
    return { kind: 'new', body: jsonOf(reply), lastModified: reply.header('last-modified'), expiresAtS: until };
  }

  private refusal(reply: Reply, nowS: number): ServiceCallError {
    const got = `${WHO}: expected status 200, got ${reply.status} "${beginning(reply.text)}"`;
    if (reply.status >= SERVER_ERROR) return new ServiceCallError('server', `${got}, also after retries. It is their outage.`);
    if (reply.status === TOO_MANY) {
      this.rest.until(nowS + throttledRestS(reply.header('retry-after')), got);
      return new ServiceCallError('limited', `${got}. It is left alone for a while.`);
    }
    if (reply.status === FORBIDDEN) {
      this.rest.until(nowS + FORBIDDEN_REST_S, got);
      return new ServiceCallError('refused', `${got}. Check DUSKWARD_CONTACT: the service wants a real mail or web address.`);
    }
    const where = reply.location === null ? '' : `, sent on to ${reply.location}`;
    return new ServiceCallError('refused', `${got}${where}. Check the place and DUSKWARD_WEATHER2_URL.`);
  }
}

function throttledRestS(retryAfter: string | null): number {
  const askedS = Number(retryAfter ?? Number.NaN);
  return askedS > 0 ? Math.min(LONGEST_REST_S, Math.max(THROTTLED_REST_S, askedS)) : THROTTLED_REST_S;
}

function jsonOf(reply: Reply): unknown {
  if (!/\bjson\b/i.test(reply.contentType)) {
    throw new ServiceCallError('not-json', `${WHO}: expected JSON, got ${reply.contentType || 'no content type'} "${beginning(reply.text)}". Check DUSKWARD_WEATHER2_URL, and whether a login page stands between.`);
  }
  try {
    return JSON.parse(reply.text) as unknown;
  } catch (cause) {
    throw new ServiceCallError('cut-off', `${WHO}: expected whole JSON, got ${reply.text.length} characters that end in "${reply.text.slice(-40)}"`, { cause });
  }
}

/** Errors of this service are web pages: their words without the tags. */
const beginning = (text: string): string => text.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ').trim().slice(0, REASON_CHARACTERS);
