import { sql, type Kysely } from 'kysely';
import type { Store, StoredMark, StoredOutcome, Told } from '../ports.js';
import { epochSeconds, name, rowLimit } from './row-values.js';
import type { StoreTables } from './schema.js';

/** How a crop came through a night. */
export async function addOutcome(db: Kysely<StoreTables>, { message, ...outcome }: Parameters<Store['addOutcome']>[0]): Promise<StoredOutcome> {
  const { id } = await db
    .insertInto('outcome')
    .values({ ...outcome, message: message ?? null, greenhouseId: name('greenhouseId', outcome.greenhouseId), receivedAtS: epochSeconds('receivedAtS', outcome.receivedAtS), night: name('night', outcome.night), crop: name('crop', outcome.crop) })
    .returning('id')
    .executeTakeFirstOrThrow();
  return { ...outcome, id };
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
export async function addMark(db: Kysely<StoreTables>, { message, ...mark }: Parameters<Store['addMark']>[0]): Promise<StoredMark> {
  const { id } = await db
    .insertInto('mark')
    .values({ ...mark, message: message ?? null, greenhouseId: name('greenhouseId', mark.greenhouseId), receivedAtS: epochSeconds('receivedAtS', mark.receivedAtS), changedAtS: epochSeconds('changedAtS', mark.changedAtS), counted: mark.counted ? 1 : 0 })
    .returning('id')
    .executeTakeFirstOrThrow();
  return { ...mark, id };
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

const TABLES = ['reading', 'action', 'outcome', 'mark'] as const satisfies readonly Told['of'][];

/** What a message told and still stands; a reading that was replaced stands no more. */
export async function toldIn(db: Kysely<StoreTables>, greenhouseId: string, message: string): Promise<readonly (Told & { readonly receivedAtS: number })[]> {
  const found: (Told & { readonly receivedAtS: number })[] = [];
  for (const of of TABLES) {
    const rows = await db
      .selectFrom(of)
      .select(['id', 'receivedAtS'])
      .where('greenhouseId', '=', greenhouseId)
      .where('message', '=', message)
      .where('withdrawnAtS', 'is', null)
      .$if(of === 'reading', (row) => row.where(sql<boolean>`replaced_by is null`))
      .execute();
    found.push(...rows.map(({ id, receivedAtS }) => ({ of, id, receivedAtS })));
  }
  return found;
}

/** The row stays, marked; one that was taken back or replaced already stays as it was. */
export async function withdrawTold(db: Kysely<StoreTables>, { of, id }: Told, withdrawnAtS: number): Promise<void> {
  await db
    .updateTable(of)
    .set({ withdrawnAtS: epochSeconds('withdrawnAtS', withdrawnAtS) })
    .where('id', '=', id)
    .where('withdrawnAtS', 'is', null)
    .$if(of === 'reading', (row) => row.where(sql<boolean>`replaced_by is null`))
    .execute();
}
