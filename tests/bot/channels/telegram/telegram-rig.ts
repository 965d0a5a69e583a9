import { setTimeout as sleepMs } from 'node:timers/promises';
import { telegramChannel, type TelegramChannel, type TelegramOptions } from '../../../../bot/channels/telegram/channel.js';
import { realTime, type RealTime } from '../../../../bot/channels/telegram/real-time.js';
import type { ChatAddress, Inbound } from '../../../../bot/chat.js';
import { createLog } from '../../../../bot/log.js';
import { startBotApi, type BotApiOptions } from '../../../fixtures/bot-api/server.js';
import type { BotApi } from '../../../fixtures/bot-api/stand-in.js';

/** Time in which waiting costs a thousandth; what was waited for is kept. */
export function hurriedTime(): RealTime & { readonly waitedMs: readonly number[] } {
  const waitedMs: number[] = [];
  return {
    waitedMs,
    nowMs: () => realTime.nowMs(),
    sleepMs: (ms, signal) => {
      waitedMs.push(ms);
      return realTime.sleepMs(ms / 1000, signal);
    },
  };
}

export interface Rig {
  readonly api: BotApi;
  readonly channel: TelegramChannel;
  /** Handed over and taken. */
  readonly taken: readonly Inbound[];
  /** Handed over, taken or not. */
  readonly offered: readonly Inbound[];
  /** Everything that was logged, as lines. */
  readonly logged: readonly string[];
  readonly waitedMs: readonly number[];
  /** What the hand-over does; takes at once unless told otherwise. */
  onHandOver: (inbound: Inbound) => Promise<void>;
  /** Begins to listen; what listen() gives. */
  listen(): Promise<void>;
  stop(): void;
  close(): Promise<void>;
}

export const GROWER = 4001;
export const GROUP = -5001;
export const chatOf = (id: number): ChatAddress => ({ channel: 'telegram', chat: String(id) });

/** The channel beside the stand-in of its service. */
export async function startRig(more: { api?: BotApiOptions; channel?: Partial<TelegramOptions>; over?: BotApi } = {}): Promise<Rig> {
  const api = more.over ?? (await startBotApi(more.api));
  const logged: string[] = [];
  const taken: Inbound[] = [];
  const offered: Inbound[] = [];
  const time = hurriedTime();
  const stop = new AbortController();
  const log = createLog('debug', { write: (line) => void logged.push(line) });
  const channel = telegramChannel({ token: api.token, apiRoot: api.url, commands: [], placeLabel: 'My place', clock: { nowS: api.world.nowS }, log, time, ...more.channel });
  let ended: Promise<void> | undefined;
  const rig: Rig = {
    api,
    channel,
    taken,
    offered,
    logged,
    waitedMs: time.waitedMs,
    onHandOver: () => Promise.resolve(),
    listen: () => {
      ended = channel.listen(async (inbound) => {
        offered.push(inbound);
        await rig.onHandOver(inbound);
        taken.push(inbound);
      }, stop.signal);
      // Tests look at it where they mean to.
      ended.catch(() => undefined);
      return ended;
    },
    stop: () => stop.abort(),
    close: async () => {
      stop.abort();
      await ended?.catch(() => undefined);
      if (more.over === undefined) await api.close();
    },
  };
  return rig;
}

const LONGEST_MS = 20_000;
const LOOK_MS = 5;

/** Waits until it is so; fails with its words when it never is. */
export async function until(what: string, isSo: () => boolean): Promise<void> {
  const endMs = performance.now() + LONGEST_MS;
  while (!isSo()) {
    if (performance.now() > endMs) throw new Error(`waited in vain until ${what}`);
    await sleepMs(LOOK_MS);
  }
}

/** A PNG of so many points, as far as the stand-in looks at it. */
export function pngOf(width: number, height: number): string {
  const bytes = Buffer.alloc(33);
  Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex').copy(bytes);
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes.toString('base64');
}
