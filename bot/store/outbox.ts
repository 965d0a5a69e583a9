import { sql, type Kysely, type Selectable } from 'kysely';
import type { ChannelName, Outgoing } from '../chat.js';
import type { Journal, OutboundRow } from '../journal.js';
import { knownChat } from './chats.js';
import type { OutboundTable } from './journal-schema.js';
import { epochSeconds, name, notEarlierS, rowLimit } from './row-values.js';
import type { StoreTables } from './schema.js';
import { StoreError } from './store-error.js';
import { whole } from './whole.js';

// Literals, not parameters: only then does the planner take the indexes over the unfinished rows.
const WAITING = sql.lit('waiting' as const);
const SENDING = sql.lit('sending' as const);
const USELESS = 'of no use any more';

export function addOutbound(db: Kysely<StoreTables>, row: Parameters<Journal['addOutbound']>[0]): Promise<boolean> {
  return whole(db, async (db) => {
    await knownChat(db, row.chatId);
    const added = await db
      .insertInto('outbound')
      .values({
        chatId: row.chatId,
        key: name('key', row.key),
        message: JSON.stringify(row.message),
        state: 'waiting',
        notBeforeS: notEarlierS('notBeforeS', row.notBeforeS),
        uselessAfterS: row.uselessAfterS === null ? null : notEarlierS('uselessAfterS', row.uselessAfterS),
      })
      .onConflict((conflict) => conflict.column('key').doNothing())
      .returning('id')
      .executeTakeFirst();
    return added !== undefined;
  });
}

export function dueOutbound(db: Kysely<StoreTables>, nowS: number, limit: number, held: readonly ChannelName[] = []): Promise<readonly OutboundRow[]> {
  return whole(db, async (db) => {
    await dropUselessQuery(db, nowS).execute();
    return (await dueOutboundQuery(db, nowS, limit, held).execute()).map((row) => outboundRow(row, row.message!));
  });
}

export function dropUselessQuery(db: Kysely<StoreTables>, nowS: number) {
  return db
    .updateTable('outbound')
    .set({ state: 'dropped', cause: USELESS, finishedAtS: epochSeconds('nowS', nowS) })
    .where('state', '=', WAITING)
    .where('uselessAfterS', '<', nowS);
}

/** Those whose time has come, the longest waiting first; of each chat the earliest added, and none while one before it is being sent or waits to be tried again. */
export function dueOutboundQuery(db: Kysely<StoreTables>, nowS: number, limit: number, held: readonly ChannelName[]) {
  return db
    .selectFrom('outbound as o')
    .selectAll('o')
    .where('o.state', '=', WAITING)
    .where('o.notBeforeS', '<=', nowS)
    .where((o) => o.exists(o.selectFrom('chat').select('chat.id').whereRef('chat.id', '=', 'o.chatId').where('chat.reachable', '=', 1).$if(held.length > 0, (chat) => chat.where('chat.channel', 'not in', held))))
    .where((o) => o.not(o.exists(o.selectFrom('outbound as under').select('under.id').whereRef('under.chatId', '=', 'o.chatId').where('under.state', '=', SENDING))))
    .where((o) =>
      o.not(
        o.exists(
          o
            .selectFrom('outbound as earlier')
            .select('earlier.id')
            .whereRef('earlier.chatId', '=', 'o.chatId')
            .where('earlier.finishedAtS', 'is', null)
            .whereRef('earlier.id', '<', 'o.id')
            .where((earlier) => earlier.or([earlier('earlier.notBeforeS', '<=', nowS), earlier('earlier.attempts', '>', 0)])),
        ),
      ),
    )
    .orderBy('o.notBeforeS')
    .orderBy('o.id')
    .limit(rowLimit(limit));
}

/** Refused for one that does not wait: two senders would send it twice. */
export async function beginSend(db: Kysely<StoreTables>, id: number, atS: number): Promise<void> {
  const begun = await db
    .updateTable('outbound')
    .set(({ eb }) => ({ state: 'sending' as const, attempts: eb('attempts', '+', 1), triedAtS: epochSeconds('atS', atS) }))
    .where('id', '=', id)
    .where('state', '=', 'waiting')
    .returning('id')
    .executeTakeFirst();
  if (!begun) throw new StoreError('not-waiting', `Cannot send message ${id}: expected one that waits, got one that is being sent, sent, dropped or erased. Send nothing, and take the next from dueOutbound().`);
}

export function endSend(db: Kysely<StoreTables>, id: number, outcome: Parameters<Journal['endSend']>[1], atS: number): Promise<void> {
  return whole(db, async (db) => {
    const row = await db.selectFrom('outbound').select('state').where('id', '=', id).executeTakeFirst();
    // Erased while it was on its way: nothing is left to mark.
    if (row === undefined) return;
    const isUnsent = row.state === 'sending' || (row.state === 'waiting' && outcome.state === 'dropped');
    if (!isUnsent) throw new StoreError('not-sending', `Cannot mark message ${id} as ${outcome.state}: expected one that is being sent, got one that is ${row.state}. Call beginSend() first, and end a send once.`);
    await db.updateTable('outbound').set(ended(outcome, epochSeconds('atS', atS))).where('id', '=', id).execute();
  });
}

function ended(outcome: Parameters<Journal['endSend']>[1], atS: number) {
  switch (outcome.state) {
    case 'sent':
      return { state: outcome.state, sentAs: outcome.sentAs, finishedAtS: atS };
    case 'dropped':
      return { state: outcome.state, cause: outcome.cause, finishedAtS: atS };
    case 'waiting':
      return { state: outcome.state, notBeforeS: notEarlierS('notBeforeS', outcome.notBeforeS) };
  }
}

export async function recoverSends(db: Kysely<StoreTables>): Promise<number> {
  const recovered = await db.updateTable('outbound').set({ state: 'waiting' }).where('state', '=', SENDING).returning('id').execute();
  return recovered.length;
}

export async function outboundSentAs(db: Kysely<StoreTables>, chatId: string, sentAs: string): Promise<OutboundRow | null> {
  const row = await db
    .selectFrom('outbound')
    .selectAll()
    .where('chatId', '=', chatId)
    .where('sentAs', '=', sentAs)
    .where('message', 'is not', null)
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row ? outboundRow(row, row.message!) : null;
}

/** Empties what ended before; the keys stay. */
export async function purgeOutbound(db: Kysely<StoreTables>, beforeS: number): Promise<void> {
  await db.updateTable('outbound').set({ message: null, sentAs: null, cause: null }).where('finishedAtS', '<', beforeS).where('message', 'is not', null).execute();
}

const outboundRow = (row: Selectable<OutboundTable>, message: string): OutboundRow => ({
  id: row.id,
  chatId: row.chatId,
  key: row.key,
  message: JSON.parse(message) as Outgoing,
  state: row.state,
  attempts: row.attempts,
  notBeforeS: row.notBeforeS,
  uselessAfterS: row.uselessAfterS,
  sentAs: row.sentAs,
});
