import { sql, type Kysely } from 'kysely';
import type { Tables } from './schema.js';

/**
 * Runs the work in one write transaction. Kysely's own transactions begin deferred, and a read followed by a write can then fail
 * with "busy" half way; this one takes the write lock at once. Resolves after the commit is on disk.
 */
export function writeTx<Result>(db: Kysely<Tables>, work: (tx: Kysely<Tables>) => Promise<Result>): Promise<Result> {
  return db.connection().execute(async (tx) => {
    await sql`begin immediate`.execute(tx);
    try {
      const result = await work(tx);
      await sql`commit`.execute(tx);
      return result;
    } catch (error) {
      // SQLite has already rolled back after some errors (disk full); the first error is the one to tell.
      await sql`rollback`.execute(tx).catch(() => undefined);
      throw error;
    }
  });
}
