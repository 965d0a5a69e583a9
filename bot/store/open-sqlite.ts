import Database from 'better-sqlite3';
import { existsSync } from 'node:fs';
import { storeErrorOf } from './database-error.js';
import { lockFile, type FileLock } from './file-lock.js';
import { IN_MEMORY, sqlitePath } from './sqlite-path.js';
import { StoreError } from './store-error.js';
import { refuseStrayLog } from './stray-log.js';

export interface SqliteFile {
  /** The one true path, or ":memory:". */
  readonly path: string;
  readonly database: Database.Database;
  /** Closes the database, then lets the next process in. */
  close(): void;
}

// "Dusk": marks the file as ours, so that a mistyped path cannot put our tables into another program's database.
const APPLICATION_ID = 0x44_75_73_6b;
/** How long a write waits for another program that holds the file, before it fails as locked: everything else stands still meanwhile, and what failed is tried again. Project estimate. */
export const BUSY_TIMEOUT_MS = 1000;
const SYNCHRONOUS_FULL = 2;
const ON = 1;

/** Opens or makes a store's file, alone and with every commit flushed to disk; says clearly why when it cannot. */
export function openSqliteFile(path: string, busyTimeoutMs = BUSY_TIMEOUT_MS): SqliteFile {
  const file = sqlitePath(path);
  const lock: FileLock = file === IN_MEMORY ? { release: () => undefined } : lockFile(file);
  let database: Database.Database | undefined;
  try {
    if (file !== IN_MEMORY && existsSync(file)) refuseStrayLog(file);
    database = new Database(file, { timeout: busyTimeoutMs });
    refuseOtherPrograms(database, file);
    setUp(database, file, busyTimeoutMs);
    refuseDamage(database, file);
  } catch (error) {
    database?.close();
    lock.release();
    throw refusal(file, error);
  }
  const opened = database;
  return {
    path: file,
    database: opened,
    close: () => {
      opened.close();
      lock.release();
    },
  };
}

export function refuseOtherPrograms(database: Database.Database, file: string): void {
  const applicationId = database.pragma('application_id', { simple: true });
  if (applicationId === APPLICATION_ID) return;
  const table = database.prepare<[], { name: string }>('select name from sqlite_schema limit 1').get();
  if (applicationId === 0 && table === undefined) return;
  throw new StoreError(
    'another-program',
    `Cannot use ${file} as a store: expected a file made by Duskward or none, got a database of another program` +
      `${table === undefined ? '' : ` (it holds "${table.name}")`}. It was left as it is. Set another path.`,
  );
}

/** Each setting is read back: SQLite answers a pragma that it does not take with silence. */
function setUp(database: Database.Database, file: string, busyTimeoutMs: number): void {
  const set = (name: string, value: string | number, expected: string | number): void => {
    database.pragma(`${name} = ${value}`);
    const got = database.pragma(name, { simple: true });
    if (got === expected) return;
    throw new StoreError(
      'unsafe-settings',
      `Cannot open the store ${file} safely: expected ${name} to be ${expected}, got ${String(got)}. ` +
        'Some network folders cannot do this: set a path on a local disk.',
    );
  };
  set('busy_timeout', busyTimeoutMs, busyTimeoutMs);
  set('journal_mode', 'wal', file === IN_MEMORY ? 'memory' : 'wal');
  // The driver's own default turns to NORMAL in WAL mode, which loses the last commits when the power goes.
  set('synchronous', 'FULL', SYNCHRONOUS_FULL);
  set('foreign_keys', 'ON', ON);
  // What is erased is overwritten, not only left out of the tables.
  set('secure_delete', 'ON', ON);
  // Also where it is set already: a file that may only be read opens without a word, and would fail at the first reading instead.
  set('application_id', APPLICATION_ID, APPLICATION_ID);
}

function refuseDamage(database: Database.Database, file: string): void {
  const found = String(database.pragma('quick_check(1)', { simple: true }));
  if (found !== 'ok') throw damaged(file, found);
}

const damaged = (file: string, found: string, cause?: unknown): StoreError =>
  new StoreError(
    'damaged',
    `Cannot use the store ${file}: the file is damaged. Expected a sound database, got "${found.replace(/\s+/g, ' ')}". ` +
      `Move it away together with ${file}-wal and ${file}-shm, put a backup in its place, and start again.`,
    { cause },
  );

function refusal(file: string, error: unknown): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  const is = (...codes: readonly string[]): boolean => codes.some((code) => error.code.startsWith(code));
  if (is('SQLITE_NOTADB')) {
    return new StoreError(
      'not-a-database',
      `Cannot open the store ${file}: expected a SQLite database, got a file of another kind. It was left as it is. ` +
        'Set another path, or move the file away to start with an empty store.',
      { cause: error },
    );
  }
  if (is('SQLITE_CORRUPT')) return damaged(file, error.message, error);
  if (is('SQLITE_CANTOPEN', 'SQLITE_READONLY', 'SQLITE_PERM', 'SQLITE_AUTH')) {
    return new StoreError(
      'not-writable',
      `Cannot open the store ${file}: expected to be able to write it, got "${error.message}" (${error.code}). ` +
        'Give this user write permission on the file and its folder, or set another path.',
      { cause: error },
    );
  }
  return storeErrorOf(error, file);
}
