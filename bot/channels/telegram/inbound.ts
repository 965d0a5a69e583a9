import type { ChatMember, Message, Update } from 'grammy/types';
import type { Content, Inbound } from '../../chat.js';
import type { Me } from './begin.js';
import { editedContent, messageContent } from './message-content.js';
import { isSaidToUs } from './said-to-us.js';
import { writtenAtS } from './written-at.js';

/** The kinds of updates that we ask the service for. */
export const WANTED_UPDATES = ['message', 'edited_message', 'callback_query', 'my_chat_member'] as const satisfies readonly (keyof Update)[];

interface Heard {
  readonly chat: { readonly id: number; readonly type: string };
  readonly sender: number;
  /** By the service's clock; undefined where it does not say. */
  readonly dateS: number | undefined;
  readonly content: Content | null;
  /** Of a forum, in which topic. */
  readonly topic?: string;
}

/** An update in the product's shape; null for what is not meant for us. */
export function inboundOf(update: Update, me: Me, nowS: number): Inbound | null {
  const heard = heardIn(update, me);
  if (!heard?.content) return null;
  return {
    channel: 'telegram',
    chat: String(heard.chat.id),
    update: String(update.update_id),
    isGroup: heard.chat.type !== 'private',
    sender: String(heard.sender),
    ...(heard.topic === undefined ? {} : { topic: heard.topic }),
    receivedAtS: writtenAtS(heard.dateS, nowS),
    content: heard.content,
  };
}

function heardIn(update: Update, me: Me): Heard | null {
  if (update.message) return inMessage(update.message, me, messageContent);
  if (update.edited_message) return inMessage(update.edited_message, me, editedContent);
  if (update.callback_query) return inPress(update.callback_query);
  if (update.my_chat_member) return inMembership(update.my_chat_member);
  return null;
}

function inMessage(message: Message, me: Me, contentOf: typeof messageContent): Heard | null {
  // Somebody who speaks as the group itself comes as a bot of the service; other bots are not answered, or two bots talk for ever.
  const sender = message.sender_chat?.id ?? (message.from?.is_bot ? undefined : message.from?.id);
  if (message.migrate_to_chat_id === undefined && (sender === undefined || !isSaidToUs(message, me))) return null;
  return { chat: message.chat, sender: sender ?? message.chat.id, dateS: message.edit_date ?? message.date, content: contentOf(message, me), ...inTopic(message) };
}

/** Threads of answers in a group without topics have a number too, which the service does not take back. */
const inTopic = (message: Pick<Message, 'is_topic_message' | 'message_thread_id'>): { readonly topic?: string } =>
  message.is_topic_message && message.message_thread_id !== undefined ? { topic: String(message.message_thread_id) } : {};

/** Buttons of ours always stand under a message and carry data. */
function inPress(press: NonNullable<Update['callback_query']>): Heard | null {
  const { message, data, from, id } = press;
  if (!message || data === undefined) return null;
  return { chat: message.chat, sender: from.id, dateS: undefined, content: { kind: 'press', button: data, message: String(message.message_id), token: id }, ...('is_topic_message' in message ? inTopic(message) : {}) };
}

const isOut = ({ status }: ChatMember): boolean => status === 'kicked' || status === 'left';

function inMembership({ chat, from, date, old_chat_member: before, new_chat_member: now }: NonNullable<Update['my_chat_member']>): Heard | null {
  if (isOut(before) === isOut(now)) return null;
  return { chat, sender: from.id, dateS: date, content: { kind: isOut(now) ? 'blocked' : 'unblocked' } };
}
