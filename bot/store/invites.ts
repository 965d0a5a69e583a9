import type { Kysely } from 'kysely';
import type { Journal } from '../journal.js';
import { epochSeconds, name } from './row-values.js';
import type { StoreTables } from './schema.js';
import { StoreError } from './store-error.js';

export async function addInvite(db: Kysely<StoreTables>, row: Parameters<Journal['addInvite']>[0]): Promise<void> {
  const added = await db
    .insertInto('invite')
    .values({ code: name('code', row.code), greenhouseId: name('greenhouseId', row.greenhouseId), validUntilS: epochSeconds('validUntilS', row.validUntilS) })
    .onConflict((conflict) => conflict.column('code').doNothing())
    .returning('code')
    .executeTakeFirst();
  if (!added) throw new StoreError('known-code', 'Cannot add the invite: expected a new code, got one that is still to be used. Draw another one.');
}

export async function takeInvite(db: Kysely<StoreTables>, code: string, nowS: number): Promise<string | null> {
  const taken = await db.deleteFrom('invite').where('code', '=', code).where('validUntilS', '>=', nowS).returning('greenhouseId').executeTakeFirst();
  return taken?.greenhouseId ?? null;
}
