import Database from 'better-sqlite3';
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { storeErrorOf } from './database-error.js';
import { BUSY_TIMEOUT_MS, refuseOtherPrograms } from './open-sqlite.js';
import { StoreError } from './store-error.js';

/** Copies a store's file as it is at this instant, while other processes go on reading and writing it. */
export async function copyOfFile(file: string, target: string): Promise<void> {
  if (!existsSync(file)) throw new StoreError('not-there', `Cannot back up ${file}: expected the file of a store, got nothing there. Set the path of the one to copy.`);
  let reader: Database.Database | undefined;
  try {
    reader = new Database(file, { readonly: true, fileMustExist: true, timeout: BUSY_TIMEOUT_MS });
    refuseOtherPrograms(reader, file);
    // One snapshot for the whole copy: without it, every write in between would make it begin again.
    reader.exec('begin');
    reader.prepare('select count(*) from sqlite_schema').get();
    await copyOfOpen(reader, target);
  } catch (error) {
    throw storeErrorOf(error, file);
  } finally {
    reader?.close();
  }
}

/** Copies an open database that is not written to meanwhile. A copy that is cut short never bears the name of the target. */
export async function copyOfOpen(database: Database.Database, target: string): Promise<void> {
  const wanted = freePath(target);
  const unfinished = `${wanted}.unfinished`;
  rmSync(unfinished, { force: true });
  try {
    await database.backup(unfinished);
    proveSound(unfinished);
    syncToDisk(unfinished);
    renameSync(unfinished, wanted);
    syncToDisk(dirname(wanted));
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw storeErrorOf(error, wanted);
  }
}

function freePath(target: string): string {
  const wanted = resolve(target.trim());
  if (target.trim() === '' || existsSync(wanted)) {
    throw new StoreError('already-there', `Cannot write the backup ${target}: expected a path where nothing is yet, got ${target.trim() === '' ? 'none' : 'a file or folder'}. Give each backup a name of its own, such as its date.`);
  }
  if (!statSync(dirname(wanted), { throwIfNoEntry: false })?.isDirectory()) {
    throw new StoreError('bad-path', `Cannot write the backup ${target}: expected a path in a folder that exists, got none at ${dirname(wanted)}. Make the folder first.`);
  }
  return wanted;
}

function proveSound(copy: string): void {
  const database = new Database(copy, { fileMustExist: true });
  try {
    // One file, whole in itself: the copy says that it keeps a log of changes beside it, as its original does.
    database.pragma('journal_mode = delete');
    const found = String(database.pragma('integrity_check(1)', { simple: true }));
    if (found !== 'ok') throw new StoreError('damaged', `The backup ${copy} is of no use: expected a sound copy, got "${found}". The store itself may be damaged: keep your older backups.`);
  } finally {
    database.close();
  }
}

/** On the disk, not only on its way there. */
function syncToDisk(path: string): void {
  const descriptor = openSync(path, 'r');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
