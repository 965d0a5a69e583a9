import type { Channel } from '../../chat.js';
import type { Door } from '../../http/door.js';
import type { Clock, Log } from '../../ports.js';
import { begin, type CommandWords } from './begin.js';
import { asStopSignal, botApi, CALL_TIMES, PUBLIC_API_ROOT, type CallTimes } from './bot-api.js';
import { callFailure } from './call-failure.js';
import type { HandOver } from './hand-over.js';
import { WANTED_UPDATES } from './inbound.js';
import { poll } from './polling.js';
import { realTime, type RealTime } from './real-time.js';
import { Sender } from './sender.js';
import { untilAnswered } from './until-answered.js';
import { WebhookDoor } from './webhook-door.js';

export interface TelegramOptions {
  readonly token: string;
  /** The public one when null or left out. */
  readonly apiRoot?: string | null;
  /** Where the service is to bring updates; long polling when null or left out. */
  readonly webhook?: { readonly url: string; readonly secret: string } | null;
  /** Commands that Telegram offers while the grower types. */
  readonly commands: readonly CommandWords[];
  /** Words on the button that sends the place. */
  readonly placeLabel: string;
  readonly clock: Clock;
  readonly log: Log;
  readonly time?: RealTime;
  readonly callTimes?: CallTimes;
}

export interface TelegramChannel extends Channel {
  /** What the HTTP server opens for the service; null with long polling. */
  readonly door: Door | null;
  /** Null while messages come in and are taken; else why not. */
  trouble(): string | null;
}

/** Polls that may fail to be answered before it counts as trouble. Project estimate. */
const MISSED_POLLS = 3;

/** Growers on Telegram. One process may listen for a bot. */
export function telegramChannel(options: TelegramOptions): TelegramChannel {
  const { token, webhook = null, commands, placeLabel, clock, log, time = realTime, callTimes = CALL_TIMES } = options;
  const { calls, polls } = botApi({ token, apiRoot: (options.apiRoot ?? PUBLIC_API_ROOT).replace(/\/+$/u, '') }, callTimes);
  const sender = new Sender({ calls, log, time, placeLabel });
  const door = webhook === null ? null : new WebhookDoor(new URL(webhook.url).pathname, webhook.secret);
  let state: 'not listening' | 'polling' | 'open' = 'not listening';
  let answeredMs = -Infinity;
  let notTaken: string | null = null;

  async function listen(handOver: HandOver, signal: AbortSignal): Promise<void> {
    const patience = { log, time, signal };
    const me = await begin(calls, commands, patience);
    if (me === null) return;
    const receiver = { me, clock, log, handOver, handedOver: (trouble: string | null) => void (notTaken = trouble) };
    try {
      if (door === null || webhook === null) {
        await untilAnswered('deleteWebhook', () => calls.deleteWebhook({}, asStopSignal(signal)), patience);
        [state, answeredMs] = ['polling', time.nowMs()];
        return await poll({ ...receiver, polls, pollS: callTimes.pollS, time, answered: () => void (answeredMs = time.nowMs()) }, signal);
      }
      door.open(receiver);
      const set = await untilAnswered('setWebhook', () => calls.setWebhook(webhook.url, { secret_token: webhook.secret, allowed_updates: WANTED_UPDATES }, asStopSignal(signal)), patience);
      if (set === null) return;
      state = 'open';
      await stopped(signal);
    } finally {
      state = 'not listening';
      await door?.close();
    }
  }

  return {
    name: 'telegram',
    door,
    listen,
    send: (to, message) => sender.send(to, message),
    acknowledge: async (press) => {
      try {
        await calls.answerCallbackQuery(press);
      } catch (error) {
        log.info('telegram does not take the acknowledgement of a button', { cause: callFailure(error).cause });
      }
    },
    trouble: () => {
      if (state === 'not listening') return 'not listening';
      if (notTaken !== null) return `what came in cannot be kept: ${notTaken}`;
      const silentS = Math.round((time.nowMs() - answeredMs) / 1000);
      return state === 'polling' && silentS > MISSED_POLLS * callTimes.pollS ? `no poll answered for ${silentS} s` : null;
    },
  };
}

const stopped = (signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    if (signal.aborted) return resolve();
    signal.addEventListener('abort', () => resolve(), { once: true });
  });
