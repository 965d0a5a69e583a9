import { CamelCasePlugin, Kysely } from 'kysely';
import type { Memory } from '../journal.js';
import { AtomicWork } from './atomic-work.js';
import { copyOfFile, copyOfOpen } from './backup.js';
import { storeErrorOf } from './database-error.js';
import { emptyLog } from './empty-log.js';
import type { PlaceKeyOf } from './erase.js';
import { ImmediateSqliteDialect } from './immediate-dialect.js';
import { InFlight } from './in-flight.js';
import { migrateToLatest } from './migrate.js';
import { openSqliteFile, type SqliteFile } from './open-sqlite.js';
import { operationsOn, type RunCall } from './operations.js';
import type { StoreTables } from './schema.js';
import { IN_MEMORY } from './sqlite-path.js';

export interface MemoryOptions {
  /** Tells which stored weather is of a greenhouse's place, so that it goes with the greenhouse; without it the weather stays until it is purged. */
  readonly placeKeyOf?: PlaceKeyOf;
  /** After this an atomic work is undone. */
  readonly atomicLimitMs?: number;
}

export interface SqliteStoreOptions extends MemoryOptions {
  /** A file, made with its folder where missing; ":memory:" for one that vanishes when closed. */
  readonly path: string;
  /** How long a write waits for another program that holds the file. */
  readonly busyTimeoutMs?: number;
}

// A work only writes: milliseconds. Ten seconds is a disk at its very slowest, and still before a grower gives up (project estimate).
const ATOMIC_LIMIT_MS = 10_000;

/** Store and journal in one SQLite file. Throws StoreError when the file cannot be used, or another process uses it. */
export async function openSqliteStore({ path, busyTimeoutMs, ...options }: SqliteStoreOptions): Promise<Memory> {
  return memoryOn(openSqliteFile(path, busyTimeoutMs), options);
}

export const queriesOn = (file: SqliteFile): Kysely<StoreTables> => new Kysely<StoreTables>({ dialect: new ImmediateSqliteDialect(file.database), plugins: [new CamelCasePlugin()] });

/** Store and journal on a file that is open; closing the memory closes the file. */
export async function memoryOn(file: SqliteFile, { placeKeyOf = () => null, atomicLimitMs = ATOMIC_LIMIT_MS }: MemoryOptions = {}): Promise<Memory> {
  const { database, path } = file;
  const db = queriesOn(file);
  try {
    await migrateToLatest(db, path);
  } catch (error) {
    file.close();
    throw storeErrorOf(error, path);
  }
  const calls = new InFlight();
  let hasRemoved = false;
  const options = { placeKeyOf, removed: () => void (hasRemoved = true) };
  const inWords: RunCall = async (call) => {
    try {
      return await call();
    } catch (error) {
      throw storeErrorOf(error, path);
    }
  };
  const atomic = new AtomicWork({ db, database, limitMs: atomicLimitMs, memoryOn: (transaction, run) => operationsOn(transaction, (call) => run(() => inWords(call)), options) });
  const outside: RunCall = (call) =>
    calls.run(async () => {
      atomic.refuseFromInside();
      try {
        return await inWords(call);
      } finally {
        if (hasRemoved && !database.inTransaction) {
          hasRemoved = false;
          emptyLog(database);
        }
      }
    });
  let closing: Promise<void> | undefined;
  return {
    ...operationsOn(db, outside, options),
    atomically: (work) => outside(() => atomic.run(work)),
    backup: (target) => outside(() => (path === IN_MEMORY ? db.connection().execute(() => copyOfOpen(database, target)) : copyOfFile(path, target))),
    close: async () => {
      atomic.refuseFromInside();
      await (closing ??= calls.finish().then(() => file.close()));
    },
  };
}
