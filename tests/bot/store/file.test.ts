import Database from 'better-sqlite3';
import { chmodSync, existsSync, mkdirSync, readFileSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openSqliteFile } from '../../../bot/store/open-sqlite.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { inbound, job, newChat, outbound, send } from '../../contract/journal/rows.js';
import { storeFolder, type StoreFolder } from './store-folder.js';

const AT_S = 1_768_424_400;
const reading = { greenhouseId: 'hill', receivedAtS: AT_S, validAtS: AT_S, place: 'inside', statistic: 'low', tempC: -3, text: '-3' } as const;
const advisory = { greenhouseId: 'hill', night: '2026-01-14', issuedAtS: AT_S, body: '{}' };

let at: StoreFolder;
beforeEach(() => {
  at = storeFolder();
});
afterEach(() => at.remove());

describe('the file of a store', () => {
  it('is made with its folders, and holds its rows when opened again', async () => {
    const path = join(at.folder, 'new', 'folder', 'duskward.sqlite');
    const first = await openSqliteStore({ path });
    const added = await first.addReading(reading);
    await first.close();
    const second = await openSqliteStore({ path });
    expect(await second.readings('hill', 10)).toEqual([added]);
    await second.close();
  });

  it('is flushed to disk at every commit, on the first open and on each one after', () => {
    for (const _open of ['first', 'second']) {
      const file = openSqliteFile(at.path);
      const pragma = (name: string): unknown => file.database.pragma(name, { simple: true });
      file.database.exec('create table if not exists written (n integer) strict; insert into written values (1)');
      expect({ journal: pragma('journal_mode'), synchronous: pragma('synchronous'), busyTimeoutMs: pragma('busy_timeout'), foreignKeys: pragma('foreign_keys') }).toEqual({
        journal: 'wal',
        synchronous: 2,
        busyTimeoutMs: 1000,
        foreignKeys: 1,
      });
      file.close();
    }
  });

  it('lets nobody change what was issued or said, not even past the store', async () => {
    const store = await openSqliteStore({ path: at.path });
    await store.addAdvisory(advisory);
    const standing = await store.addReading(reading);
    const { id } = await store.addReading(reading);
    await store.withdrawReading(id, AT_S + 60);
    await store.close();
    const raw = new Database(at.path);
    const run = (sql: string) => () => raw.exec(sql);
    expect(run(`update advisory set body = '{"changed":true}'`)).toThrow(/stays as issued/);
    expect(run('delete from advisory')).toThrow(/kept as issued/);
    expect(run(`update reading set temp_c = 4 where id = ${standing.id}`)).toThrow(/stays as received/);
    expect(run(`update reading set withdrawn_at_s = null where id = ${id}`)).toThrow(/once/);
    expect(run('delete from reading')).toThrow(/is kept/);
    expect(raw.prepare('select body from advisory').all()).toEqual([{ body: '{}' }]);
    expect(raw.prepare('select temp_c, withdrawn_at_s from reading order by id').all()).toEqual([
      { temp_c: -3, withdrawn_at_s: null },
      { temp_c: -3, withdrawn_at_s: AT_S + 60 },
    ]);
    raw.close();
  });
});

