import type { Message } from 'grammy/types';
import type { Me } from './begin.js';

const COMMAND = /^\/(?<name>[a-z0-9_]{1,32})(?:@(?<bot>\w+))?(?=\s|$)/iu;

const mentionOf = (me: Me): RegExp => new RegExp(`\\s*(?<![\\w@])@${me.username}(?!\\w)\\s*`, 'giu');
const isOurName = (name: string, me: Me): boolean => name.toLowerCase() === me.username.toLowerCase();

/** In a group only what is meant for us: a command, our name, or an answer to a message of ours. The talk of others is none of our business. */
export function isSaidToUs(message: Message, me: Me): boolean {
  if (message.chat.type === 'private') return true;
  const words = message.text ?? message.caption ?? '';
  const command = COMMAND.exec(words)?.groups;
  if (command) return command['bot'] === undefined || isOurName(command['bot'], me);
  return message.reply_to_message?.from?.id === me.id || mentionOf(me).test(words);
}

/** What was said, without the signs that Telegram needs: the slash of a command and our name. */
export function plainWords(words: string, me: Me): string {
  return words.replace(COMMAND, '$<name>').replace(mentionOf(me), ' ').trim();
}
