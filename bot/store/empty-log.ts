import Database from 'better-sqlite3';

/** Empties the log of changes beside the file, which still holds what was removed from the tables. */
export function emptyLog(database: Database.Database): void {
  try {
    database.pragma('wal_checkpoint(truncate)');
  } catch (error) {
    // What was asked for is done. The log is used again from its start soon, and the next purge empties it.
    if (!(error instanceof Database.SqliteError)) throw error;
  }
}
