import { closeSync, openSync, readSync, statSync } from 'node:fs';
import { StoreError } from './store-error.js';

// SQLite's file format: byte 18 of the header is 2 for a file that keeps a log of changes beside it, 1 for one that does not.
const WRITE_VERSION_AT = 18;
const WITHOUT_LOG = 1;

/**
 * Refuses a backup that was put in the place of a database whose log of changes still lies there: SQLite would write those changes into it.
 * A backup never has a log, and a store's file that is in use is marked as having one.
 */
export function refuseStrayLog(file: string): void {
  const logBytes = statSync(`${file}-wal`, { throwIfNoEntry: false })?.size ?? 0;
  if (logBytes === 0 || writeVersion(file) !== WITHOUT_LOG) return;
  throw new StoreError(
    'stray-log',
    `Cannot open the store ${file}: expected a restored backup to stand alone, got the log of another database beside it. It would spoil the backup. ` +
      `Move ${file}-wal and ${file}-shm away and start again.`,
  );
}

function writeVersion(file: string): number | undefined {
  const descriptor = openSync(file, 'r');
  try {
    const header = Buffer.alloc(WRITE_VERSION_AT + 1);
    return readSync(descriptor, header, 0, header.length, 0) === header.length ? header[WRITE_VERSION_AT] : undefined;
  } finally {
    closeSync(descriptor);
  }
}
