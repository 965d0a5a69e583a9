import Database from 'better-sqlite3';
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { backup } from '../../../bot/commands/backup.js';
import type { Memory } from '../../../bot/journal.js';
import { copyOfFile } from '../../../bot/store/backup.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { EVENING_S, inbound, job, keys, newChat, outbound, send, updates } from '../../contract/journal/rows.js';
import { storeFolder, type StoreFolder } from './store-folder.js';
import { startWriter } from './writer-process.js';
import { runScript, type ScriptEnd } from '../../fixtures/script.js';

const reading = { greenhouseId: 'hill', receivedAtS: EVENING_S, validAtS: EVENING_S, place: 'inside', statistic: 'low', tempC: -3, text: '-3' } as const;

let at: StoreFolder;
let copy: string;
beforeEach(() => {
  at = storeFolder();
  copy = join(at.folder, 'copy.sqlite');
});
afterEach(() => at.remove());

/** One of everything that must come back. */
async function furnish(memory: Memory): Promise<string> {
  const chatId = await newChat(memory);
  await memory.updateChat(chatId, { greenhouseId: 'hill' });
  await memory.saveGreenhouse({ id: 'hill', body: '{"a":1}', savedAtS: EVENING_S });
  await memory.addReading(reading);
  await memory.addAction({ greenhouseId: 'hill', receivedAtS: EVENING_S, night: '2026-01-14', body: '{}', done: true, text: 'covered' });
  await memory.saveWeather({ placeKey: 'p', issuedAtS: EVENING_S, body: '{}' });
  await memory.addAdvisory({ greenhouseId: 'hill', night: '2026-01-14', issuedAtS: EVENING_S, body: '{}' });
  await memory.keepInbound(inbound('1'));
  await memory.addOutbound(outbound(chatId, 'night:sent'));
  await send(memory, 'night:sent', '50');
  await memory.addOutbound(outbound(chatId, 'night:waiting'));
  await memory.addJob(job('advisory:1'));
  await memory.addInvite({ code: 'k7m2', greenhouseId: 'hill', validUntilS: EVENING_S });
  return chatId;
}

const everything = async (memory: Memory, chatId: string) => ({
  chat: await memory.chatById(chatId),
  greenhouse: await memory.greenhouse('hill'),
  readings: await memory.readings('hill', 10),
  actions: await memory.actions('hill', 0),
  weather: await memory.lastWeather('p'),
  advisory: await memory.lastAdvisory('hill'),
  inbound: await memory.openInbound(10),
  due: await memory.dueOutbound(EVENING_S, 10),
  sent: await memory.outboundSentAs(chatId, '50'),
  jobs: await memory.dueJobs(EVENING_S, 10),
});

/** Every row of every table, to compare two files. */
function contents(path: string): Readonly<Record<string, readonly unknown[]>> {
  const raw = new Database(path, { readonly: true });
  const tables = raw.prepare<[], { name: string }>(`select name from sqlite_schema where type = 'table' order by name`).all();
  const rows = Object.fromEntries(tables.map(({ name }) => [name, raw.prepare(`select * from "${name}"`).all()]));
  raw.close();
  return rows;
}

