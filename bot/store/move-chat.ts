import type { Kysely } from 'kysely';
import type { StoredChat } from '../journal.js';
import { chat, chatsOf, knownChat } from './chats.js';
import { cancelJobs } from './jobs.js';
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
    // Two houses met in one chat: nobody is left to hear of the one that was found there.
    if (there && there.greenhouseId !== null && (await chatsOf(db, there.greenhouseId)).length === 0) await cancelJobs(db, there.greenhouseId);
    // What is still to be answered came from the old address, where nobody is any more.
    await db.updateTable('inbound').set({ chat: to }).where('channel', '=', moved.channel).where('chat', '=', moved.chat).where('state', '=', 'open').execute();
  });
}

/** The greenhouse of the moved chat stands, and what is being said of it; the one found there fills in. Nothing unasked if either said so. */
function merged(moved: StoredChat, there: StoredChat) {
  const { greenhouseId, dialogue } = moved.greenhouseId === null && there.greenhouseId !== null ? there : moved;
  return {
    greenhouseId,
    dialogue: dialogue ?? (moved.greenhouseId === null ? there.dialogue : null),
    isGroup: moved.isGroup || there.isGroup ? (1 as const) : (0 as const),
    since: Math.min(moved.since, there.since),
    paused: moved.paused || there.paused ? (1 as const) : (0 as const),
    reachable: moved.reachable || there.reachable ? (1 as const) : (0 as const),
  };
}
