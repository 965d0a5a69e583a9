import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { sqliteStore } from '../../../bot/store/sqlite-store.js';
import { storeContract } from '../../contract/store.js';
import { temporaryFolder } from './temporary-folder.js';

const folder = temporaryFolder();
let count = 0;
const nextFile = (): string => join(folder, 'made', 'on-demand', `${(count += 1)}.sqlite`);

storeContract('SQLite', () => sqliteStore(nextFile()));

describe('SQLite store', () => {
  it('remembers over a restart', async () => {
    const file = nextFile();
    const before = await sqliteStore(file);
    const reading = await before.addReading({ greenhouseId: 'north', receivedAtS: 1, validAtS: 1, place: 'inside', statistic: 'low', tempC: -1, text: '-1' });
    await before.close();
    const after = await sqliteStore(file);
    expect(await after.readings('north', 10)).toEqual([reading]);
    await after.close();
  });

  it('keeps the row of a replaced and of a withdrawn reading, and refuses to delete one', async () => {
    const file = nextFile();
    const store = await sqliteStore(file);
    const row = { greenhouseId: 'north', receivedAtS: 1, validAtS: 1, place: 'inside', statistic: 'low', tempC: -1, text: '-1' } as const;
    const old = await store.addReading(row);
    const replacement = await store.replaceReading(old.id, { ...row, tempC: -2 });
    const withdrawn = await store.addReading(row);
    await store.withdrawReading(withdrawn.id, 50);
    await store.close();
    const raw = new Database(file);
    expect(raw.prepare('select id, replacedBy, withdrawnAtS from reading order by id').all()).toEqual([
      { id: old.id, replacedBy: replacement.id, withdrawnAtS: null },
      { id: replacement.id, replacedBy: null, withdrawnAtS: null },
      { id: withdrawn.id, replacedBy: null, withdrawnAtS: 50 },
    ]);
    expect(() => raw.exec('delete from reading')).toThrow(/never deleted/);
    raw.close();
  });

  it('refuses to change or delete an advisory', async () => {
    const file = nextFile();
    const store = await sqliteStore(file);
    await store.addAdvisory({ greenhouseId: 'north', night: '2026-01-14', issuedAtS: 100, body: '{}' });
    await store.close();
    const raw = new Database(file);
    expect(() => raw.exec(`update advisory set body = '{"nicer":true}'`)).toThrow(/kept as issued/);
    expect(() => raw.exec('delete from advisory')).toThrow(/kept as issued/);
    raw.close();
  });
});
