import { setTimeout as sleepMs } from 'node:timers/promises';
import { CROP_WORDS, prepareAnswer, prepareIntent, type ReadyAnswer } from '../conversation.js';
import { readAdvisoryButton } from '../features/evening/advisory-message.js';
import type { WorkOut } from '../features/evening/work-out-evening.js';
import type { WorkOutWeek } from '../features/outlook/work-out-week.js';
import type { DrawNights } from '../features/record/nights-picture.js';
import type { Outgoing } from '../chat.js';
import type { InboundRow, Memory, StoredChat } from '../journal.js';
import type { Clock, Log, WeatherSource } from '../ports.js';
import { inPlaceOf, keyOfMessage, toldBy } from './edited.js';
import { movingTheDay } from '../schedule/moved-day.js';
import { understand } from '../language/understand.js';
import { isPassing } from '../store/store-error.js';
import { localTime } from '../text/local-time.js';
import { CHAT_WORDS } from '../text/chat-words.js';
import { SMALL_TALK_HELLO, smallTalk } from '../text/small-talk.js';
import { accountReply, keptAfterAll, notErased } from './account-reply.js';
import type { Describe, Handled } from './handled.js';
import { besideQuestion, besideReadings, readingReply, recordsBeside } from './reading-reply.js';
import { subjectOf } from './subject.js';

export interface InboundPorts {
  readonly memory: Memory;
  readonly weather: WeatherSource;
  readonly workOut: WorkOut;
  readonly workOutWeek: WorkOutWeek;
  readonly drawNights?: DrawNights;
  readonly clock: Clock;
  readonly log: Log;
  readonly describe: Describe;
  readonly acknowledge: (row: InboundRow) => Promise<void>;
  readonly count: (event: 'inbound-done' | 'inbound-failed' | 'inbound-parked') => void;
}

/** An update that fails this often is set aside, with a word to the grower, so that it holds nobody up. */
const MOST_ATTEMPTS = 3;
/** An answer is of no use a day later. */
const USEFUL_S = 86_400;
const BATCH = 20;
/** An update that could not be handled for want of a disk waits so long. Project estimate. */
const AFTER_FAILURE_MS = 1_000;
/** Answers go before what comes unasked: somebody waits for them. */
const FIRST_OF_ALL = 0;

/** Answers what came in, one chat after the other; returns how many updates ended. */
export async function handleOpen(ports: InboundPorts): Promise<number> {
  const open = await ports.memory.openInbound(BATCH);
  for (const row of open) await handleOne(row, ports);
  return open.length;
}

/** Answers many chats at a time, each chat's messages one after the other: whoever asks for a night holds up nobody who sends a reading. */
export interface Reception {
  /** Begins what is open, as far as there are hands, and waits for none of it; returns how many were begun. */
  handleOpen(): Promise<number>;
  /** Resolves when nothing is under way any more. */
  idle(): Promise<void>;
}

export function reception(ports: InboundPorts, { signal, ended }: { readonly signal: AbortSignal; readonly ended: () => void }): Reception {
  const underWay = new Map<number, Promise<void>>();
  return {
    async handleOpen() {
      if (underWay.size >= BATCH || signal.aborted) return 0;
      const before = new Set(underWay.keys());
      const open = await ports.memory.openInbound(BATCH + before.size);
      const next = open.filter(({ id }) => !before.has(id)).slice(0, BATCH - before.size);
      for (const row of next) {
        const handling = handleOne(row, ports, signal)
          // A full or held disk: the update is still open, and comes again after a pause.
          .catch(async (error: unknown) => {
            if (signal.aborted) return;
            ports.log.error('an update waits', { error });
            await sleepMs(AFTER_FAILURE_MS, undefined, { signal }).catch(() => undefined);
          })
          .finally(() => {
            underWay.delete(row.id);
            ended();
          });
        underWay.set(row.id, handling);
      }
      return next.length;
    },
    async idle() {
      while (underWay.size > 0) await Promise.all(underWay.values());
    },
  };
}

async function handleOne(row: InboundRow, ports: InboundPorts, signal?: AbortSignal): Promise<void> {
  const { memory, clock, log, count } = ports;
  const chat = await memory.openChat(row, { isGroup: row.isGroup, atS: row.receivedAtS });
  try {
    const handled = await handle(row, chat, ports);
    const isDone = await memory.atomically(async (within) => {
      // Another who shares the greenhouse erased it meanwhile: nothing of it is written any more, and the update is answered anew.
      if ((await within.chatById(chat.id))?.greenhouseId !== chat.greenhouseId) return false;
      const replies = await handled(movingTheDay(toldBy(row, within), clock.nowS()));
      // An erased chat was opened anew: the last word goes to the one that is there.
      const chatId = replies.length === 0 ? chat.id : (await within.openChat(row, { isGroup: row.isGroup, atS: row.receivedAtS })).id;
      for (const [n, message] of replies.entries()) await within.addOutbound({ chatId, key: `reply:${row.channel}:${row.update}:${n}`, message: inItsTopic(message, row), notBeforeS: FIRST_OF_ALL, uselessAfterS: clock.nowS() + USEFUL_S });
      await within.finishInbound(row.id, 'done', clock.nowS());
      return true;
    });
    if (isDone) count('inbound-done');
  } catch (error) {
    // Cut off by the stop, or by a full or held disk: that is no fault of the update.
    if (signal?.aborted || isPassing(error)) throw error;
    log.error('update not handled', { content: row.content.kind, error });
    count('inbound-failed');
    if ((await memory.failInbound(row.id, error instanceof Error ? error.message : String(error))) < MOST_ATTEMPTS) return;
    await memory.atomically(async (within) => {
      await within.addOutbound({ chatId: chat.id, key: `reply:${row.channel}:${row.update}:parked`, message: inItsTopic({ text: CHAT_WORDS.parked }, row), notBeforeS: FIRST_OF_ALL, uselessAfterS: clock.nowS() + USEFUL_S });
      await within.finishInbound(row.id, 'parked', clock.nowS());
    });
    count('inbound-parked');
  }
}

