import type { Kysely } from 'kysely';
import type { StoredChat } from '../journal.js';
import { chat, knownChat } from './chats.js';
import { name } from './row-values.js';
import type { StoreTables } from './schema.js';
import { whole } from './whole.js';

/** Gives a chat another address; a chat that was opened there meanwhile becomes one with it. */
export function moveChat(db: Kysely<StoreTables>, id: string, to: string): Promise<void> {
  return whole(db, async (db) => {
    const moved = await knownChat(db, id);
    if (moved.chat === name('to', to)) return;
    const there = await chat(db, { channel: moved.channel, chat: to });
    if (there) {
      await db.updateTable('outbound').set({ chatId: id }).where('chatId', '=', there.id).execute();
      await db.deleteFrom('chat').where('id', '=', there.id).execute();
    }
    await db
      .updateTable('chat')
      .set({ chat: to, ...(there ? merged(moved, there) : {}) })
      .where('id', '=', id)
      .execute();
    // What is still to be answered came from the old address, where nobody is any more.
    await db.updateTable('inbound').set({ chat: to }).where('channel', '=', moved.channel).where('chat', '=', moved.chat).where('state', '=', 'open').execute();
  });
}

/** What the moved chat has, stands; the one found there fills in. Nothing unasked if either said so. */
function merged(moved: StoredChat, there: StoredChat) {
  const setsUp = moved.greenhouseId === null;
  return {
    greenhouseId: moved.greenhouseId ?? there.greenhouseId,
    isGroup: moved.isGroup || there.isGroup ? (1 as const) : (0 as const),
    since: Math.min(moved.since, there.since),
    paused: moved.paused || there.paused ? (1 as const) : (0 as const),
    reachable: moved.reachable || there.reachable ? (1 as const) : (0 as const),
    dialogue: moved.dialogue ?? (setsUp ? there.dialogue : null),
  };
}
