import type { Kysely } from 'kysely';
import type { NewReading, StoredReading } from '../ports.js';
import { epochSeconds, name, rowLimit, temperatureC } from './row-values.js';
import type { StoreTables } from './schema.js';
import { StoreError } from './store-error.js';
import { whole } from './whole.js';

const COLUMNS = ['id', 'greenhouseId', 'receivedAtS', 'validAtS', 'place', 'statistic', 'tempC', 'text', 'judged', 'thermometer', 'replacedBy', 'withdrawnAtS'] as const;

export function addReading(db: Kysely<StoreTables>, row: NewReading): Promise<StoredReading> {
  return db
    .insertInto('reading')
    .values({
      greenhouseId: name('greenhouseId', row.greenhouseId),
      receivedAtS: epochSeconds('receivedAtS', row.receivedAtS),
      validAtS: epochSeconds('validAtS', row.validAtS),
      place: name('place', row.place),
      statistic: row.statistic,
      tempC: temperatureC('tempC', row.tempC),
      text: row.text,
      judged: row.judged ?? 'good',
      thermometer: row.thermometer ?? null,
      message: row.message ?? null,
    })
    .returning(COLUMNS)
    .executeTakeFirstOrThrow();
}

/** Both rows or neither: a crash between them would leave two readings of one thermometer, or none. */
export function replaceReading(db: Kysely<StoreTables>, id: number, replacement: NewReading): Promise<StoredReading> {
  return whole(db, async (db) => {
    const replaced = await standingReading(db, id, 'replace');
    if (replaced.greenhouseId !== replacement.greenhouseId) {
      throw new StoreError(
        'other-greenhouse',
        `Cannot replace reading ${id}: expected a replacement for its own greenhouse, got one for another. Look the reading up by the greenhouse that the message is about.`,
      );
    }
    // Whoever edits the message that was asked about means what has become of it.
    const added = await addReading(db, { ...replacement, message: replacement.message ?? replaced.message });
    await db.updateTable('reading').set({ replacedBy: added.id }).where('id', '=', id).execute();
    return added;
  });
}

export async function withdrawReading(db: Kysely<StoreTables>, id: number, withdrawnAtS: number): Promise<void> {
  await whole(db, async (db) => {
    await standingReading(db, id, 'withdraw');
    await db
      .updateTable('reading')
      .set({ withdrawnAtS: epochSeconds('withdrawnAtS', withdrawnAtS) })
      .where('id', '=', id)
      .execute();
  });
}

/** Newest by receipt, the later stored first among equals: the first is the one that "no, I meant 3" speaks of. */
export async function standingReadings(db: Kysely<StoreTables>, greenhouseId: string, limit: number): Promise<readonly StoredReading[]> {
  return db
    .selectFrom('reading')
    .select(COLUMNS)
    .where('greenhouseId', '=', greenhouseId)
    .where('replacedBy', 'is', null)
    .where('withdrawnAtS', 'is', null)
    .orderBy('receivedAtS', 'desc')
    .orderBy('id', 'desc')
    .limit(rowLimit(limit))
    .execute();
}

export async function everyReading(db: Kysely<StoreTables>, greenhouseId: string, sinceS: number): Promise<readonly StoredReading[]> {
  return db
    .selectFrom('reading')
    .select(COLUMNS)
    .where('greenhouseId', '=', greenhouseId)
    .where('receivedAtS', '>=', sinceS)
    .orderBy('receivedAtS')
    .orderBy('id')
    .execute();
}

async function standingReading(db: Kysely<StoreTables>, id: number, verb: 'replace' | 'withdraw'): Promise<Pick<StoredReading, 'greenhouseId'> & { readonly message: string | null }> {
  const row = await db.selectFrom('reading').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) {
    throw new StoreError('no-such-reading', `Cannot ${verb} reading ${id}: expected the id of a stored reading, got one that is not there. Take the id from readings().`);
  }
  if (row.replacedBy === null && row.withdrawnAtS === null) return row;
  const end = row.replacedBy === null ? `withdrawn at ${row.withdrawnAtS} s` : `replaced by reading ${row.replacedBy}`;
  throw new StoreError('reading-not-standing', `Cannot ${verb} reading ${id}: expected one that stands, got one already ${end}. Take the id from readings().`);
}
