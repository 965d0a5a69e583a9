import type { Kysely, Selectable } from 'kysely';
import type { Store, StoredAction, StoredAdvisory, StoredReading } from '../ports.js';
import { withCoarseCoordinates } from './coarse-coordinates.js';
import { openSqlite } from './open-sqlite.js';
import type { ActionTable, AdvisoryTable, Tables } from './schema.js';
import { StoreError } from './store-error.js';
import { writeTx } from './write-transaction.js';

type NewReading = Omit<StoredReading, 'id' | 'replacedBy' | 'withdrawnAtS'>;

/** The store on one SQLite file, for this process alone. */
export async function sqliteStore(file: string): Promise<Store> {
  const { db, close } = await openSqlite(file);
  return storeOn(db, close);
}

/** The store on any open database of our schema. Times are kept as whole seconds, coordinates to three decimals. */
export function storeOn(db: Kysely<Tables>, close: () => Promise<void>): Store {
  return {
    saveGreenhouse: (row) =>
      writeTx(db, async (tx) => {
        const body = withCoarseCoordinates(row.body);
        const latest = await latestGreenhouse(tx, row.id);
        if (latest?.body === body) return latest;
        const saved = { version: (latest?.version ?? 0) + 1, body, savedAtS: wholeS(row.savedAtS, 'savedAtS') };
        await tx.insertInto('greenhouseVersion').values({ greenhouseId: row.id, ...saved }).execute();
        return { id: row.id, ...saved };
      }),
    greenhouse: (id) => latestGreenhouse(db, id),

    addReading: (row) => writeTx(db, (tx) => insertReading(tx, row)),
    replaceReading: (id, replacement) =>
      writeTx(db, async (tx) => {
        const old = await standingReading(tx, id);
        if (old.greenhouseId !== replacement.greenhouseId) throw new StoreError(`Reading ${id} belongs to another greenhouse: expected ${replacement.greenhouseId}. Nothing was changed.`);
        const added = await insertReading(tx, replacement);
        await tx.updateTable('reading').set({ replacedBy: added.id }).where('id', '=', id).execute();
        return added;
      }),
    withdrawReading: (id, withdrawnAtS) =>
      writeTx(db, async (tx) => {
        const old = await tx.selectFrom('reading').select('withdrawnAtS').where('id', '=', id).executeTakeFirst();
        // Said twice is withdrawn once: a repeated message must not be an error.
        if (old !== undefined && old.withdrawnAtS !== null) return;
        await standingReading(tx, id);
        await tx.updateTable('reading').set({ withdrawnAtS: wholeS(withdrawnAtS, 'withdrawnAtS') }).where('id', '=', id).execute();
      }),
    readings: (greenhouseId, limit) =>
      db
        .selectFrom('reading')
        .selectAll()
        .where('greenhouseId', '=', greenhouseId)
        .where('replacedBy', 'is', null)
        .where('withdrawnAtS', 'is', null)
        .orderBy('receivedAtS', 'desc')
        .orderBy('id', 'desc')
        .limit(limit)
        .execute(),

    addAction: (row) =>
      writeTx(db, async (tx) => {
        const values = { greenhouseId: row.greenhouseId, receivedAtS: wholeS(row.receivedAtS, 'receivedAtS'), night: row.night, body: row.body, done: row.done ? 1 : 0, text: row.text };
        return actionOf(await tx.insertInto('action').values(values).returningAll().executeTakeFirstOrThrow());
      }),
    actions: async (greenhouseId, sinceS) => {
      const rows = await db
        .selectFrom('action')
        .selectAll()
        .where('greenhouseId', '=', greenhouseId)
        .where('receivedAtS', '>=', sinceS)
        .orderBy('receivedAtS')
        .orderBy('id')
        .execute();
      return rows.map(actionOf);
    },

    saveWeather: (row) =>
      writeTx(db, async (tx) => {
        const body = withCoarseCoordinates(row.body);
        const values = { placeKey: row.placeKey, issuedAtS: wholeS(row.issuedAtS, 'issuedAtS'), body };
        await tx
          .insertInto('weather')
          .values(values)
          .onConflict((conflict) => conflict.columns(['placeKey', 'issuedAtS']).doUpdateSet({ body }))
          .execute();
      }),
    lastWeather: async (placeKey) =>
      (await db.selectFrom('weather').selectAll().where('placeKey', '=', placeKey).orderBy('issuedAtS', 'desc').limit(1).executeTakeFirst()) ?? null,

    addAdvisory: (row) =>
      writeTx(db, async (tx): Promise<StoredAdvisory> => {
        const values = { greenhouseId: row.greenhouseId, night: row.night, issuedAtS: wholeS(row.issuedAtS, 'issuedAtS'), body: withCoarseCoordinates(row.body) };
        const added: Selectable<AdvisoryTable> = await tx.insertInto('advisory').values(values).returningAll().executeTakeFirstOrThrow();
        return added;
      }),
    lastAdvisory: async (greenhouseId) =>
      (await db
        .selectFrom('advisory')
        .selectAll()
        .where('greenhouseId', '=', greenhouseId)
        .orderBy('issuedAtS', 'desc')
        .orderBy('id', 'desc')
        .limit(1)
        .executeTakeFirst()) ?? null,

    close,
  };
}

async function latestGreenhouse(db: Kysely<Tables>, id: string) {
  const row = await db.selectFrom('greenhouseVersion').selectAll().where('greenhouseId', '=', id).orderBy('version', 'desc').limit(1).executeTakeFirst();
  return row === undefined ? null : { id: row.greenhouseId, version: row.version, body: row.body, savedAtS: row.savedAtS };
}

async function insertReading(tx: Kysely<Tables>, row: NewReading): Promise<StoredReading> {
  if (!Number.isFinite(row.tempC)) throw new StoreError(`Reading not stored: expected a temperature in C, got ${row.tempC}.`);
  // Named one by one: a caller's extra fields must not reach the table.
  const values = {
    greenhouseId: row.greenhouseId,
    receivedAtS: wholeS(row.receivedAtS, 'receivedAtS'),
    validAtS: wholeS(row.validAtS, 'validAtS'),
    place: row.place,
    statistic: row.statistic,
    tempC: row.tempC,
    text: row.text,
    replacedBy: null,
    withdrawnAtS: null,
  };
  return tx.insertInto('reading').values(values).returningAll().executeTakeFirstOrThrow();
}

async function standingReading(tx: Kysely<Tables>, id: number): Promise<StoredReading> {
  const row = await tx.selectFrom('reading').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) throw new StoreError(`No reading ${id}: expected the id of a stored reading.`);
  if (row.replacedBy !== null) throw new StoreError(`Reading ${id} was already replaced by ${row.replacedBy}: correct that one.`);
  if (row.withdrawnAtS !== null) throw new StoreError(`Reading ${id} was withdrawn: add a new one.`);
  return row;
}

const actionOf = (row: Selectable<ActionTable>): StoredAction => ({ ...row, done: row.done === 1 });

/** Clocks may give fractions; the tables keep whole seconds. */
function wholeS(timeS: number, name: string): number {
  const floorS = Math.floor(timeS);
  if (!Number.isSafeInteger(floorS)) throw new StoreError(`Not stored: expected ${name} in epoch seconds, got ${timeS}.`);
  return floorS;
}
