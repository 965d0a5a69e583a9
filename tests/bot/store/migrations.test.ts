import { Migrator } from 'kysely';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { first } from '../../../bot/store/migrations/0001-first.js';
import { journal } from '../../../bot/store/migrations/0002-journal.js';
import { openSqliteFile } from '../../../bot/store/open-sqlite.js';
import { openSqliteStore, queriesOn } from '../../../bot/store/sqlite-store.js';
import { storeFolder, type StoreFolder } from './store-folder.js';

const AT_S = 1_768_424_400;

let at: StoreFolder;
beforeEach(() => {
  at = storeFolder();
});
afterEach(() => at.remove());

/** A file as the first version made it, with rows in it. */
async function oldFile(): Promise<void> {
  const file = openSqliteFile(at.path);
  const { error } = await new Migrator({ db: queriesOn(file), provider: { getMigrations: () => Promise.resolve({ '0001-first': first }) } }).migrateToLatest();
  expect(error).toBeUndefined();
  file.database.exec(`
    insert into greenhouse values ('hill', 1, '{}', ${AT_S});
    insert into reading values (1, 'hill', ${AT_S}, ${AT_S}, 'inside', 'low', -3.0, 'wrong', null, null);
    insert into reading values (2, 'hill', ${AT_S}, ${AT_S}, 'inside', 'low', -2.0, 'right', null, null);
    update reading set replaced_by = 2 where id = 1;
    insert into advisory values (7, 'hill', '2026-01-14', ${AT_S}, '{}')`);
  file.close();
}

describe('a file of the first version', () => {
  it('is brought up to date with all its rows', async () => {
    await oldFile();
    const memory = await openSqliteStore({ path: at.path });
    expect((await memory.readings('hill', 10)).map(({ text }) => text)).toEqual(['right']);
    expect(await memory.lastAdvisory('hill')).toMatchObject({ id: 7 });
    expect(await memory.openInbound(10)).toEqual([]);
    await memory.eraseGreenhouse('hill');
    expect(await memory.lastAdvisory('hill')).toBeNull();
    await memory.close();
  });

  it('stays as it was when bringing it up to date fails half way, and can be tried again', async () => {
    await oldFile();
    const file = openSqliteFile(at.path);
    const db = queriesOn(file);
    const broken = {
      up: async (...all: Parameters<typeof journal.up>): Promise<void> => {
        await journal.up(...all);
        throw new Error('pulled plug');
      },
    };
    const schema = (): unknown => file.database.prepare('select name, sql from sqlite_schema order by name').all();
    const before = schema();
    const { error } = await new Migrator({ db, provider: { getMigrations: () => Promise.resolve({ '0001-first': first, '0002-journal': broken }) } }).migrateToLatest();
    expect(error).toMatchObject({ message: 'pulled plug' });
    expect(schema()).toEqual(before);
    file.close();
    const memory = await openSqliteStore({ path: at.path });
    expect(await memory.readings('hill', 10)).toHaveLength(1);
    await memory.close();
  });
});
