import type { Channel, ChannelName, SendResult } from '../chat.js';
import type { Memory, OutboundRow } from '../journal.js';
import type { Clock, Log } from '../ports.js';

export interface SendPorts {
  readonly memory: Memory;
  readonly channels: ReadonlyMap<ChannelName, Channel>;
  readonly clock: Clock;
  readonly log: Log;
  /** Counts for the operator. */
  readonly count: (event: 'sent' | 'later' | 'gone' | 'refused' | 'unknown') => void;
}

/** A send without an answer is tried again after this, doubled each time: it may have arrived, so not at once. */
const FIRST_RETRY_S = 15;
const LONGEST_RETRY_S = 900;
/** After so many tries a message is given up. */
const MOST_ATTEMPTS = 30;
const BATCH = 50;

/** Sends what is due, chat by chat in order; returns how many messages were tried. */
export async function sendDue(ports: SendPorts): Promise<number> {
  const due = await ports.memory.dueOutbound(ports.clock.nowS(), BATCH);
  // One that fails (erased in between, a full disk) must not end the others: it is due again.
  await Promise.all(due.map((row) => sendOne(row, ports).catch((error: unknown) => ports.log.error('send failed', { error }))));
  return due.length;
}

async function sendOne(row: OutboundRow, ports: SendPorts): Promise<void> {
  const { memory, clock, log } = ports;
  const chat = await memory.chatById(row.chatId);
  const channel = chat ? ports.channels.get(chat.channel) : undefined;
  if (!chat || !channel) return memory.endSend(row.id, { state: 'dropped', cause: 'no such chat' }, clock.nowS());
  await memory.beginSend(row.id, clock.nowS());
  const result = await channel.send(chat, row.message).catch((error: unknown): SendResult => ({ kind: 'unknown', cause: error instanceof Error ? error.message : String(error) }));
  await settle(row, result, ports);
  if (result.kind !== 'sent') log.warn('message not sent', { outcome: result.kind, cause: 'cause' in result ? result.cause : undefined, attempts: row.attempts + 1 });
}

/** What becomes of a message after a try. */
async function settle(row: OutboundRow, result: SendResult, { memory, clock, count }: SendPorts): Promise<void> {
  const atS = clock.nowS();
  if (result.kind !== 'moved') count(result.kind);
  switch (result.kind) {
    case 'sent':
      return memory.endSend(row.id, { state: 'sent', sentAs: result.message }, atS);
    case 'gone':
      await memory.updateChat(row.chatId, { reachable: false });
      return memory.endSend(row.id, { state: 'dropped', cause: result.cause }, atS);
    case 'moved':
      await memory.moveChat(row.chatId, result.to);
      return memory.endSend(row.id, { state: 'waiting', notBeforeS: atS }, atS);
    case 'refused':
      return memory.endSend(row.id, { state: 'dropped', cause: result.cause }, atS);
    case 'later':
      return memory.endSend(row.id, { state: 'waiting', notBeforeS: atS + result.afterS }, atS);
    case 'unknown':
      if (row.attempts + 1 >= MOST_ATTEMPTS) return memory.endSend(row.id, { state: 'dropped', cause: result.cause }, atS);
      return memory.endSend(row.id, { state: 'waiting', notBeforeS: atS + Math.min(LONGEST_RETRY_S, FIRST_RETRY_S * 2 ** row.attempts) }, atS);
  }
}
