import Database from 'better-sqlite3';
import { StoreError, type StoreErrorCode } from './store-error.js';

interface Trouble {
  readonly code: StoreErrorCode;
  readonly expected: string;
  readonly advice: string;
}

const TROUBLES: readonly (readonly [RegExp, Trouble])[] = [
  [/^SQLITE_FULL/u, { code: 'full', expected: 'room on the disk', advice: 'Nothing of this call was written. Make room, and go on: the store needs no repair.' }],
  [/^SQLITE_(?:BUSY|LOCKED)/u, { code: 'locked', expected: 'to be the only writer', advice: 'Nothing of this call was written. End the other program that holds the file, such as a database shell with an open transaction.' }],
  [/^SQLITE_(?:READONLY|PERM|AUTH|CANTOPEN)/u, { code: 'not-writable', expected: 'to be able to write it', advice: 'Nothing of this call was written. Give this user write permission on the file and its folder, and see whether the disk was mounted read-only.' }],
  [/^SQLITE_IOERR/u, { code: 'disk-fault', expected: 'a disk that works', advice: 'It is not sure what of this call is on the disk. Stop, look after the disk, and start again: the store recovers by itself or says that it is damaged.' }],
  [/^SQLITE_(?:CORRUPT|NOTADB)/u, { code: 'damaged', expected: 'a sound database', advice: 'Stop, put a backup in its place, and start again.' }],
];

/** What the disk or another process did to a call, as a StoreError; any other error as it is. */
export function storeErrorOf(error: unknown, where: string): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  const trouble = TROUBLES.find(([code]) => code.test(error.code))?.[1];
  if (!trouble) return error;
  return new StoreError(trouble.code, `The store ${where} failed: expected ${trouble.expected}, got "${error.message}" (${error.code}). ${trouble.advice}`, { cause: error });
}
