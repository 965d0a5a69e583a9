import { afterAll } from 'vitest';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { journalContract } from '../../contract/journal.js';
import type { OpenMemory } from '../../contract/journal/rows.js';
import { storeContract } from '../../contract/store.js';
import { storeFolder, type StoreFolder } from './store-folder.js';

const folders: StoreFolder[] = [];
afterAll(() => folders.forEach((folder) => folder.remove()));

const inFile: OpenMemory = (options) => {
  const folder = storeFolder();
  folders.push(folder);
  return openSqliteStore({ path: folder.path, ...options });
};
const inMemory: OpenMemory = (options) => openSqliteStore({ path: ':memory:', ...options });

for (const contract of [storeContract, journalContract]) {
  contract('SQLite in a file', inFile);
  contract('SQLite in memory', inMemory);
}
