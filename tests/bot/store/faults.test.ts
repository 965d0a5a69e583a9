import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Memory } from '../../../bot/journal.js';
import { openSqliteFile, type SqliteFile } from '../../../bot/store/open-sqlite.js';
import { memoryOn, openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { EVENING_S, inbound, keys, newChat, outbound, updates } from '../../contract/journal/rows.js';
import { storeFolder, type StoreFolder } from './store-folder.js';

const reading = { greenhouseId: 'hill', receivedAtS: EVENING_S, validAtS: EVENING_S, place: 'inside', statistic: 'low', tempC: -3, text: '-3' } as const;
const advisory = (size: number) => ({ greenhouseId: 'hill', night: '2026-01-14', issuedAtS: EVENING_S, body: JSON.stringify({ text: 'x'.repeat(size) }) });
const LARGE = 200_000;

let at: StoreFolder;
let file: SqliteFile;
let memory: Memory;
beforeEach(async () => {
  at = storeFolder();
  file = openSqliteFile(at.path, 0);
  memory = await memoryOn(file);
});
afterEach(async () => {
  await memory.close();
  at.remove();
});

/** No page more than there is now: what a full disk is to the database. */
const fillDisk = (): void => void file.database.pragma(`max_page_count = ${Number(file.database.pragma('page_count', { simple: true }))}`);
const makeRoom = (): void => void file.database.pragma('max_page_count = 1000000');

describe('a full disk', () => {
  it('fails the call with a word that helps, loses nothing, and is over when there is room', async () => {
    const kept = await memory.addReading(reading);
    fillDisk();
    await expect(memory.addAdvisory(advisory(LARGE))).rejects.toMatchObject({ name: 'StoreError', code: 'full', message: expect.stringMatching(/expected room on the disk, got ".+" \(SQLITE_FULL\)\. Nothing of this call was written\. Make room/u) as string });
    expect(await memory.lastAdvisory('hill')).toBeNull();
    expect(await memory.readings('hill', 10)).toEqual([kept]);
    makeRoom();
    await memory.addAdvisory(advisory(LARGE));
    expect(await memory.lastAdvisory('hill')).not.toBeNull();
  });

  it('in the middle of an atomic work undoes all of it, also when the work would go on', async () => {
    const chatId = await newChat(memory);
    await memory.keepInbound(inbound('1'));
    fillDisk();
    const work = memory.atomically(async (within) => {
      await within.addReading(reading);
      await within.addAdvisory(advisory(LARGE));
      await within.addOutbound(outbound(chatId, 'reply:1'));
    });
    await expect(work).rejects.toMatchObject({ code: 'full' });
    expect(await memory.readings('hill', 10)).toEqual([]);

    // A work that takes no notice: what it wrote is there whole, or nothing of it.
    const stubborn = await memory
      .atomically(async (within) => {
        await within.addReading(reading);
        await within.addAdvisory(advisory(LARGE)).catch(() => undefined);
        await within.addOutbound(outbound(chatId, 'reply:1'));
      })
      .then(() => 'written', () => 'undone');
    makeRoom();
    const written = stubborn === 'written';
    expect(await memory.readings('hill', 10)).toHaveLength(written ? 1 : 0);
    expect(await memory.dueOutbound(EVENING_S, 10)).toHaveLength(written ? 1 : 0);
    expect(updates(await memory.openInbound(10))).toEqual(['1']);
    await memory.atomically((within) => within.addReading(reading));
  });

  it('leaves a message that was being sent to be recovered', async () => {
    const chatId = await newChat(memory);
    await memory.addOutbound(outbound(chatId, 'a'));
    const [row] = await memory.dueOutbound(EVENING_S, 1);
    await memory.beginSend(row!.id, EVENING_S);
    fillDisk();
    await expect(memory.endSend(row!.id, { state: 'sent', sentAs: 'x'.repeat(LARGE) }, EVENING_S)).rejects.toMatchObject({ code: 'full' });
    makeRoom();
    expect(await memory.recoverSends()).toBe(1);
    expect(keys(await memory.dueOutbound(EVENING_S, 1))).toEqual(['a']);
  });

  it('at the first start leaves no half-made tables', async () => {
    const small = storeFolder();
    const fresh = openSqliteFile(small.path);
    fresh.database.pragma('max_page_count = 8');
    await expect(memoryOn(fresh)).rejects.toMatchObject({ code: 'full' });
    const later = await openSqliteStore({ path: small.path });
    await later.addReading(reading);
    await later.close();
    small.remove();
  });
});

describe('when SQLite itself has undone the transaction', () => {
  it('a work that goes on is stopped: nothing of it is written on its own', async () => {
    const work = memory.atomically(async (within) => {
      await within.addReading(reading);
      // What SQLite does by itself after some errors of the disk.
      file.database.exec('rollback');
      await within.addReading({ ...reading, text: 'stray' });
    });
    await expect(work).rejects.toMatchObject({ code: 'undone' });
    expect(await memory.readings('hill', 10)).toEqual([]);
    await memory.addReading(reading);
  });

  it('the first error is the one that is told', async () => {
    const work = memory.atomically(async (within) => {
      await within.addReading(reading);
      file.database.exec('rollback');
      throw new Error('disk on fire');
    });
    await expect(work).rejects.toThrow('disk on fire');
  });
});

describe('a file that another program holds', () => {
  it('fails the write as locked, lets reads through, and is over when it lets go', async () => {
    const kept = await memory.addReading(reading);
    const other = new Database(at.path);
    other.exec('begin immediate');
    for (const write of [() => memory.addReading(reading), () => memory.withdrawReading(kept.id, EVENING_S), () => memory.atomically((within) => within.addReading(reading)), () => memory.keepInbound(inbound('1'))]) {
      await expect(write()).rejects.toMatchObject({ code: 'locked', message: expect.stringMatching(/expected to be the only writer.*Nothing of this call was written/u) as string });
    }
    expect(await memory.readings('hill', 10)).toEqual([kept]);
    other.exec('rollback');
    other.close();
    expect(await memory.keepInbound(inbound('1'))).toBe(true);
  });

  it('cannot be opened as a store meanwhile, and says so', async () => {
    await memory.close();
    const other = new Database(at.path);
    other.pragma('locking_mode = exclusive');
    other.exec('begin exclusive');
    await expect(openSqliteStore({ path: at.path, busyTimeoutMs: 0 })).rejects.toMatchObject({ code: 'locked' });
    other.close();
    await (await openSqliteStore({ path: at.path })).close();
  });
});

describe('a database that may only be read', () => {
  it('fails the write as not writable, and lets reads through', async () => {
    const kept = await memory.addReading(reading);
    file.database.pragma('query_only = on');
    await expect(memory.addReading(reading)).rejects.toMatchObject({ code: 'not-writable', message: expect.stringContaining('mounted read-only') as string });
    await expect(memory.atomically((within) => within.addReading(reading))).rejects.toMatchObject({ code: 'not-writable' });
    expect(await memory.readings('hill', 10)).toEqual([kept]);
    file.database.pragma('query_only = off');
    await memory.addReading(reading);
  });
});