describe('what the database itself keeps', () => {
  it('goes only with a greenhouse or a chat that is being erased', async () => {
    const store = await openSqliteStore({ path: at.path });
    for (const greenhouseId of ['hill', 'vale']) {
      await store.addAdvisory({ ...advisory, greenhouseId });
      const { id } = await store.addReading({ ...reading, greenhouseId });
      await store.replaceReading(id, { ...reading, greenhouseId });
    }
    const a = await newChat(store, 'a');
    const b = await newChat(store, 'b');
    await store.addOutbound(outbound(a, 'night:a'));
    await send(store, 'night:a', '1');
    await store.addOutbound(outbound(b, 'night:b'));
    await store.close();
    const raw = new Database(at.path);
    const run = (sql: string) => () => raw.exec(sql);
    raw.exec(`insert into erasing values ('hill'), ('${a}')`);
    expect(run('delete from reading')).toThrow(/is kept/);
    expect(run('delete from advisory')).toThrow(/kept as issued/);
    expect(run('delete from outbound')).toThrow(/kept for ever/);
    // Being erased is no leave to change what was said.
    expect(run(`update reading set temp_c = 4 where greenhouse_id = 'hill' and replaced_by is null`)).toThrow(/stays as received/);
    expect(run(`update advisory set body = '' where greenhouse_id = 'hill'`)).toThrow(/stays as issued/);
    expect(run(`update outbound set state = 'waiting', finished_at_s = null where key = 'night:a'`)).toThrow(/sent or dropped once/);
    expect(run(`update outbound set key = 'night:c' where key = 'night:b'`)).toThrow(/stays as it was/);
    raw.exec(`delete from reading where greenhouse_id = 'hill'; delete from advisory where greenhouse_id = 'hill'; delete from outbound where chat_id = '${a}'`);
    const counts = raw.prepare(`select (select count(*) from reading) as readings, (select count(*) from advisory) as advisories, (select count(*) from outbound) as messages`).get();
    expect(counts).toEqual({ readings: 2, advisories: 1, messages: 1 });
    raw.close();
  });

  it('knows no update or job that is finished twice', async () => {
    const store = await openSqliteStore({ path: at.path });
    await store.keepInbound(inbound('1'));
    await store.addJob(job('a'));
    await store.finishInbound((await store.openInbound(1))[0]!.id, 'done', AT_S);
    await store.finishJob((await store.dueJobs(AT_S, 1))[0]!.id, 'done', AT_S);
    await store.close();
    const raw = new Database(at.path);
    expect(() => raw.exec(`update inbound set state = 'open', finished_at_s = null, content = '{}'`)).toThrow(/finished once/);
    expect(() => raw.exec(`update job set state = 'open', finished_at_s = null`)).toThrow(/done or dropped once/);
    raw.close();
  });

  it('leaves the loophole closed after every erasing, also one that is undone', async () => {
    const store = await openSqliteStore({ path: at.path });
    await store.addReading(reading);
    await newChat(store, 'a');
    const undone = store.atomically(async (within) => {
      await within.eraseGreenhouse('hill');
      throw new Error('pulled plug');
    });
    await expect(undone).rejects.toThrow('pulled plug');
    await store.eraseGreenhouse('hill');
    await store.eraseChat((await store.chat({ channel: 'telegram', chat: 'a' }))!.id);
    await store.close();
    const raw = new Database(at.path, { readonly: true });
    expect(raw.prepare('select * from erasing').all()).toEqual([]);
    expect(raw.prepare('select count(*) as n from reading').get()).toEqual({ n: 0 });
    raw.close();
  });
});

