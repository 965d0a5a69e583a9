import Database from 'better-sqlite3';
import { StoreError } from './store-error.js';

export interface SingleProcessLease {
  release(): void;
}

interface HolderRow {
  readonly pid: number;
  readonly sinceS: number;
}

/**
 * Takes the right to be the only process on a database file. The lease is an open write transaction on a second small file beside it:
 * the operating system drops that lock with the process, also after kill -9, so nothing has to be cleaned up by hand.
 */
export function takeSingleProcessLease(databaseFile: string): SingleProcessLease {
  const lock = new Database(`${databaseFile}-lock`, { timeout: 0 });
  try {
    // Readers must still get in while we hold the write lock: that is how a second process can say who holds it.
    lock.pragma('journal_mode = DELETE');
    lock.exec('begin immediate');
    lock.exec('create table if not exists holder (only integer primary key check (only = 1), pid integer not null, sinceS integer not null)');
    lock
      .prepare('insert into holder values (1, ?, unixepoch()) on conflict (only) do update set pid = excluded.pid, sinceS = excluded.sinceS')
      .run(process.pid);
    lock.exec('commit');
    lock.exec('begin immediate');
  } catch (error) {
    const holder = holderOf(lock);
    lock.close();
    if (!isBusy(error)) throw error;
    const who = holder === null ? 'another process' : `process ${holder.pid}, since ${new Date(holder.sinceS * 1000).toISOString()}`;
    throw new StoreError(
      `Database ${databaseFile} is in use: expected to be the only process on it, but it is held by ${who}. Stop that one first, or give this one another DUSKWARD_DATABASE.`,
    );
  }
  return { release: () => lock.close() };
}

function holderOf(lock: Database.Database): HolderRow | null {
  try {
    return (lock.prepare('select pid, sinceS from holder').get() as HolderRow | undefined) ?? null;
  } catch {
    return null;
  }
}

const isBusy = (error: unknown): boolean => error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');
