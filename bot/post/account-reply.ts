import { randomInt } from 'node:crypto';
import type { InboundRow, StoredChat } from '../journal.js';
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
const ASKED_TO_ERASE = JSON.stringify({ asks: 'erase' });

const newCode = (): string => Array.from({ length: CODE_LENGTH }, () => CODE_LETTERS[randomInt(CODE_LETTERS.length)]).join('');

/** What concerns the chat and not the greenhouse: quiet, sharing, erasing. Null for anything else. */
export function accountReply(row: InboundRow, chat: StoredChat, ports: AccountPorts): Handled | null {
  if (row.content.kind !== 'text') return null;
  const text = row.content.text.trim();
  const code = JOIN.exec(text)?.[1];
  if (code !== undefined) return join(code.toLowerCase(), chat, ports);
  if (chat.greenhouseId === null) return null;
  const { greenhouseId } = chat;
  if (chat.dialogue === ASKED_TO_ERASE) return answerToErase(text, chat, greenhouseId);
  if (STOP.test(text)) return setting(chat, { paused: true }, CHAT_WORDS.paused);
  if (RESUME.test(text) && chat.paused) return setting(chat, { paused: false }, CHAT_WORDS.resumed);
  if (ERASE.test(text) && !chat.isGroup) return setting(chat, { dialogue: ASKED_TO_ERASE }, CHAT_WORDS.eraseAsks);
  if (INVITE.test(text)) return invite(greenhouseId, ports);
  return null;
}

const setting =
  (chat: StoredChat, change: Partial<Pick<StoredChat, 'paused' | 'dialogue'>>, text: string): Handled =>
  async (memory) => {
    await memory.updateChat(chat.id, change);
    return [{ text }];
  };

function answerToErase(text: string, chat: StoredChat, greenhouseId: string): Handled {
  if (!ERASE_FOR_GOOD.test(text)) return setting(chat, { dialogue: null }, CHAT_WORDS.eraseKept);
  return async (memory) => {
    await memory.eraseGreenhouse(greenhouseId);
    // The chat went with the greenhouse: a new one carries the last word.
    await memory.openChat(chat, { isGroup: chat.isGroup, atS: chat.since });
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
    for (const job of jobsOfDay(subject.greenhouseId, subject.greenhouse, subject.zone, dateOf(nowS, subject.zone))) await memory.addJob(job);
    return [{ text: [CHAT_WORDS.joined(subject.greenhouse.name), ...(chat.isGroup ? [CHAT_WORDS.groupReadings] : [])].join('\n') }];
  };
}
