import type { Kysely } from 'kysely';
import type { Store, StoredGreenhouse } from '../ports.js';
import { epochSeconds, name } from './row-values.js';
import type { StoreTables } from './schema.js';
import { whole } from './whole.js';

export function saveGreenhouse(db: Kysely<StoreTables>, row: Parameters<Store['saveGreenhouse']>[0]): Promise<StoredGreenhouse> {
  return whole(db, async (db) => {
    const latest = await greenhouse(db, row.id);
    if (latest?.body === row.body) return latest;
    return db
      .insertInto('greenhouse')
      .values({ id: name('id', row.id), version: (latest?.version ?? 0) + 1, body: row.body, savedAtS: epochSeconds('savedAtS', row.savedAtS) })
      .returningAll()
      .executeTakeFirstOrThrow();
  });
}

export async function greenhouse(db: Kysely<StoreTables>, id: string): Promise<StoredGreenhouse | null> {
  const latest = await db.selectFrom('greenhouse').selectAll().where('id', '=', id).orderBy('version', 'desc').limit(1).executeTakeFirst();
  return latest ?? null;
}
