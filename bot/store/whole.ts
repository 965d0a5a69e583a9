import { sql, type Kysely } from 'kysely';
import type { StoreTables } from './schema.js';

/** Runs several statements whole or not at all, also inside a transaction that goes on when they fail. */
export async function whole<T>(db: Kysely<StoreTables>, work: (db: Kysely<StoreTables>) => Promise<T>): Promise<T> {
  if (!db.isTransaction) return db.transaction().execute(work);
  await sql`savepoint whole`.execute(db);
  try {
    const result = await work(db);
    await sql`release whole`.execute(db);
    return result;
  } catch (error) {
    // A full disk may have rolled the whole transaction back already: then there is no savepoint any more, and the first error is the one to tell.
    await sql`rollback to whole`.execute(db).then(() => sql`release whole`.execute(db), () => undefined);
    throw error;
  }
}