describe('a backup', () => {
  it('restored after a pulled plug brings everything back: stop, move away, copy back, start', async () => {
    const first = await openSqliteStore({ path: at.path });
    const chatId = await furnish(first);
    const before = await everything(first, chatId);
    await first.backup(copy);
    await first.close();
    // What comes after the backup, by a process that dies and leaves its log of changes behind.
    const writer = startWriter(at.path, '0', 'write');
    await writer.line('withdrawn');
    await writer.kill();
    expect(existsSync(`${at.path}-wal`)).toBe(true);

    const away = join(at.folder, 'away');
    mkdirSync(away);
    for (const name of [at.path, `${at.path}-wal`, `${at.path}-shm`]) if (existsSync(name)) renameSync(name, join(away, basename(name)));
    copyFileSync(copy, at.path);

    const restored = await openSqliteStore({ path: at.path });
    expect(await everything(restored, chatId)).toEqual(before);
    expect(await restored.keepInbound(inbound('1'))).toBe(false);
    expect(await restored.addOutbound(outbound(chatId, 'night:sent'))).toBe(false);
    expect(await restored.takeInvite('k7m2', EVENING_S)).toBe('hill');
    await restored.addReading({ ...reading, text: 'after' });
    expect((await restored.readings('hill', 10)).map(({ text }) => text)).toEqual(['after', '-3']);
    await restored.close();
  });

  it('put in place beside the log of the old database is refused: the log would spoil it', async () => {
    const first = await openSqliteStore({ path: at.path });
    await first.backup(copy);
    await first.close();
    const writer = startWriter(at.path, '0', 'write');
    await writer.line('withdrawn');
    await writer.kill();
    copyFileSync(copy, at.path);
    await expect(openSqliteStore({ path: at.path })).rejects.toMatchObject({ code: 'stray-log', message: expect.stringContaining(`Move ${at.path}-wal and ${at.path}-shm away`) as string });
    for (const name of [`${at.path}-wal`, `${at.path}-shm`]) renameSync(name, join(at.folder, `old-${basename(name)}`));
    const restored = await openSqliteStore({ path: at.path });
    expect(await restored.readings('hill', 1)).toEqual([]);
    await restored.close();
  });

  it('is one file, sound, with every row', async () => {
    const memory = await openSqliteStore({ path: at.path });
    await furnish(memory);
    await memory.backup(copy);
    expect(readdirSync(at.folder).filter((name) => name.startsWith('copy'))).toEqual(['copy.sqlite']);
    expect(contents(copy)).toEqual(contents(at.path));
    await memory.close();
  });

  it('of a store in memory is a file too', async () => {
    const memory = await openSqliteStore({ path: ':memory:' });
    const chatId = await furnish(memory);
    const [before] = await Promise.all([everything(memory, chatId), memory.backup(copy), memory.addReading({ ...reading, text: 'meanwhile' })]);
    await memory.close();
    const restored = await openSqliteStore({ path: copy });
    expect((await everything(restored, chatId)).due).toEqual(before.due);
    await restored.close();
  });

  it('is of one instant, whatever is written meanwhile: what belongs together is in it together', async () => {
    const memory = await openSqliteStore({ path: at.path });
    const chatId = await newChat(memory);
    // Large enough for a copy in many steps.
    for (let n = 0; n < 20; n++) await memory.addAdvisory({ greenhouseId: 'hill', night: '2026-01-14', issuedAtS: EVENING_S, body: JSON.stringify({ n, x: 'x'.repeat(100_000) }) });
    let isOver = false;
    let n = 0;
    const writing = async (): Promise<void> => {
      for (; !isOver; n++) {
        const key = String(n);
        await memory.atomically(async (within) => {
          await within.keepInbound(inbound(key));
          await nextTurn();
          await within.addReading({ ...reading, text: key });
          await within.addOutbound(outbound(chatId, key));
        });
      }
    };
    const written = writing();
    for (let round = 0; round < 3; round++) {
      const path = `${copy}-${round}`;
      const from = n;
      await memory.backup(path);
      const rows = contents(path);
      const texts = (rows['reading'] as { text: string }[]).map(({ text }) => text).sort();
      expect(texts.length).toBeGreaterThanOrEqual(from);
      expect((rows['inbound'] as { update_id: string }[]).map((row) => row.update_id).sort()).toEqual(texts);
      expect((rows['outbound'] as { key: string }[]).map(({ key }) => key).sort()).toEqual(texts);
    }
    isOver = true;
    await written;
    await memory.close();
  });

  it('never overwrites a file, and needs a folder that is there', async () => {
    const memory = await openSqliteStore({ path: at.path });
    writeFileSync(copy, 'my diary');
    await expect(memory.backup(copy)).rejects.toMatchObject({ code: 'already-there' });
    expect(readFileSync(copy, 'utf8')).toBe('my diary');
    await expect(memory.backup(at.path)).rejects.toMatchObject({ code: 'already-there' });
    await expect(memory.backup(' ')).rejects.toMatchObject({ code: 'already-there' });
    await expect(memory.backup(join(at.folder, 'no', 'such'))).rejects.toMatchObject({ code: 'bad-path' });
    expect(readdirSync(at.folder).filter((name) => name.includes('unfinished'))).toEqual([]);
    await memory.close();
  });

  it('of a damaged file does not bear the name of a backup', async () => {
    const memory = await openSqliteStore({ path: at.path });
    for (let n = 0; n < 50; n++) await memory.addAdvisory({ greenhouseId: 'hill', night: '2026-01-14', issuedAtS: EVENING_S, body: JSON.stringify({ n, text: 'x'.repeat(2000) }) });
    await memory.close();
    const bytes = readFileSync(at.path);
    bytes.fill(0x5a, 150_000, 190_000);
    writeFileSync(at.path, bytes);
    await expect(copyOfFile(at.path, copy)).rejects.toMatchObject({ code: 'damaged' });
    expect(existsSync(copy)).toBe(false);
  });

  it('made by a newer Duskward is refused when it is restored, and left as it is', async () => {
    const memory = await openSqliteStore({ path: at.path });
    await furnish(memory);
    await memory.backup(copy);
    await memory.close();
    const newer = new Database(copy);
    newer.exec(`insert into kysely_migration values ('9999-later', '2099-01-01T00:00:00.000Z')`);
    newer.close();
    const before = contents(copy);
    await expect(openSqliteStore({ path: copy })).rejects.toMatchObject({ code: 'newer-version', message: expect.stringMatching(/another version of Duskward.*9999-later.*Run the version that wrote it/u) as string });
    expect(contents(copy)).toEqual(before);
  });
});

