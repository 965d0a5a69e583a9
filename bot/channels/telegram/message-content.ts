import type { Message } from 'grammy/types';
import type { Content } from '../../chat.js';
import type { Me } from './begin.js';
import { plainWords } from './said-to-us.js';

/** What people send that the product cannot use, by its name in the Bot API. An animation is also a document: first found, first named. */
const UNUSABLE = ['sticker', 'voice', 'video_note', 'video', 'animation', 'audio', 'document', 'contact', 'poll', 'dice', 'story', 'game', 'checklist', 'paid_media'] as const satisfies readonly (keyof Message)[];

/** What the service tells by itself in a private chat; nobody waits for an answer. In groups such a message is not said to us anyway. */
const NOTICES = ['pinned_message', 'message_auto_delete_timer_changed', 'chat_background_set', 'write_access_allowed', 'users_shared', 'chat_shared', 'migrate_from_chat_id'] as const satisfies readonly (keyof Message)[];

const forwardedFrom = (message: Message): boolean => message.forward_origin !== undefined;

/** A forwarded command is somebody else's words and stays as it is. */
const wordsOf = (message: Message, words: string, me: Me): string => (forwardedFrom(message) ? words : plainWords(words, me));

/** What a new message says; null for a notice of the service. */
export function messageContent(message: Message, me: Me): Content | null {
  if (message.migrate_to_chat_id !== undefined) return { kind: 'moved', to: String(message.migrate_to_chat_id) };
  if (message.text !== undefined) {
    const answered = message.reply_to_message?.from?.id === me.id ? { answers: String(message.reply_to_message.message_id) } : {};
    return { kind: 'text', text: wordsOf(message, message.text, me), forwarded: forwardedFrom(message), ...answered, message: String(message.message_id) };
  }
  // A venue carries its place as a location too.
  if (message.location) return { kind: 'location', latitude: message.location.latitude, longitude: message.location.longitude };
  if (message.photo) return { kind: 'photo', caption: message.caption === undefined ? null : wordsOf(message, message.caption, me) };
  if (NOTICES.some((notice) => message[notice] !== undefined)) return null;
  return { kind: 'other', what: UNUSABLE.find((kind) => message[kind] !== undefined) ?? 'unknown' };
}

/** What an edited message says now; null where no words changed (a live location moves as an edit). */
export function editedContent(message: Message, me: Me): Content | null {
  const words = message.text ?? message.caption;
  return words === undefined ? null : { kind: 'edited', text: wordsOf(message, words, me), message: String(message.message_id) };
}
