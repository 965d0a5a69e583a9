import type { Kysely } from 'kysely';
import type { StoredWeather } from '../ports.js';
import { epochSeconds, name } from './row-values.js';
import type { StoreTables } from './schema.js';

export async function saveWeather(db: Kysely<StoreTables>, row: StoredWeather): Promise<void> {
  const values = { issuedAtS: epochSeconds('issuedAtS', row.issuedAtS), body: row.body };
  await db
    .insertInto('weather')
    .values({ placeKey: name('placeKey', row.placeKey), ...values })
    .onConflict((conflict) => conflict.column('placeKey').doUpdateSet(values))
    .execute();
}

export async function lastWeather(db: Kysely<StoreTables>, placeKey: string): Promise<StoredWeather | null> {
  return (await db.selectFrom('weather').selectAll().where('placeKey', '=', placeKey).executeTakeFirst()) ?? null;
}
