import { existsSync, mkdirSync, realpathSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { Kysely, Migrator, SqliteDialect } from 'kysely';
import { allMigrations } from './migrations/all-migrations.js';
import type { Tables } from './schema.js';
import { takeSingleProcessLease, type SingleProcessLease } from './single-process-lease.js';
import { StoreError } from './store-error.js';

export interface OpenSqlite {
  readonly db: Kysely<Tables>;
  close(): Promise<void>;
}

const BUSY_TIMEOUT_MS = 5000;
// "Dusk" in ASCII, written into the file header: tells our files from other people's.
const APPLICATION_ID = 0x4475736b;
const SYNCHRONOUS_FULL = 2;

/** Opens (and creates or brings up to date) the database file for this process alone; throws StoreError with what to do. */
export async function openSqlite(file: string): Promise<OpenSqlite> {
  const path = preparedPath(file);
  const lease = leaseOn(path);
  let raw: Database.Database | undefined;
  try {
    raw = openRaw(path);
    const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: raw }) });
    await migrate(db, path);
    // The driver's build falls back to NORMAL after the first write of a connection that did not set it; an unsafe disk promise is worse than no start.
    assertPragma(raw, 'synchronous', SYNCHRONOUS_FULL, path);
    return { db, close: closer(db, lease) };
  } catch (error) {
    raw?.close();
    lease.release();
    throw error;
  }
}

function closer(db: Kysely<Tables>, lease: SingleProcessLease): () => Promise<void> {
  let closing: Promise<void> | undefined;
  return () => (closing ??= db.destroy().finally(() => lease.release()));
}

/** The real path, so that two names of one file meet the same lease; its folder is made when missing. */
function preparedPath(file: string): string {
  const path = resolve(file);
  try {
    mkdirSync(dirname(path), { recursive: true });
    return existsSync(path) ? realpathSync(path) : join(realpathSync(dirname(path)), basename(path));
  } catch (error) {
    throw new StoreError(`Folder ${dirname(path)} for the database cannot be made: ${messageOf(error)}. Choose a folder that this user may write, with DUSKWARD_DATABASE.`, { cause: error });
  }
}

function leaseOn(path: string): SingleProcessLease {
  try {
    return takeSingleProcessLease(path);
  } catch (error) {
    throw explained(error, path);
  }
}

function openRaw(path: string): Database.Database {
  let raw: Database.Database | undefined;
  try {
    raw = new Database(path, { timeout: BUSY_TIMEOUT_MS });
    raw.pragma('journal_mode = WAL');
    raw.pragma('synchronous = FULL');
    raw.pragma(`busy_timeout = ${BUSY_TIMEOUT_MS}`);
    raw.pragma('foreign_keys = ON');
    assertPragma(raw, 'journal_mode', 'wal', path);
    assertPragma(raw, 'synchronous', SYNCHRONOUS_FULL, path);
    assertPragma(raw, 'foreign_keys', 1, path);
    claimFile(raw, path);
    return raw;
  } catch (error) {
    raw?.close();
    throw explained(error, path);
  }
}

/** Marks a new file as ours and refuses a database that some other program made. */
function claimFile(raw: Database.Database, path: string): void {
  const id = raw.pragma('application_id', { simple: true });
  if (id === APPLICATION_ID) return;
  const { count } = raw.prepare('select count(*) as count from sqlite_master').get() as { count: number };
  if (id !== 0 || count > 0) {
    throw new StoreError(`${path} is a database of another program: expected a Duskward database or no file. Nothing in it was changed; give another file with DUSKWARD_DATABASE.`);
  }
  raw.pragma(`application_id = ${APPLICATION_ID}`);
}

function assertPragma(raw: Database.Database, name: string, expected: string | number, path: string): void {
  const got = raw.pragma(name, { simple: true });
  if (got !== expected) throw new StoreError(`Database ${path}: expected ${name} = ${expected}, got ${String(got)}. Readings would not be safe on this disk; move the file to a local disk.`);
}

async function migrate(db: Kysely<Tables>, path: string): Promise<void> {
  // Never throws: it hands the error back.
  const { error } = await new Migrator({ db, provider: allMigrations }).migrateToLatest();
  if (error !== undefined) {
    throw new StoreError(`Database ${path} could not be brought up to date: ${messageOf(error)}. If a newer Duskward wrote it, run that one; otherwise restore a backup.`, { cause: error });
  }
}

function explained(error: unknown, path: string): unknown {
  if (!(error instanceof Database.SqliteError)) {
    return error instanceof StoreError ? error : new StoreError(`Database ${path} cannot be opened: ${messageOf(error)}. Check the path in DUSKWARD_DATABASE.`, { cause: error });
  }
  if (error.code === 'SQLITE_NOTADB') {
    return new StoreError(`${path} is not a database: expected a SQLite file, got other bytes. Nothing in it was changed; move it away or give another file with DUSKWARD_DATABASE.`, { cause: error });
  }
  if (error.code.startsWith('SQLITE_CORRUPT')) {
    return new StoreError(`Database ${path} is damaged: ${error.message}. Keep a copy of it and restore a backup.`, { cause: error });
  }
  if (error.code.startsWith('SQLITE_CANTOPEN') || error.code.startsWith('SQLITE_READONLY') || error.code.startsWith('SQLITE_PERM')) {
    return new StoreError(`Database ${path} cannot be written: ${error.message}. Give this user write access to the file and its folder, or choose another with DUSKWARD_DATABASE.`, { cause: error });
  }
  return new StoreError(`Database ${path} cannot be opened: ${error.message} (${error.code}).`, { cause: error });
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
