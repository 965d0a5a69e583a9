import type { Kysely } from 'kysely';
import type { StoredLearning } from '../ports.js';
import { epochSeconds, name } from './row-values.js';
import type { StoreTables } from './schema.js';

export async function saveLearning(db: Kysely<StoreTables>, row: StoredLearning): Promise<void> {
  const values = { learnedAtS: epochSeconds('learnedAtS', row.learnedAtS), body: row.body };
  await db
    .insertInto('learning')
    .values({ greenhouseId: name('greenhouseId', row.greenhouseId), ...values })
    .onConflict((conflict) => conflict.column('greenhouseId').doUpdateSet(values))
    .execute();
}

export async function learning(db: Kysely<StoreTables>, greenhouseId: string): Promise<StoredLearning | null> {
  return (await db.selectFrom('learning').selectAll().where('greenhouseId', '=', greenhouseId).executeTakeFirst()) ?? null;
}