describe('duskward backup', () => {
  const run = (words: readonly string[]): Promise<ScriptEnd> => runScript('bot/main.ts', ['backup', ...words], { env: { DUSKWARD_DATABASE: at.path } });

  it('copies while the assistant runs and writes', async () => {
    const writer = startWriter(at.path, '0', 'write');
    await writer.line('withdrawn');
    const { status, out, err } = await run([copy]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/copy\.sqlite: \d+ bytes, a sound copy of /u);
    const acknowledged = (await writer.kill()).filter((line) => line.startsWith('added'));
    const readings = contents(copy)['reading']!;
    expect(readings.length).toBeGreaterThan(0);
    expect(readings.length).toBeLessThanOrEqual(contents(at.path)['reading']!.length);
    expect(acknowledged.length).toBeGreaterThan(0);
    const restored = await openSqliteStore({ path: copy });
    expect(updates(await restored.openInbound(1))).toEqual([]);
    expect(keys(await restored.dueJobs(EVENING_S, 1))).toEqual([]);
    await restored.close();
  });

  it('copies when nothing runs', async () => {
    await (await openSqliteStore({ path: at.path })).close();
    expect(await run([copy])).toMatchObject({ status: 0 });
    expect(contents(copy)).toEqual(contents(at.path));
  });

  it('says what is wrong: no database, of another program, a file in the way, no file named', async () => {
    expect(await run([copy])).toMatchObject({ status: 1, err: expect.stringMatching(/duskward: Cannot back up .*expected the file of a store, got nothing there/u) as string });
    const other = new Database(at.path);
    other.exec('create table invoices (n integer)');
    other.close();
    expect(await run([copy])).toMatchObject({ status: 1, err: expect.stringContaining('"invoices"') as string });
    expect(existsSync(copy)).toBe(false);
    await expect(backup([])).rejects.toThrow(/expected one FILE, got none/u);
    await expect(backup(['a', 'b'])).rejects.toThrow(/expected one FILE, got a b/u);
    await expect(backup(['--force', 'a'])).rejects.toThrow(/Unknown option '--force'/u);
  });
});
