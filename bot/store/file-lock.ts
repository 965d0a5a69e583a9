import Database from 'better-sqlite3';
import { StoreError } from './store-error.js';

export interface FileLock {
  release(): void;
}

/**
 * One process a store: two would send each evening message twice.
 * The hold is an exclusive transaction on a small SQLite file next to the store. The system itself drops it when the process
 * ends, however it ends, so nothing is ever stale. The lock file stays: deleting it would let a third process lock another
 * file of the same name.
 */
export function lockFile(file: string): FileLock {
  const path = `${file}-lock`;
  let lock: Database.Database | undefined;
  try {
    // No waiting: the holder keeps it as long as it lives.
    lock = new Database(path, { timeout: 0 });
    // SQLite takes an exclusive transaction on a read-only file for a shared one: two could hold it. A write finds that out.
    lock.pragma('user_version = 1');
    lock.exec('begin exclusive');
  } catch (error) {
    lock?.close();
    throw refusal(file, path, error);
  }
  const held = lock;
  return { release: () => void held.close() };
}

function refusal(file: string, path: string, error: unknown): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  const cause = { cause: error };
  if (error.code.startsWith('SQLITE_BUSY')) {
    return new StoreError(
      'in-use',
      `Cannot open the store ${file}: it is already open, here or in another process. Expected to be the only one; got a held lock on ${path}. ` +
        'Stop the other Duskward, or set another path for this one.',
      cause,
    );
  }
  if (error.code.startsWith('SQLITE_NOTADB') || error.code.startsWith('SQLITE_CORRUPT')) {
    return new StoreError(
      'not-a-database',
      `Cannot lock the store ${file}: expected ${path} to be Duskward's lock file, got something else (${error.message}). Move ${path} away and start again.`,
      cause,
    );
  }
  return new StoreError(
    'not-writable',
    `Cannot lock the store ${file}: expected to be able to write ${path}, got "${error.message}" (${error.code}). ` +
      'Give this user write permission on the folder and the file, or set another path.',
    cause,
  );
}
