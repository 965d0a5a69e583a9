import { CamelCasePlugin, Kysely } from 'kysely';
import type { Store } from '../ports.js';
import { actions, addAction } from './actions.js';
import { addAdvisory, advisoryFor, lastAdvisory } from './advisories.js';
import { greenhouse, saveGreenhouse } from './greenhouses.js';
import { ImmediateSqliteDialect } from './immediate-dialect.js';
import { InFlight } from './in-flight.js';
import { migrateToLatest } from './migrate.js';
import { openSqliteFile } from './open-sqlite.js';
import { addReading, replaceReading, standingReadings, withdrawReading } from './readings.js';
import type { StoreTables } from './schema.js';
import { lastWeather, saveWeather } from './weather-answers.js';

export interface SqliteStoreOptions {
  /** A file, made with its folder where missing; ":memory:" for one that vanishes when closed. */
  readonly path: string;
}

/** The store in one SQLite file. Throws StoreError when the file cannot be used, or another process uses it. */
export async function openSqliteStore({ path }: SqliteStoreOptions): Promise<Store> {
  const file = openSqliteFile(path);
  const db = new Kysely<StoreTables>({ dialect: new ImmediateSqliteDialect(file.database), plugins: [new CamelCasePlugin()] });
  try {
    await migrateToLatest(db, path);
  } catch (error) {
    file.close();
    throw error;
  }
  const calls = new InFlight();
  let closing: Promise<void> | undefined;
  return {
    saveGreenhouse: (row) => calls.run(() => saveGreenhouse(db, row)),
    greenhouse: (id) => calls.run(() => greenhouse(db, id)),
    addReading: (row) => calls.run(() => addReading(db, row)),
    replaceReading: (id, replacement) => calls.run(() => replaceReading(db, id, replacement)),
    withdrawReading: (id, withdrawnAtS) => calls.run(() => withdrawReading(db, id, withdrawnAtS)),
    readings: (greenhouseId, limit) => calls.run(() => standingReadings(db, greenhouseId, limit)),
    addAction: (row) => calls.run(() => addAction(db, row)),
    actions: (greenhouseId, sinceS) => calls.run(() => actions(db, greenhouseId, sinceS)),
    saveWeather: (row) => calls.run(() => saveWeather(db, row)),
    lastWeather: (placeKey) => calls.run(() => lastWeather(db, placeKey)),
    addAdvisory: (row) => calls.run(() => addAdvisory(db, row)),
    lastAdvisory: (greenhouseId) => calls.run(() => lastAdvisory(db, greenhouseId)),
    advisoryFor: (greenhouseId, night) => calls.run(() => advisoryFor(db, greenhouseId, night)),
    close: () => (closing ??= calls.finish().then(() => file.close())),
  };
}
