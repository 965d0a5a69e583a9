import { sql, type Kysely, type Selectable } from 'kysely';
import type { Content, Inbound } from '../chat.js';
import type { InboundRow } from '../journal.js';
import type { InboundTable } from './journal-schema.js';
import { epochSeconds, name, rowLimit } from './row-values.js';
import type { StoreTables } from './schema.js';
import { StoreError } from './store-error.js';
import { whole } from './whole.js';

// A literal, not a parameter: only then does the planner take the index over the open rows.
const OPEN = sql.lit('open' as const);
/** All that a finished update leaves: that it was here. What it meant is in the readings and actions. */
const EMPTIED = { chat: '', sender: '', topic: null, content: null, cause: null };

export async function keepInbound(db: Kysely<StoreTables>, inbound: Inbound): Promise<boolean> {
  const added = await db
    .insertInto('inbound')
    .values({
      channel: inbound.channel,
      updateId: name('update', inbound.update),
      chat: name('chat', inbound.chat),
      isGroup: inbound.isGroup ? 1 : 0,
      sender: inbound.sender,
      topic: inbound.topic ?? null,
      receivedAtS: epochSeconds('receivedAtS', inbound.receivedAtS),
      content: JSON.stringify(inbound.content),
      state: 'open',
    })
    .onConflict((conflict) => conflict.columns(['channel', 'updateId']).doNothing())
    .returning('id')
    .executeTakeFirst();
  return added !== undefined;
}

export async function openInbound(db: Kysely<StoreTables>, limit: number): Promise<readonly InboundRow[]> {
  return (await openQuery(db, limit).execute()).map(inboundRow);
}

export function openQuery(db: Kysely<StoreTables>, limit: number) {
  return db
    .selectFrom('inbound as i')
    .selectAll('i')
    .where('i.state', '=', OPEN)
    .where((i) =>
      i.not(
        i.exists(
          i
            .selectFrom('inbound as earlier')
            .select('earlier.id')
            .whereRef('earlier.channel', '=', 'i.channel')
            .whereRef('earlier.chat', '=', 'i.chat')
            .where('earlier.state', '=', OPEN)
            .whereRef('earlier.id', '<', 'i.id'),
        ),
      ),
    )
    .orderBy('i.id')
    .limit(rowLimit(limit));
}

/** Refused for one that is finished: what is written with it in one go would be written twice. */
export async function finishInbound(db: Kysely<StoreTables>, id: number, outcome: 'done' | 'parked', atS: number): Promise<void> {
  const finished = await db
    .updateTable('inbound')
    .set({ state: outcome, finishedAtS: epochSeconds('atS', atS), ...(outcome === 'done' ? EMPTIED : {}) })
    .where('id', '=', id)
    .where('state', '=', 'open')
    .returning('id')
    .executeTakeFirst();
  if (!finished) throw notOpen(id, 'finish');
}

export function failInbound(db: Kysely<StoreTables>, id: number, cause: string): Promise<number> {
  return whole(db, async (db) => {
    const failed = await db
      .updateTable('inbound')
      .set(({ eb }) => ({ attempts: eb('attempts', '+', 1), cause }))
      .where('id', '=', id)
      .where('state', '=', 'open')
      .returning('attempts')
      .executeTakeFirst();
    if (!failed) throw notOpen(id, 'count a failure of');
    return failed.attempts;
  });
}

/** Empties what was parked from an address; what is still open is answered first, and emptied when it is done. */
export async function emptyParked(db: Kysely<StoreTables>, { channel, chat }: Pick<Inbound, 'channel' | 'chat'>): Promise<void> {
  await db.updateTable('inbound').set(EMPTIED).where('state', '=', 'parked').where('channel', '=', channel).where('chat', '=', chat).execute();
}

/** Empties what was parked and finished before `emptyBeforeS`; forgets ids of what was finished before `forgetBeforeS`. */
export async function purgeInbound(db: Kysely<StoreTables>, { emptyBeforeS, forgetBeforeS }: { readonly emptyBeforeS: number; readonly forgetBeforeS: number }): Promise<void> {
  await db.deleteFrom('inbound').where('finishedAtS', '<', forgetBeforeS).execute();
  await db.updateTable('inbound').set(EMPTIED).where('finishedAtS', '<', emptyBeforeS).where('content', 'is not', null).execute();
}

const notOpen = (id: number, verb: string): StoreError =>
  new StoreError('not-open', `Cannot ${verb} update ${id}: expected one that is open, got one that is finished or not there. Take the id from openInbound().`);

const inboundRow = (row: Selectable<InboundTable>): InboundRow => ({
  id: row.id,
  channel: row.channel,
  chat: row.chat,
  update: row.updateId,
  isGroup: row.isGroup === 1,
  sender: row.sender,
  ...(row.topic === null ? {} : { topic: row.topic }),
  receivedAtS: row.receivedAtS,
  content: JSON.parse(row.content!) as Content,
  attempts: row.attempts,
});
