import { sql, type Kysely, type Selectable } from 'kysely';
import type { Journal, JobRow } from '../journal.js';
import type { JobTable } from './journal-schema.js';
import { epochSeconds, name, notEarlierS, rowLimit } from './row-values.js';
import type { StoreTables } from './schema.js';
import { StoreError } from './store-error.js';

// A literal, not a parameter: only then does the planner take the index over the open rows.
const OPEN = sql.lit('open' as const);

export async function addJob(db: Kysely<StoreTables>, row: Parameters<Journal['addJob']>[0]): Promise<boolean> {
  const added = await db
    .insertInto('job')
    .values({
      key: name('key', row.key),
      kind: name('kind', row.kind),
      greenhouseId: name('greenhouseId', row.greenhouseId),
      dueAtS: notEarlierS('dueAtS', row.dueAtS),
      body: row.body,
      state: 'open',
    })
    .onConflict((conflict) => conflict.column('key').doNothing())
    .returning('id')
    .executeTakeFirst();
  return added !== undefined;
}

export async function dueJobs(db: Kysely<StoreTables>, nowS: number, limit: number): Promise<readonly JobRow[]> {
  return (await dueJobsQuery(db, nowS, limit).execute()).map(jobRow);
}

export function dueJobsQuery(db: Kysely<StoreTables>, nowS: number, limit: number) {
  return db.selectFrom('job').selectAll().where('state', '=', OPEN).where('dueAtS', '<=', nowS).orderBy('dueAtS').orderBy('id').limit(rowLimit(limit));
}

/** Refused as done for one that is not open: what is written with it in one go would be written twice, or for a job that was cancelled meanwhile. */
export async function finishJob(db: Kysely<StoreTables>, id: number, outcome: 'done' | 'dropped', atS: number): Promise<void> {
  const finished = await db
    .updateTable('job')
    .set({ state: outcome, finishedAtS: epochSeconds('atS', atS) })
    .where('id', '=', id)
    .where('state', '=', 'open')
    .returning('id')
    .executeTakeFirst();
  if (!finished && outcome === 'done') throw new StoreError('not-open', `Cannot finish job ${id}: expected one that is open, got one that is finished, or was cancelled meanwhile. Leave undone what was to be written with it.`);
}

export async function postponeJob(db: Kysely<StoreTables>, id: number, dueAtS: number): Promise<void> {
  await db
    .updateTable('job')
    .set(({ eb }) => ({ dueAtS: notEarlierS('dueAtS', dueAtS), attempts: eb('attempts', '+', 1) }))
    .where('id', '=', id)
    .where('state', '=', 'open')
    .execute();
}

export async function moveJob(db: Kysely<StoreTables>, key: string, dueAtS: number, body?: string): Promise<void> {
  await db.updateTable('job').set({ dueAtS: notEarlierS('dueAtS', dueAtS), ...(body === undefined ? {} : { body }) }).where('key', '=', key).where('state', '=', 'open').execute();
}

export async function cancelJobs(db: Kysely<StoreTables>, greenhouseId: string, kind?: string): Promise<void> {
  const open = db.deleteFrom('job').where('greenhouseId', '=', greenhouseId).where('state', '=', 'open');
  await (kind === undefined ? open : open.where('kind', '=', kind)).execute();
}

/** Empties what ended before; the keys stay. */
export async function purgeJobs(db: Kysely<StoreTables>, beforeS: number): Promise<void> {
  await db.updateTable('job').set({ body: '' }).where('finishedAtS', '<', beforeS).where('body', '<>', '').execute();
}

const jobRow = ({ id, key, kind, greenhouseId, dueAtS, body, attempts }: Selectable<JobTable>): JobRow => ({ id, key, kind, greenhouseId, dueAtS, body, attempts });
