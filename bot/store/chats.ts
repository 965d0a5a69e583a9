import type { Kysely, Selectable } from 'kysely';
import { randomUUID } from 'node:crypto';
import type { ChannelName, ChatAddress } from '../chat.js';
import type { Journal, StoredChat } from '../journal.js';
import type { ChatTable } from './journal-schema.js';
import { epochSeconds, name, rowLimit } from './row-values.js';
import type { StoreTables } from './schema.js';
import { StoreError } from './store-error.js';
import { whole } from './whole.js';

const REACHABLE = 1;

export async function chat(db: Kysely<StoreTables>, { channel, chat }: ChatAddress): Promise<StoredChat | null> {
  const row = await db.selectFrom('chat').selectAll().where('channel', '=', channel).where('chat', '=', chat).executeTakeFirst();
  return row ? stored(row) : null;
}

export async function chatById(db: Kysely<StoreTables>, id: string): Promise<StoredChat | null> {
  const row = await db.selectFrom('chat').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? stored(row) : null;
}

export async function knownChat(db: Kysely<StoreTables>, id: string): Promise<StoredChat> {
  const known = await chatById(db, id);
  if (known) return known;
  throw new StoreError('no-such-chat', `There is no chat ${JSON.stringify(id)}: expected the id of a stored chat, got one that is not there, or was erased meanwhile. Take the id from chat() or openChat().`);
}

export function openChat(db: Kysely<StoreTables>, address: ChatAddress, more: Parameters<Journal['openChat']>[1]): Promise<StoredChat> {
  return whole(db, async (db) => {
    const row: Selectable<ChatTable> = {
      id: randomUUID(),
      channel: address.channel,
      chat: name('chat', address.chat),
      greenhouseId: null,
      isGroup: more.isGroup ? 1 : 0,
      since: epochSeconds('since', more.atS),
      paused: 0,
      reachable: REACHABLE,
      dialogue: null,
    };
    const added = await db.insertInto('chat').values(row).onConflict((conflict) => conflict.columns(['channel', 'chat']).doNothing()).returningAll().executeTakeFirst();
    return added ? stored(added) : (await chat(db, address))!;
  });
}

export function updateChat(db: Kysely<StoreTables>, id: string, change: Parameters<Journal['updateChat']>[1]): Promise<void> {
  return whole(db, async (db) => {
    const now = { ...(await knownChat(db, id)), ...change };
    await db
      .updateTable('chat')
      .set({ greenhouseId: now.greenhouseId, paused: now.paused ? 1 : 0, reachable: now.reachable ? REACHABLE : 0, dialogue: now.dialogue })
      .where('id', '=', id)
      .execute();
  });
}

export async function chatsOf(db: Kysely<StoreTables>, greenhouseId: string): Promise<readonly StoredChat[]> {
  const rows = await db.selectFrom('chat').selectAll().where('greenhouseId', '=', greenhouseId).orderBy('since').orderBy('id').execute();
  return rows.map(stored);
}

export async function chatsAfter(db: Kysely<StoreTables>, id: string | null, limit: number): Promise<readonly StoredChat[]> {
  const rows = await db
    .selectFrom('chat')
    .selectAll()
    .where('id', '>', id ?? '')
    .where('greenhouseId', 'is not', null)
    .orderBy('id')
    .limit(rowLimit(limit))
    .execute();
  return rows.map(stored);
}

export async function channelsInUse(db: Kysely<StoreTables>): Promise<readonly ChannelName[]> {
  const rows = await db.selectFrom('chat').select('channel').distinct().orderBy('channel').execute();
  return rows.map(({ channel }) => channel);
}

export const stored = (row: Selectable<ChatTable>): StoredChat => ({ ...row, isGroup: row.isGroup === 1, paused: row.paused === 1, reachable: row.reachable === REACHABLE });
