import { setTimeout as sleepMs } from 'node:timers/promises';
import type { Channel, ChannelName, SendResult } from '../chat.js';
import type { Memory, OutboundRow } from '../journal.js';
import type { Clock, Log } from '../ports.js';
import { StoreError } from '../store/store-error.js';

export interface SendPorts {
  readonly memory: Memory;
  readonly channels: ReadonlyMap<ChannelName, Channel>;
  readonly clock: Clock;
  readonly log: Log;
  /** Counts for the operator. */
  readonly count: (event: 'sent' | 'later' | 'gone' | 'refused' | 'unknown') => void;
}

/** Sends what waits, many chats at a time, each chat's one after the other. */
export interface Postman {
  /** Begins what is due, as far as there are hands, and waits for none of it; returns how many were begun. */
  sendDue(): Promise<number>;
  /** Resolves when nothing is under way any more. */
  idle(): Promise<void>;
}

export interface PostmanOptions {
  /** From then on nothing is waited for that may take long. */
  readonly signal?: AbortSignal;
  /** Told of each send that ended: its chat may have the next one ready. */
  readonly ended?: () => void;
}

/** Sends under way at once. A slow one takes 20 s until it is given up, so that many growers can be slow before others wait. Project estimate. */
const HANDS = 50;
/** A send without an answer is tried again after this, doubled each time: it may have arrived, so not at once. */
const FIRST_RETRY_S = 15;
const LONGEST_RETRY_S = 900;
/** After so many sends without an answer a message is given up: each of them may have arrived. */
const MOST_UNANSWERED = 30;
/** How a send ended is written again and again until the disk takes it. */
const FIRST_MARK_PAUSE_MS = 250;
const LONGEST_MARK_PAUSE_MS = 30_000;

export function postman(ports: SendPorts, { signal, ended }: PostmanOptions = {}): Postman {
  const { memory, channels, clock, log } = ports;
  const underWay = new Map<number, Promise<void>>();
  /** Those of them that the tray does not know yet: they still look as if they waited. */
  const unmarked = new Set<number>();
  /** Channels whose service asked all of us to wait. */
  const heldUntilS = new Map<ChannelName, number>();
  const unanswered = new Map<number, number>();

  async function send(row: OutboundRow): Promise<void> {
    const chat = await memory.chatById(row.chatId);
    const channel = chat ? channels.get(chat.channel) : undefined;
    if (!chat || !channel) return memory.endSend(row.id, { state: 'dropped', cause: 'no such chat' }, clock.nowS());
    // Asked just before this one had its turn.
    if (isHeld(chat.channel)) return;
    await memory.beginSend(row.id, clock.nowS());
    unmarked.delete(row.id);
    const result = await channel.send(chat, row.message).catch((error: unknown): SendResult => ({ kind: 'unknown', cause: error instanceof Error ? error.message : String(error) }));
    if (result.kind === 'later' && result.scope === 'channel') heldUntilS.set(chat.channel, clock.nowS() + result.afterS);
    if (result.kind !== 'moved') ports.count(result.kind);
    if (result.kind !== 'sent') log.warn('message not sent', { outcome: result.kind, cause: 'cause' in result ? result.cause : undefined, attempts: row.attempts + 1 });
    const unansweredNow = result.kind === 'unknown' ? (unanswered.get(row.id) ?? 0) + 1 : 0;
    unanswered.delete(row.id);
    if (unansweredNow > 0 && unansweredNow < MOST_UNANSWERED) unanswered.set(row.id, unansweredNow);
    await untilKept(() => settle(row, result, unansweredNow, ports));
  }

  const isHeld = (channel: ChannelName): boolean => (heldUntilS.get(channel) ?? -Infinity) > clock.nowS();

  /** What left must not be forgotten because the disk was full or held for a while: it would leave again. */
  async function untilKept(mark: () => Promise<void>): Promise<void> {
    for (let pauseMs = FIRST_MARK_PAUSE_MS; ; pauseMs = Math.min(LONGEST_MARK_PAUSE_MS, pauseMs * 2)) {
      try {
        return await mark();
      } catch (error) {
        log.error('the end of a send cannot be kept', { error });
        if (signal?.aborted) return;
        await sleepMs(pauseMs, undefined, signal ? { signal } : {}).catch(() => undefined);
      }
    }
  }

  return {
    async sendDue() {
      const hands = HANDS - underWay.size;
      if (hands <= 0 || signal?.aborted) return 0;
      // Those that are begun or ended while the tray is looked into may look as if they waited.
      const before = new Set(underWay.keys());
      const due = await memory.dueOutbound(clock.nowS(), hands + unmarked.size, [...heldUntilS.keys()].filter(isHeld));
      const next = due.filter(({ id }) => !before.has(id)).slice(0, hands);
      for (const row of next) {
        // One that fails (erased in between, a full disk) must not end the others: it is due again.
        const sending = send(row)
          .catch((error: unknown) => {
            // It became useless just before its turn.
            if (!(error instanceof StoreError && error.code === 'not-waiting')) log.error('send failed', { error });
          })
          .finally(() => {
            underWay.delete(row.id);
            unmarked.delete(row.id);
            ended?.();
          });
        underWay.set(row.id, sending);
        unmarked.add(row.id);
      }
      return next.length;
    },
    async idle() {
      while (underWay.size > 0) await Promise.all(underWay.values());
    },
  };
}

/** What becomes of a message after a try. */
async function settle(row: OutboundRow, result: SendResult, unanswered: number, { memory, clock }: SendPorts): Promise<void> {
  const atS = clock.nowS();
  const dropped = (cause: string): Promise<void> => memory.endSend(row.id, { state: 'dropped', cause }, atS);
  const again = (afterS: number): Promise<void> => memory.endSend(row.id, { state: 'waiting', notBeforeS: atS + afterS }, atS);
  switch (result.kind) {
    case 'sent':
      return memory.endSend(row.id, { state: 'sent', sentAs: result.message }, atS);
    case 'gone':
      if (await memory.chatById(row.chatId)) await memory.updateChat(row.chatId, { reachable: false });
      // It waits with all others of the chat, in case the grower comes back while it is of use; what has no end would come out of the blue.
      return row.uselessAfterS === null ? dropped(result.cause) : again(0);
    case 'moved':
      if (await memory.chatById(row.chatId)) await memory.moveChat(row.chatId, result.to);
      return again(0);
    case 'refused':
      return dropped(result.cause);
    case 'later':
      return again(result.afterS);
    case 'unknown':
      return unanswered >= MOST_UNANSWERED ? dropped(result.cause) : again(Math.min(LONGEST_RETRY_S, FIRST_RETRY_S * 2 ** (unanswered - 1)));
  }
}
