import { z } from 'zod';
import type { Clock } from '../../ports.js';
import { userAgent } from '../user-agent.js';
import { CallBudget } from './call-budget.js';
import { ServiceCallError, type CallFailure } from './errors.js';
import { adviceOnLimit } from './limits.js';
import type { ServiceName, ServiceRequest } from './request.js';
import { Rest } from './rest.js';
import type { Reply, Transport } from './transport.js';

/** Brings parsed JSON, or throws ServiceCallError. */
export interface ServiceClient {
  getJson(request: ServiceRequest): Promise<unknown>;
  /** Whether a request that could be left out leaves enough of the service's limits for the others. */
  hasRoomFor(request: ServiceRequest): boolean;
}

export interface ClientOptions {
  readonly transport: Pick<Transport, 'get'>;
  readonly clock: Clock;
  readonly sleepS: (seconds: number) => Promise<void>;
  /** One to five seconds, drawn by the caller, added when everybody is told to come back at the same second. */
  readonly jitterS: () => number;
  readonly apiKey: string | null;
  /** How the operator can be reached, for the service's people; null when not told. */
  readonly contact: string | null;
  /** Network time for one request in all; waiting that the service asked for is not counted. */
  readonly budgetMs?: number;
}

const BUDGET_MS = 30_000;
const FRESH_ATTEMPTS = 2;
const HTTP_TOO_MANY = 429;
const HTTP_OK = 200;
const HTTP_SERVER_ERROR = 500;
const REASON_CHARACTERS = 160;

const ErrorBody = z.object({ reason: z.string() });
/** Failures that say something about the service as a whole; a refused request says only something about the request. */
const COUNTED: ReadonlySet<CallFailure> = new Set<CallFailure>(['network', 'time-out', 'cut-off', 'not-json', 'server']);

/** Asks the weather service politely: one request at a time over all places, limits obeyed, rest after failures. */
export class OpenMeteoClient implements ServiceClient {
  private readonly rests: Readonly<Record<ServiceName, Rest>> = { forecast: new Rest(), ensemble: new Rest(), archive: new Rest() };
  private readonly headers: Readonly<Record<string, string>>;
  private readonly budget: CallBudget;
  private last: Promise<unknown> = Promise.resolve();

  constructor(private readonly options: ClientOptions) {
    const { apiKey, contact } = options;
    this.budget = new CallBudget(apiKey === null);
    this.headers = {
      accept: 'application/json',
      'user-agent': userAgent(contact),
      ...(apiKey === null ? {} : { 'x-api-key': apiKey }),
    };
  }

  getJson(request: ServiceRequest): Promise<unknown> {
    // The service lets one request of an address run and queues few: ours wait here instead.
    const mine = this.last.then(() => this.inTurn(request));
    this.last = mine.catch(() => undefined);
    return mine;
  }

  hasRoomFor(request: ServiceRequest): boolean {
    return this.budget.hasRoomFor(request, this.options.clock.nowS());
  }

  private async inTurn(request: ServiceRequest): Promise<unknown> {
    const rest = this.rests[request.service];
    const { clock } = this.options;
    const resting = rest.at(clock.nowS());
    if (resting !== null) {
      throw new ServiceCallError('resting', `weather service (${request.service}) not asked before ${new Date(resting.untilS * 1000).toISOString()}: ${resting.cause}`);
    }
    try {
      const body = await this.attempts(request, rest);
      rest.succeeded();
      return body;
    } catch (error) {
      if (error instanceof ServiceCallError) {
        if (COUNTED.has(error.kind)) rest.failed(clock.nowS(), error.message);
        else if (error.kind === 'refused') rest.succeeded();
      }
      throw error;
    }
  }

  private async attempts(request: ServiceRequest, rest: Rest): Promise<unknown> {
    const { clock, sleepS, jitterS, transport, budgetMs = BUDGET_MS } = this.options;
    let leftMs = budgetMs;
    let freshLeft = FRESH_ATTEMPTS;
    let refusals = 0;
    for (;;) {
      const begun = performance.now();
      this.budget.spend(request, clock.nowS());
      try {
        const reply = await transport.get(request.url, this.headers, leftMs);
        if (reply.status !== HTTP_TOO_MANY) return bodyOf(reply, request);
        const reason = reasonOf(reply);
        const advice = adviceOnLimit(reason, { nowS: clock.nowS(), refusals, jitterS: jitterS() });
        if (advice.kind === 'stay-away') {
          rest.until(advice.untilS, reason);
          throw new ServiceCallError('limited', `weather service (${request.service}): expected an answer, got a limit: "${reason}". Not asked again before ${new Date(advice.untilS * 1000).toISOString()}.`);
        }
        refusals += 1;
        leftMs -= performance.now() - begun;
        await sleepS(advice.waitS);
      } catch (error) {
        // A body that broke off cannot be resumed (the service knows no ranges): ask anew.
        if (!(error instanceof ServiceCallError) || error.kind !== 'cut-off' || freshLeft === 0) throw error;
        freshLeft -= 1;
        leftMs -= performance.now() - begun;
      }
      if (leftMs <= 0) throw new ServiceCallError('time-out', `weather service (${request.service}): expected an answer within ${budgetMs} ms in all, got none`);
    }
  }
}

function bodyOf(reply: Reply, request: ServiceRequest): unknown {
  const what = `weather service (${request.service})`;
  if (reply.status >= HTTP_SERVER_ERROR) {
    throw new ServiceCallError('server', `${what}: expected status 200, got ${reply.status} "${reasonOf(reply)}", also after retries. It is their outage; the last good answer is used while it is fresh enough.`);
  }
  if (reply.status !== HTTP_OK) {
    const where = reply.location === null ? '' : `, sent on to ${reply.location}`;
    throw new ServiceCallError('refused', `${what}: expected status 200, got ${reply.status} "${reasonOf(reply)}"${where}. Check the place, DUSKWARD_WEATHER_URL and DUSKWARD_WEATHER_KEY.`);
  }
  if (!/\bjson\b/i.test(reply.contentType)) {
    throw new ServiceCallError('not-json', `${what}: expected JSON, got ${reply.contentType || 'no content type'} "${beginning(reply.text)}". Check DUSKWARD_WEATHER_URL, and whether a login page stands between.`);
  }
  try {
    return JSON.parse(reply.text) as unknown;
  } catch (cause) {
    throw new ServiceCallError('cut-off', `${what}: expected whole JSON, got ${reply.text.length} characters that end in "${reply.text.slice(-40)}"`, { cause });
  }
}

const beginning = (text: string): string => text.slice(0, REASON_CHARACTERS).replace(/\s+/g, ' ').trim();

function reasonOf(reply: Reply): string {
  try {
    return ErrorBody.parse(JSON.parse(reply.text)).reason;
  } catch {
    return beginning(reply.text);
  }
}
