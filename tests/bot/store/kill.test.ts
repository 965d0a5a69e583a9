import Database from 'better-sqlite3';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { seeded } from './seeded.js';
import { storeFolder, type StoreFolder } from './store-folder.js';
import { startWriter } from './writer-process.js';

const SEED = 20_260_114;
const ROUNDS = 12;
// A life is counted in what it did, so that a slow machine does not only kill processes that are still starting.
const MOST_LINES = 100;
const LONGEST_GRACE_MS = 5;

let at: StoreFolder;
beforeEach(() => {
  at = storeFolder();
});
afterEach(() => at.remove());

describe('a process that is killed', () => {
  it(`loses no acknowledged reading in ${ROUNDS} kills at random moments`, async () => {
    const random = seeded(SEED);
    const acknowledged: string[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const writer = startWriter(at.path, String(round), 'write');
      await writer.lines(2 + random() * MOST_LINES);
      await sleepMs(random() * LONGEST_GRACE_MS);
      acknowledged.push(...(await writer.kill()));
      // The next one opens at once: nobody has to clear a lock away.
      await (await openSqliteStore({ path: at.path })).close();
    }
    const rows = storedReadings(at.path);
    const words = acknowledged.map((line) => line.split(' '));
    const said = (word: string): readonly string[][] => words.filter(([first]) => first === word);
    const lost = [
      ...said('added').filter(([, id, text]) => rows.get(Number(id))?.text !== text),
      ...said('replaced').filter(([, id, by]) => rows.get(Number(id))?.replaced_by !== Number(by) || !rows.has(Number(by))),
      ...said('withdrawn').filter(([, id]) => typeof rows.get(Number(id))?.withdrawn_at_s !== 'number'),
    ];
    expect(said('failed')).toEqual([]);
    expect(lost).toEqual([]);
    // The kills hit work in full swing, and at most the one call under way in each round went unacknowledged.
    expect(said('added').length).toBeGreaterThan(ROUNDS * 5);
    expect(said('replaced').length).toBeGreaterThan(ROUNDS);
    const unacknowledged = rows.size - said('added').length - said('replaced').length;
    expect(unacknowledged).toBeGreaterThanOrEqual(0);
    expect(unacknowledged).toBeLessThanOrEqual(ROUNDS);
    // Both rows of a correction or neither.
    const corrected = [...rows.values()].filter((row) => row.text.endsWith('-corrected')).length;
    expect([...rows.values()].filter((row) => row.replaced_by !== null)).toHaveLength(corrected);
  });

  it('while it makes the file leaves one that opens', async () => {
    const random = seeded(SEED + 1);
    for (let round = 0; round < 6; round++) {
      const fresh = storeFolder();
      const writer = startWriter(fresh.path, String(round), 'write');
      await writer.line('opening');
      await sleepMs(random() * 12);
      await writer.kill();
      const store = await openSqliteStore({ path: fresh.path });
      expect(await store.lastAdvisory('hill')).toBeNull();
      await store.close();
      fresh.remove();
    }
  });
});

describe('a second process', () => {
  it('is refused while the first lives, and let in when the first is killed', async () => {
    const holder = startWriter(at.path, 'holder', 'hold');
    await holder.line('open');
    const lines = await startWriter(at.path, 'second', 'write').ended;
    expect(lines.at(-1)).toMatch(/^failed in-use .*already open, here or in another process.*Stop the other Duskward/);
    await expect(openSqliteStore({ path: at.path })).rejects.toMatchObject({ code: 'in-use' });
    await holder.kill();
    const store = await openSqliteStore({ path: at.path });
    expect(await store.readings('hill', 1)).toEqual([]);
    await store.close();
  });
});

interface ReadingRow {
  readonly id: number;
  readonly text: string;
  readonly replaced_by: number | null;
  readonly withdrawn_at_s: number | null;
}

function storedReadings(path: string): ReadonlyMap<number, ReadingRow> {
  const raw = new Database(path, { readonly: true });
  const rows = raw.prepare<[], ReadingRow>('select id, text, replaced_by, withdrawn_at_s from reading').all();
  raw.close();
  return new Map(rows.map((row) => [row.id, row]));
}
