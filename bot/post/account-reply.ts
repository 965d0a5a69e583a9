import { randomInt } from 'node:crypto';
import { CROP_WORDS } from '../conversation.js';
import type { InboundRow, StoredChat, WithinMemory } from '../journal.js';
import type { IntentKind } from '../language/intent.js';
import { understand } from '../language/understand.js';
import { CHAT_WORDS } from '../text/chat-words.js';
import { dateOf } from '../schedule/day-times.js';
import { jobsOfDay } from '../schedule/day-jobs.js';
import { subjectOf } from './subject.js';
import type { Clock, Records } from '../ports.js';
import type { Handled } from './handled.js';

const JOIN = /^(?:join|start)\s+([a-z0-9]{8})$/iu;
const STOP = /^(?:stop|pause|quiet|mute)[.!]?$/iu;
const RESUME = /^(?:start|resume|go on)[.!]?$/iu;
const INVITE = /^(?:invite|share)[.!]?$/iu;
const ERASE = /^(?:erase|forget|delete)(?:\s+(?:me|my data|all|everything))?[.!]?$/iu;
const ERASE_FOR_GOOD = /^erase everything[.!]?$/iu;

/** What account replies need of the world. */
interface AccountPorts {
  readonly clock: Clock;
  readonly memory: Pick<Records, 'greenhouse'>;
}

/** Codes without letters and digits that look alike. */
const CODE_LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789';
const CODE_LENGTH = 8;
const INVITE_VALID_S = 7 * 86_400;
/** The dialogue of a chat whose greenhouse another one erased, until it is told. */
const ERASED_BY_ANOTHER = JSON.stringify({ tells: 'erased' });

/** Asked whether all is to be erased; what the chat was in the middle of before goes on after a no. */
interface EraseDialogue {
  readonly asks: 'erase';
  readonly rest: string | null;
}

function eraseDialogue({ dialogue }: StoredChat): EraseDialogue | null {
  try {
    const found = dialogue === null ? null : (JSON.parse(dialogue) as Partial<EraseDialogue> | null);
    return found?.asks === 'erase' ? { asks: 'erase', rest: found.rest ?? null } : null;
  } catch {
    return null;
  }
}

const newCode = (): string => Array.from({ length: CODE_LENGTH }, () => CODE_LETTERS[randomInt(CODE_LETTERS.length)]).join('');

/** What concerns the chat and not the greenhouse: quiet, sharing, erasing. Null for anything else. */
export function accountReply(row: InboundRow, chat: StoredChat, ports: AccountPorts): Handled | null {
  const text = row.content.kind === 'text' ? row.content.text.trim() : '';
  const code = JOIN.exec(text)?.[1];
  if (code !== undefined) return join(code.toLowerCase(), chat, ports);
  if (chat.dialogue === ERASED_BY_ANOTHER) return setting(chat, { dialogue: null }, CHAT_WORDS.erasedByAnother);
  const erasing = eraseDialogue(chat);
  if (erasing !== null && ERASE_FOR_GOOD.test(text)) return erase(chat, ports);
  if (chat.greenhouseId === null && kindOf(row) === 'erase') return asking('erase', chat);
  if (chat.greenhouseId === null && erasing === null) return INVITE.test(text) ? () => Promise.resolve([{ text: CHAT_WORDS.nothingToShare }]) : null;
  if (STOP.test(text)) return asking('stop', chat);
  if (RESUME.test(text) && chat.paused) return asking('start', chat);
  if (ERASE.test(text)) return asking('erase', chat);
  if (erasing !== null) return setting(chat, { dialogue: erasing.rest }, CHAT_WORDS.eraseKept);
  if (INVITE.test(text) && chat.greenhouseId !== null) return invite(chat.greenhouseId, ports);
  return null;
}

/** What is asked of the chat, done and in words; null where there was nothing to do. */
export async function askedOfChat(asked: 'start' | 'stop' | 'erase', chat: StoredChat, memory: Pick<WithinMemory, 'updateChat'>): Promise<string | null> {
  if (asked === 'erase') {
    if (chat.isGroup) return CHAT_WORDS.eraseInGroup;
    const rest = eraseDialogue(chat)?.rest ?? chat.dialogue;
    await memory.updateChat(chat.id, { dialogue: JSON.stringify({ asks: 'erase', rest } satisfies EraseDialogue) });
    return CHAT_WORDS.eraseAsks;
  }
  if (asked === 'start' && !chat.paused) return null;
  await memory.updateChat(chat.id, { paused: asked === 'stop' });
  return asked === 'stop' ? CHAT_WORDS.paused : CHAT_WORDS.resumed;
}

