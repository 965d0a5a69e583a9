import { createHash } from 'node:crypto';
import type { ChatAddress, Outgoing } from '../../chat.js';

/** More unfinished messages than this are not kept in mind. */
const MOST_MESSAGES = 1_000;

/** Which parts of an unfinished message are out already, so that another try does not repeat them. In memory alone: after a restart it does. */
export class SentParts {
  private readonly sent = new Map<string, readonly string[]>();

  ids(to: ChatAddress, message: Outgoing): readonly string[] {
    return this.sent.get(keyOf(to.chat, message)) ?? [];
  }

  keep(chat: string, message: Outgoing, ids: readonly string[]): void {
    if (ids.length === 0) return;
    this.forget(chat, message);
    this.sent.set(keyOf(chat, message), ids);
    const [oldest] = this.sent.keys();
    if (this.sent.size > MOST_MESSAGES && oldest !== undefined) this.sent.delete(oldest);
  }

  forget(chat: string, message: Outgoing): void {
    this.sent.delete(keyOf(chat, message));
  }
}

const keyOf = (chat: string, message: Outgoing): string => `${chat} ${createHash('sha256').update(JSON.stringify(message)).digest('base64')}`;