const inItsTopic = (message: Outgoing, { topic }: InboundRow): Outgoing => (topic === undefined ? message : { ...message, topic });

const saying = (text: string): Handled => () => Promise.resolve([{ text }]);

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
        return [];
      };
    case 'other':
      return reachableAgain(chat, saying(CHAT_WORDS.cannotRead(content.what)));
    case 'text':
      if (content.forwarded) return reachableAgain(chat, saying(CHAT_WORDS.forwarded));
      break;
    case 'press':
      await ports.acknowledge(row);
      break;
    default:
      break;
  }
  return reachableAgain(chat, await answerTo(row, chat, ports));
}

/** Whoever writes can be written to again. */
const reachableAgain =
  (chat: StoredChat, answer: Handled): Handled =>
  async (memory) => {
    if (!chat.reachable) await memory.updateChat(chat.id, { reachable: true });
    return answer(memory);
  };

const changing =
  (chat: StoredChat, change: { reachable: boolean }): Handled =>
  async (memory) => {
    await memory.updateChat(chat.id, change);
    return [];
  };

async function answerTo(row: InboundRow, inTheMiddle: StoredChat, ports: InboundPorts): Promise<Handled> {
  const answered = await readingReply(row, inTheMiddle, ports);
  if (answered) return answered;
  const chat = besideReadings(inTheMiddle);
  const goesOn = notErased(row, chat);
  if (goesOn) return keptAfterAll(goesOn, await answerTo(row, goesOn, ports));
  const account = accountReply(row, chat, ports);
  if (account) return account;
  // Whatever a chat is in the middle of, but for what accountReply knows, is the description of its greenhouse.
  const described = chat.greenhouseId === null || chat.dialogue !== null ? await ports.describe.next(row, chat) : null;
  if (described) return besideQuestion(inTheMiddle, described)!;
  const subject = chat.greenhouseId === null ? null : await subjectOf(chat.greenhouseId, ports.memory);
  if (chat.greenhouseId === null || !subject) return (await ports.describe.next(row, { ...chat, greenhouseId: null, dialogue: null })) ?? saying(CHAT_WORDS.nothingToShare);
  const { content } = row;
  const said = { greenhouseId: chat.greenhouseId, receivedAtS: row.receivedAtS };
  const conversation = { ...ports, store: ports.memory };
  switch (content.kind) {
    case 'text':
      // In a group thanks need no answer.
      if (inTheMiddle.isGroup && isSmallTalk(content.text, row.receivedAtS)) return () => Promise.resolve([]);
      return besideQuestion(inTheMiddle, await ports.describe.change(content.text, chat)) ?? asHandled(await prepareAnswer({ ...said, text: content.text }, subject, conversation), inTheMiddle);
    case 'edited': {
      const before = await ports.memory.toldIn(chat.greenhouseId, keyOfMessage(row, content.message));
      // It is read as it would have been when it was first sent.
      const receivedAtS = Math.min(row.receivedAtS, ...before.map((told) => told.receivedAtS));
      const describesHouse = (await ports.describe.change(content.text, chat)) !== null;
      if (describesHouse && before.length === 0) return saying(CHAT_WORDS.editChangesNoHouse);
      const answer = inPlaceOf(before, row.receivedAtS, asHandled(await prepareAnswer({ ...said, receivedAtS, text: content.text }, subject, conversation), inTheMiddle));
      return describesHouse ? async (memory) => [...(await answer(memory)), { text: CHAT_WORDS.editChangesNoHouse }] : answer;
    }
    case 'photo':
      return content.caption === null ? saying(CHAT_WORDS.photo) : asHandled(await prepareAnswer({ ...said, text: content.caption }, subject, conversation), inTheMiddle);
    case 'press': {
      const pressed = readAdvisoryButton(content.button);
      if (!pressed) return (await ports.describe.next(row, chat)) ?? saying(CHAT_WORDS.oldButton);
      const tonight = localTime(subject.zone).date(ports.clock.nowS());
      if (pressed.button !== 'why' && pressed.night < previousDate(tonight)) return saying(CHAT_WORDS.oldButton);
      const meaning = pressed.button === 'did' ? { kind: 'did' as const } : pressed.button === 'not' ? { kind: 'did' as const, done: [] } : { kind: 'why' as const };
      return asHandled(await prepareIntent(meaning, { ...said, text: CHAT_WORDS.pressed(pressed.button) }, subject, conversation), inTheMiddle);
    }
    case 'location':
      return (await ports.describe.next(row, chat)) ?? saying(CHAT_WORDS.cannotRead('place'));
    default:
      return saying(CHAT_WORDS.cannotRead(content.kind));
  }
}

const isSmallTalk = (text: string, atS: number): boolean => understand({ text, atS, zone: 'UTC', units: 'C', crops: CROP_WORDS }).kind === 'chat' && smallTalk(text) !== SMALL_TALK_HELLO;

const previousDate = (date: string): string => new Date(Date.parse(`${date}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);

const asHandled =
  (ready: ReadyAnswer, chat: StoredChat): Handled =>
  async (memory) => [await ready(recordsBeside(memory, chat))];
