import type { Kysely } from 'kysely';
import { MOST_OUTCOMES_LEARNED, MOST_READINGS_LEARNED, type LearnedFrom, type StoredLearning } from '../ports.js';
import { advisoryFor } from './advisories.js';
import { standingReadings } from './readings.js';
import { epochSeconds, name } from './row-values.js';
import type { StoreTables } from './schema.js';
import { outcomes } from './told.js';

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

export async function learnedFrom(db: Kysely<StoreTables>, greenhouseId: string): Promise<LearnedFrom> {
  const told = await outcomes(db, greenhouseId, MOST_OUTCOMES_LEARNED);
  return {
    learning: { readings: await standingReadings(db, greenhouseId, MOST_READINGS_LEARNED), learned: (await learning(db, greenhouseId))?.body ?? null },
    outcomes: await Promise.all(told.map(async (outcome) => ({ outcome, advisory: (await advisoryFor(db, greenhouseId, outcome.night))?.body ?? null }))),
  };
}
