import type { Kysely } from 'kysely';
import type { Store, StoredAction } from '../ports.js';
import { epochSeconds, name } from './row-values.js';
import type { StoreTables } from './schema.js';

export async function addAction(db: Kysely<StoreTables>, row: Parameters<Store['addAction']>[0]): Promise<StoredAction> {
  const stored = await db
    .insertInto('action')
    .values({
      greenhouseId: name('greenhouseId', row.greenhouseId),
      receivedAtS: epochSeconds('receivedAtS', row.receivedAtS),
      night: name('night', row.night),
      body: row.body,
      done: row.done ? 1 : 0,
      text: row.text,
      message: row.message ?? null,
    })
    .returning(['id', 'greenhouseId', 'receivedAtS', 'night', 'body', 'done', 'text'])
    .executeTakeFirstOrThrow();
  return { ...stored, done: stored.done === 1 };
}

export async function actions(db: Kysely<StoreTables>, greenhouseId: string, sinceS: number): Promise<readonly StoredAction[]> {
  const rows = await db
    .selectFrom('action')
    .select(['id', 'greenhouseId', 'receivedAtS', 'night', 'body', 'done', 'text'])
    .where('greenhouseId', '=', greenhouseId)
    .where('receivedAtS', '>=', sinceS)
    .where('withdrawnAtS', 'is', null)
    .orderBy('receivedAtS')
    .orderBy('id')
    .execute();
  return rows.map((row) => ({ ...row, done: row.done === 1 }));
}
