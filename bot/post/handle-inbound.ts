import type { Outgoing } from '../chat.js';
import { prepareAnswer, prepareIntent, type ReadyAnswer } from '../conversation.js';
import { readAdvisoryButton } from '../features/evening/advisory-message.js';
import type { WorkOut } from '../features/evening/work-out-evening.js';
import type { InboundRow, Memory, StoredChat } from '../journal.js';
import type { Clock, Log, WeatherSource } from '../ports.js';
import { localTime } from '../text/local-time.js';
import { CHAT_WORDS } from '../text/chat-words.js';
import { describeReply, isDescribing, type DescribePorts } from './describe-reply.js';
import { accountReply } from './account-reply.js';
import { subjectOf } from './subject.js';

export interface InboundPorts extends DescribePorts {
  readonly memory: Memory;
  readonly weather: WeatherSource;
  readonly workOut: WorkOut;
  readonly clock: Clock;
  readonly log: Log;
  readonly acknowledge: (row: InboundRow) => Promise<void>;
  readonly count: (event: 'inbound-done' | 'inbound-failed' | 'inbound-parked') => void;
}

/** What is written with an answer, and the answer itself; null where nothing is to be said. */
export type Handled = (memory: Parameters<Parameters<Memory['atomically']>[0]>[0]) => Promise<Outgoing | null>;

/** An update that fails this often is set aside, with a word to the grower, so that it holds nobody up. */
const MOST_ATTEMPTS = 3;
/** An answer is of no use a day later. */
const USEFUL_S = 86_400;
const BATCH = 20;

/** Answers what came in, chat by chat in order; returns how many updates ended. */
export async function handleOpen(ports: InboundPorts): Promise<number> {
  const open = await ports.memory.openInbound(BATCH);
  for (const row of open) await handleOne(row, ports);
  return open.length;
}

async function handleOne(row: InboundRow, ports: InboundPorts): Promise<void> {
  const { memory, clock, log, count } = ports;
  const chat = await memory.openChat(row, { isGroup: row.isGroup, atS: row.receivedAtS });
  try {
    const handled = await handle(row, chat, ports);
    await memory.atomically(async (within) => {
      const reply = await handled(within);
      if (reply) await within.addOutbound({ chatId: chat.id, key: `reply:${row.channel}:${row.update}`, message: reply, notBeforeS: clock.nowS(), uselessAfterS: clock.nowS() + USEFUL_S });
      await within.finishInbound(row.id, 'done', clock.nowS());
    });
    count('inbound-done');
  } catch (error) {
    log.error('update not handled', { content: row.content.kind, error });
    count('inbound-failed');
    if ((await memory.failInbound(row.id, error instanceof Error ? error.message : String(error))) < MOST_ATTEMPTS) return;
    await memory.atomically(async (within) => {
      await within.addOutbound({ chatId: chat.id, key: `reply:${row.channel}:${row.update}`, message: { text: CHAT_WORDS.parked }, notBeforeS: clock.nowS(), uselessAfterS: clock.nowS() + USEFUL_S });
      await within.finishInbound(row.id, 'parked', clock.nowS());
    });
    count('inbound-parked');
  }
}

const saying = (text: string): Handled => () => Promise.resolve({ text });

async function handle(row: InboundRow, chat: StoredChat, ports: InboundPorts): Promise<Handled> {
  const { content } = row;
  switch (content.kind) {
    case 'blocked':
      return changing(chat, { reachable: false });
    case 'unblocked':
      return changing(chat, { reachable: true });
    case 'moved':
      return async (memory) => {
        await memory.moveChat(chat.id, content.to);
        return null;
      };
    case 'other':
      return saying(CHAT_WORDS.cannotRead(content.what));
    case 'text':
      if (content.forwarded) return saying(CHAT_WORDS.forwarded);
      break;
    case 'press':
      await ports.acknowledge(row);
      break;
    default:
      break;
  }
  const reachable: Handled = async (memory) => {
    // Whoever writes can be written to again.
    if (!chat.reachable) await memory.updateChat(chat.id, { reachable: true });
    return null;
  };
  const answer = await answerTo(row, chat, ports);
  return async (memory) => {
    await reachable(memory);
    return answer(memory);
  };
}

const changing =
  (chat: StoredChat, change: { reachable: boolean }): Handled =>
  async (memory) => {
    await memory.updateChat(chat.id, change);
    return null;
  };

async function answerTo(row: InboundRow, chat: StoredChat, ports: InboundPorts): Promise<Handled> {
  const account = await accountReply(row, chat, ports);
  if (account) return account;
  if (chat.greenhouseId === null || isDescribing(chat)) return describeReply(row, chat, ports);
  const subject = await subjectOf(chat.greenhouseId, ports.memory);
  if (!subject) return describeReply(row, { ...chat, greenhouseId: null }, ports);
  const { content } = row;
  const said = { greenhouseId: chat.greenhouseId, receivedAtS: row.receivedAtS };
  const conversation = { ...ports, store: ports.memory };
  switch (content.kind) {
    case 'text':
      return (await changeByWords(row, chat, ports)) ?? asHandled(await prepareAnswer({ ...said, text: content.text }, subject, conversation));
    case 'edited':
      return asHandled(await prepareAnswer({ ...said, text: content.text }, subject, conversation));
    case 'photo':
      return content.caption === null ? saying(CHAT_WORDS.photo) : asHandled(await prepareAnswer({ ...said, text: content.caption }, subject, conversation));
    case 'press': {
      const pressed = readAdvisoryButton(content.button);
      if (!pressed) return describeReply(row, chat, ports);
      const tonight = localTime(subject.zone).date(ports.clock.nowS());
      if (pressed.button !== 'why' && pressed.night < previousDate(tonight)) return saying(CHAT_WORDS.oldButton);
      const meaning = pressed.button === 'did' ? { kind: 'did' as const } : pressed.button === 'not' ? { kind: 'did' as const, done: [] } : { kind: 'why' as const };
      return asHandled(await prepareIntent(meaning, { ...said, text: CHAT_WORDS.pressed(pressed.button) }, subject, conversation));
    }
    case 'location':
      return describeReply(row, chat, ports);
    default:
      return saying(CHAT_WORDS.cannotRead(content.kind));
  }
}

const previousDate = (date: string): string => new Date(Date.parse(`${date}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);

const asHandled =
  (ready: ReadyAnswer): Handled =>
  (memory) =>
    ready(memory);

/** "The tunnel is 10 feet tall": a change of the greenhouse in plain words; null when the text is none. */
async function changeByWords(row: InboundRow, chat: StoredChat, ports: InboundPorts): Promise<Handled | null> {
  return ports.changeByWords ? ports.changeByWords(row, chat) : null;
}