const asking =
  (asked: 'start' | 'stop' | 'erase', chat: StoredChat): Handled =>
  async (memory) => [{ text: (await askedOfChat(asked, chat, memory))! }];

const setting =
  (chat: StoredChat, change: Partial<Pick<StoredChat, 'paused' | 'dialogue'>>, text: string): Handled =>
  async (memory) => {
    await memory.updateChat(chat.id, change);
    return [{ text }];
  };

/** The chat as a message finds it that speaks of something else than whether all is to be erased: nothing is, and the message still counts. Null for an answer to it, and where it was not asked. */
export function notErased(row: InboundRow, chat: StoredChat): StoredChat | null {
  const erasing = eraseDialogue(chat);
  if (erasing === null) return null;
  const kind = kindOf(row);
  const isAnswer = kind === 'unclear' || kind === 'chat' || kind === 'erase';
  return isAnswer ? null : { ...chat, dialogue: erasing.rest };
}

/** What a message is about, wherever the grower is; null for one without words. */
const kindOf = ({ content, receivedAtS }: InboundRow): IntentKind | null => (content.kind === 'text' ? understand({ text: content.text, atS: receivedAtS, zone: 'UTC', units: 'C', crops: CROP_WORDS }).kind : null);

/** Before the answer to what was said instead. */
export const keptAfterAll =
  (goesOn: StoredChat, answer: Handled): Handled =>
  async (memory) => [...(await setting(goesOn, { dialogue: goesOn.dialogue }, CHAT_WORDS.eraseKept)(memory)), ...(await answer(memory))];

function erase(chat: StoredChat, { clock }: AccountPorts): Handled {
  return async (memory) => {
    const others = chat.greenhouseId === null ? [] : (await memory.chatsOf(chat.greenhouseId)).filter(({ id }) => id !== chat.id);
    if (chat.greenhouseId !== null) await memory.eraseGreenhouse(chat.greenhouseId);
    else await memory.eraseChat(chat.id);
    // The chats went with the greenhouse: a new one carries the last word, and those of the others a word for when they come back.
    await memory.openChat(chat, { isGroup: chat.isGroup, atS: chat.since });
    for (const other of others) {
      const { id } = await memory.openChat(other, { isGroup: other.isGroup, atS: clock.nowS() });
      await memory.updateChat(id, { dialogue: ERASED_BY_ANOTHER });
    }
    return [{ text: CHAT_WORDS.erased }];
  };
}

function invite(greenhouseId: string, { clock }: AccountPorts): Handled {
  return async (memory) => {
    const code = newCode();
    await memory.addInvite({ code, greenhouseId, validUntilS: clock.nowS() + INVITE_VALID_S });
    return [{ text: CHAT_WORDS.invite(code) }];
  };
}

function join(code: string, chat: StoredChat, { clock }: AccountPorts): Handled {
  return async (memory) => {
    const nowS = clock.nowS();
    const greenhouseId = await memory.takeInvite(code, nowS);
    const subject = greenhouseId === null ? null : await subjectOf(greenhouseId, memory);
    if (!subject) return [{ text: CHAT_WORDS.badInvite }];
    await memory.updateChat(chat.id, { greenhouseId: subject.greenhouseId, dialogue: null, paused: false });
    // Nobody is left to hear of the house that the chat had before.
    if (chat.greenhouseId !== null && (await memory.chatsOf(chat.greenhouseId)).length === 0) await memory.cancelJobs(chat.greenhouseId);
    for (const job of jobsOfDay(subject.greenhouseId, subject.greenhouse, subject.zone, dateOf(nowS, subject.zone))) await memory.addJob(job);
    return [{ text: [CHAT_WORDS.joined(subject.greenhouse.name), ...(chat.isGroup ? [CHAT_WORDS.groupReadings] : [])].join('\n') }];
  };
}
