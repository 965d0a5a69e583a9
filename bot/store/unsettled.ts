import { sql, type Kysely } from 'kysely';
import type { ChatAddress } from '../chat.js';
import type { StoreTables } from './schema.js';

/** Whether a chat has said something that is not answered yet, or a message to it is on its way or may go now. */
export async function isUnsettled(db: Kysely<StoreTables>, address: ChatAddress, nowS: number): Promise<boolean> {
  const said = await db
    .selectFrom('inbound')
    .select('id')
    .where('channel', '=', address.channel)
    .where('chat', '=', address.chat)
    .where('state', '=', sql.lit('open' as const))
    .limit(1)
    .executeTakeFirst();
  if (said) return true;
  const sent = await db
    .selectFrom('outbound as o')
    .innerJoin('chat as c', 'c.id', 'o.chatId')
    .select('o.id')
    .where('c.channel', '=', address.channel)
    .where('c.chat', '=', address.chat)
    .where('o.finishedAtS', 'is', null)
    .where((o) => o.or([o('o.state', '=', sql.lit('sending' as const)), o('o.notBeforeS', '<=', nowS)]))
    .limit(1)
    .executeTakeFirst();
  return sent !== undefined;
}
