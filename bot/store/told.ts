import type { Kysely } from 'kysely';
import type { Store, StoredMark, StoredOutcome, Told } from '../ports.js';
import { epochSeconds, name, rowLimit } from './row-values.js';
import type { StoreTables } from './schema.js';

/** How a crop came through a night. */
export async function addOutcome(db: Kysely<StoreTables>, row: Parameters<Store['addOutcome']>[0]): Promise<StoredOutcome> {
  const { id } = await db
    .insertInto('outcome')
    .values({ ...row, greenhouseId: name('greenhouseId', row.greenhouseId), receivedAtS: epochSeconds('receivedAtS', row.receivedAtS), night: name('night', row.night), crop: name('crop', row.crop) })
    .returning('id')
    .executeTakeFirstOrThrow();
  return { ...row, id };
}

export async function outcomes(db: Kysely<StoreTables>, greenhouseId: string, limit: number): Promise<readonly StoredOutcome[]> {
  return db
    .selectFrom('outcome')
    .select(['id', 'greenhouseId', 'receivedAtS', 'night', 'crop', 'bed', 'state', 'text'])
    .where('greenhouseId', '=', greenhouseId)
    .where('withdrawnAtS', 'is', null)
    .orderBy('receivedAtS', 'desc')
    .orderBy('id', 'desc')
    .limit(rowLimit(limit))
    .execute();
}

/** A lasting change of the house. */
export async function addMark(db: Kysely<StoreTables>, row: Parameters<Store['addMark']>[0]): Promise<StoredMark> {
  const { id } = await db
    .insertInto('mark')
    .values({ ...row, greenhouseId: name('greenhouseId', row.greenhouseId), receivedAtS: epochSeconds('receivedAtS', row.receivedAtS), changedAtS: epochSeconds('changedAtS', row.changedAtS), counted: row.counted ? 1 : 0 })
    .returning('id')
    .executeTakeFirstOrThrow();
  return { ...row, id };
}

export async function marks(db: Kysely<StoreTables>, greenhouseId: string, limit: number): Promise<readonly StoredMark[]> {
  const rows = await db
    .selectFrom('mark')
    .select(['id', 'greenhouseId', 'receivedAtS', 'changedAtS', 'body', 'counted', 'text'])
    .where('greenhouseId', '=', greenhouseId)
    .where('withdrawnAtS', 'is', null)
    .orderBy('receivedAtS', 'desc')
    .orderBy('id', 'desc')
    .limit(rowLimit(limit))
    .execute();
  return rows.map((row) => ({ ...row, counted: row.counted === 1 }));
}

/** The row stays, marked; one that was taken back already stays as it was. */
export async function withdrawTold(db: Kysely<StoreTables>, { of, id }: Told, withdrawnAtS: number): Promise<void> {
  await db.updateTable(of).set({ withdrawnAtS: epochSeconds('withdrawnAtS', withdrawnAtS) }).where('id', '=', id).where('withdrawnAtS', 'is', null).execute();
}
