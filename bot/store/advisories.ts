import { sql, type Kysely } from 'kysely';
import type { Store, StoredAdvisory } from '../ports.js';
import { epochSeconds, name, rowLimit } from './row-values.js';
import type { StoreTables } from './schema.js';

export function addAdvisory(db: Kysely<StoreTables>, row: Parameters<Store['addAdvisory']>[0]): Promise<StoredAdvisory> {
  return db
    .insertInto('advisory')
    .values({
      greenhouseId: name('greenhouseId', row.greenhouseId),
      night: name('night', row.night),
      issuedAtS: epochSeconds('issuedAtS', row.issuedAtS),
      body: row.body,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
}

export async function lastAdvisory(db: Kysely<StoreTables>, greenhouseId: string): Promise<StoredAdvisory | null> {
  const latest = await db
    .selectFrom('advisory')
    .selectAll()
    .where('greenhouseId', '=', greenhouseId)
    .orderBy('issuedAtS', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return latest ?? null;
}

export async function advisoryFor(db: Kysely<StoreTables>, greenhouseId: string, night: string): Promise<StoredAdvisory | null> {
  const latest = await db
    .selectFrom('advisory')
    .selectAll()
    .where('greenhouseId', '=', greenhouseId)
    .where('night', '=', night)
    .orderBy('issuedAtS', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return latest ?? null;
}

export async function advisoryBy(db: Kysely<StoreTables>, greenhouseId: string, night: string, atS: number): Promise<StoredAdvisory | null> {
  const latest = await db
    .selectFrom('advisory')
    .selectAll()
    .where('greenhouseId', '=', greenhouseId)
    .where('issuedAtS', '<=', atS)
    .where('night', '=', night)
    .orderBy('issuedAtS', 'desc')
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return latest ?? null;
}

export async function advisoriesAfter(db: Kysely<StoreTables>, greenhouseId: string, after: Parameters<Store['advisoriesAfter']>[1], limit: number): Promise<readonly StoredAdvisory[]> {
  return db
    .selectFrom('advisory')
    .selectAll()
    .where('greenhouseId', '=', greenhouseId)
    .$if(after !== null, (query) => query.where(sql<boolean>`(issued_at_s, id) > (${after?.issuedAtS}, ${after?.id})`))
    .orderBy('issuedAtS')
    .orderBy('id')
    .limit(rowLimit(limit))
    .execute();
}
