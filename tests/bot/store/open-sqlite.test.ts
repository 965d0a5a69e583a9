import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import { openSqlite } from '../../../bot/store/open-sqlite.js';
import { sqliteStore } from '../../../bot/store/sqlite-store.js';
import { writeTx } from '../../../bot/store/write-transaction.js';
import { temporaryFolder } from './temporary-folder.js';

const folder = temporaryFolder();
const READER = fileURLToPath(new URL('./reading-writer.ts', import.meta.url));

describe('opening the database', () => {
  it('sets and keeps the pragmas, also after writes and on the second open', async () => {
    const file = join(folder, 'pragmas.sqlite');
    for (let open = 0; open < 2; open += 1) {
      const { db, close } = await openSqlite(file);
      for (let write = 0; write < 2; write += 1) {
        await writeTx(db, (tx) => tx.insertInto('weather').values({ placeKey: `${open}.${write}`, issuedAtS: 1, body: '' }).execute());
        const read = async (name: string) => Object.values((await sql.raw<Record<string, unknown>>(`pragma ${name}`).execute(db)).rows[0] ?? {})[0];
        expect(await read('journal_mode')).toBe('wal');
        expect(await read('synchronous')).toBe(2);
        expect(await read('busy_timeout')).toBe(5000);
        expect(await read('foreign_keys')).toBe(1);
      }
      await close();
    }
  });

  it('rolls a failed write back whole and goes on working', async () => {
    const { db, close } = await openSqlite(join(folder, 'rollback.sqlite'));
    const row = { placeKey: 'a', issuedAtS: 1, body: '' };
    const failing = writeTx(db, async (tx) => {
      await tx.insertInto('weather').values(row).execute();
      throw new Error('half way');
    });
    await expect(failing).rejects.toThrow('half way');
    expect(await db.selectFrom('weather').selectAll().execute()).toEqual([]);
    await writeTx(db, (tx) => tx.insertInto('weather').values(row).execute());
    expect(await db.selectFrom('weather').selectAll().execute()).toEqual([row]);
    await close();
  });

  it('refuses a file that is not a database, and leaves its bytes alone', async () => {
    const file = join(folder, 'letter.sqlite');
    const bytes = 'Dear grower, this is not a database at all. '.repeat(50);
    writeFileSync(file, bytes);
    await expect(sqliteStore(file)).rejects.toThrow(/letter\.sqlite is not a database: expected a SQLite file/);
    expect(readFileSync(file, 'utf8')).toBe(bytes);
    // The failed open must have let go of its lease.
    await expect(sqliteStore(file)).rejects.toThrow(/not a database/);
  });

  it('refuses the database of another program, and leaves it alone', async () => {
    const file = join(folder, 'other.sqlite');
    const other = new Database(file);
    other.exec('create table recipe (name text)');
    other.close();
    await expect(sqliteStore(file)).rejects.toThrow(/database of another program/);
    const check = new Database(file);
    expect(check.prepare('select name from sqlite_master').all()).toEqual([{ name: 'recipe' }]);
    check.close();
  });

  it('says that a newer program wrote the file', async () => {
    const file = join(folder, 'newer.sqlite');
    await (await sqliteStore(file)).close();
    const raw = new Database(file);
    raw.prepare('insert into kysely_migration (name, timestamp) values (?, ?)').run('9999-from-the-future', '2030-01-01T00:00:00Z');
    raw.close();
    await expect(sqliteStore(file)).rejects.toThrow(/could not be brought up to date.*newer Duskward/);
  });

  it('finishes a migration that was cut off', async () => {
    const file = join(folder, 'half.sqlite');
    await (await sqliteStore(file)).close();
    const raw = new Database(file);
    raw.exec('delete from kysely_migration; drop table advisory');
    raw.close();
    const store = await sqliteStore(file);
    expect(await store.lastAdvisory('north')).toBeNull();
    await store.close();
  });

  it('refuses a folder that cannot be made', async () => {
    writeFileSync(join(folder, 'a-file'), '');
    await expect(sqliteStore(join(folder, 'a-file', 'x.sqlite'))).rejects.toThrow(/Folder .*a-file for the database cannot be made/);
  });

  // The superuser may write anywhere, so there is nothing to refuse.
  it.skipIf(process.getuid?.() === 0)('refuses a folder that cannot be written', async () => {
    const locked = join(folder, 'locked');
    mkdirSync(locked);
    chmodSync(locked, 0o555);
    await expect(sqliteStore(join(locked, 'x.sqlite'))).rejects.toThrow(/cannot be written/);
  });

  it('refuses a folder in the place of the file', async () => {
    mkdirSync(join(folder, 'folder.sqlite'));
    await expect(sqliteStore(join(folder, 'folder.sqlite'))).rejects.toThrow(/cannot be (opened|written)/);
  });
});

describe('one process on one file', () => {
  it('refuses a second open in the same process, by whatever name, and allows it after close', async () => {
    const file = join(folder, 'once.sqlite');
    const store = await sqliteStore(file);
    symlinkSync(file, join(folder, 'alias.sqlite'));
    await expect(sqliteStore(file)).rejects.toThrow(/in use: expected to be the only process on it, but it is held by process \d+, since \d{4}-/);
    await expect(sqliteStore(join(folder, 'alias.sqlite'))).rejects.toThrow(/in use/);
    await store.close();
    await (await sqliteStore(file)).close();
  });

  it('refuses a second process while the first lives, and not after kill -9 of the first', async () => {
    const file = join(folder, 'killed.sqlite');
    const holder = spawn(process.execPath, ['--import', 'tsx', READER, file, '0'], { stdio: ['ignore', 'pipe', 'inherit'] });
    await once(holder.stdout, 'data');
    await expect(sqliteStore(file)).rejects.toThrow(new RegExp(`held by process ${holder.pid}`));
    holder.kill('SIGKILL');
    await once(holder, 'exit');
    await (await sqliteStore(file)).close();
  });
});
