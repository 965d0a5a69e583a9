import { afterAll } from 'vitest';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { storeContract } from '../../contract/store.js';
import { storeFolder, type StoreFolder } from './store-folder.js';

const folders: StoreFolder[] = [];
afterAll(() => folders.forEach((folder) => folder.remove()));

storeContract('SQLite in a file', () => {
  const folder = storeFolder();
  folders.push(folder);
  return openSqliteStore({ path: folder.path });
});
storeContract('SQLite in memory', () => openSqliteStore({ path: ':memory:' }));