describe('a file that cannot be a store is refused', () => {
  it('when it is not a database, and is left as it was', async () => {
    writeFileSync(at.path, 'my diary, not a database\n'.repeat(100));
    await expect(openSqliteStore({ path: at.path })).rejects.toThrow(/expected a SQLite database, got a file of another kind.*Set another path/);
    await expect(openSqliteStore({ path: at.path })).rejects.toMatchObject({ name: 'StoreError', code: 'not-a-database' });
    expect(readFileSync(at.path, 'utf8')).toBe('my diary, not a database\n'.repeat(100));
    // The refusal let go of the lock: with the file away, the store opens.
    await (await openSqliteStore({ path: join(at.folder, 'other.sqlite') })).close();
  });

  it('when it is damaged inside', async () => {
    const store = await openSqliteStore({ path: at.path });
    for (let n = 0; n < 50; n++) await store.addAdvisory({ ...advisory, body: JSON.stringify({ n, text: 'x'.repeat(2000) }) });
    await store.close();
    const bytes = readFileSync(at.path);
    bytes.fill(0x5a, 40_000, 80_000);
    writeFileSync(at.path, bytes);
    await expect(openSqliteStore({ path: at.path })).rejects.toMatchObject({ code: 'damaged', message: expect.stringMatching(/damaged.*backup/) as string });
  });

  it('when it belongs to another program, or to a newer Duskward', async () => {
    const other = new Database(at.path);
    other.exec('create table invoices (n integer)');
    other.close();
    await expect(openSqliteStore({ path: at.path })).rejects.toMatchObject({ code: 'another-program', message: expect.stringContaining('"invoices"') as string });

    const ours = join(at.folder, 'ours.sqlite');
    await (await openSqliteStore({ path: ours })).close();
    const raw = new Database(ours);
    raw.exec(`insert into kysely_migration values ('9999-later', '2099-01-01T00:00:00.000Z')`);
    raw.close();
    await expect(openSqliteStore({ path: ours })).rejects.toMatchObject({ code: 'newer-version' });
  });

  it('when the path is empty, a folder, or under a file', async () => {
    await expect(openSqliteStore({ path: '  ' })).rejects.toMatchObject({ code: 'bad-path' });
    await expect(openSqliteStore({ path: at.folder })).rejects.toMatchObject({ code: 'bad-path', message: expect.stringContaining('got a folder') as string });
    writeFileSync(join(at.folder, 'plain'), '');
    await expect(openSqliteStore({ path: join(at.folder, 'plain', 'duskward.sqlite') })).rejects.toMatchObject({ code: 'not-writable' });
    expect(existsSync(`${at.folder}-lock`)).toBe(false);
  });

  it('when the folder is not writable, and when the file is not', async () => {
    const folder = join(at.folder, 'closed');
    mkdirSync(folder);
    const path = join(folder, 'duskward.sqlite');
    chmodSync(at.folder, 0o755);
    chmodSync(folder, 0o555);
    await asPlainUser(() => expect(openSqliteStore({ path })).rejects.toMatchObject({ code: 'not-writable', message: expect.stringMatching(/write permission on the folder/) as string }));
    await asPlainUser(() => expect(openSqliteStore({ path: join(folder, 'sub', 'duskward.sqlite') })).rejects.toMatchObject({ code: 'not-writable' }));
    expect(readdirSync(folder)).toEqual([]);

    chmodSync(folder, 0o777);
    await (await openSqliteStore({ path })).close();
    chmodSync(path, 0o444);
    chmodSync(`${path}-lock`, 0o444);
    await asPlainUser(() => expect(openSqliteStore({ path })).rejects.toMatchObject({ code: 'not-writable', message: expect.stringContaining('-lock') as string }));
    chmodSync(`${path}-lock`, 0o666);
    await asPlainUser(() => expect(openSqliteStore({ path })).rejects.toMatchObject({ code: 'not-writable', message: expect.stringMatching(/write permission on the file/) as string }));
  });
});

describe('one process a store', () => {
  it('refuses a second opening, also by another name of the file, until the first is closed', async () => {
    const first = await openSqliteStore({ path: at.path });
    await expect(openSqliteStore({ path: at.path })).rejects.toMatchObject({ code: 'in-use' });
    const alias = join(at.folder, 'alias.sqlite');
    symlinkSync(at.path, alias);
    await expect(openSqliteStore({ path: alias })).rejects.toMatchObject({ code: 'in-use' });
    await first.addReading(reading);
    await first.close();
    await (await openSqliteStore({ path: alias })).close();
  });
});

/** Root may write anywhere: it becomes nobody for the while. */
async function asPlainUser(run: () => Promise<unknown>): Promise<void> {
  const NOBODY = 65534;
  const root = process.geteuid?.() === 0;
  if (root) process.seteuid?.(NOBODY);
  try {
    await run();
  } finally {
    if (root) process.seteuid?.(0);
  }
}
