import Database from 'better-sqlite3';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { seeded } from './seeded.js';
import { storeFolder, type StoreFolder } from './store-folder.js';
import { startPostOffice } from './writer-process.js';

const SEED = 20_260_115;
// A soak: KILL_ROUNDS=500 npx vitest run --config config/vitest.config.ts tests/bot/store/kill-journal.test.ts
const ROUNDS = Number(process.env['KILL_ROUNDS'] ?? 12);
// A life is counted in what it did, so that a slow machine does not only kill processes that are still starting.
const MOST_LINES = 80;
const LONGEST_GRACE_MS = 8;
const ROUND_TAKES_AT_MOST_MS = 20_000;
const ENDLESS = 1_000_000_000;

let at: StoreFolder;
beforeEach(() => {
  at = storeFolder();
});
afterEach(() => at.remove());

/** What the world outside saw, over all lives of the process. */
interface Outside {
  /** The last update that the service was told to forget. */
  confirmed: number;
  readonly sent: string[];
  readonly failed: string[];
  recovered: number;
}

function watch(lines: readonly string[], outside: Outside): void {
  for (const line of lines) {
    const [word, what = ''] = line.split(' ');
    if (word === 'confirmed') outside.confirmed = Number(what);
    if (word === 'sent') outside.sent.push(what);
    if (word === 'open') outside.recovered += Number(what);
    if (word === 'failed') outside.failed.push(line);
  }
}

describe('a process that receives, answers and sends, and is killed', () => {
  it(
    `loses no update, applies none twice and loses no message in ${ROUNDS} kills at random moments`,
    async () => {
      const random = seeded(SEED);
      const outside: Outside = { confirmed: -1, sent: [], failed: [], recovered: 0 };
      for (let round = 0; round < ROUNDS; round++) {
        const office = startPostOffice(at.path, outside.confirmed + 1, ENDLESS);
        await office.lines(1 + random() * MOST_LINES);
        await sleepMs(random() * LONGEST_GRACE_MS);
        watch(await office.kill(), outside);
      }
      // The last life works off what is there, takes a few more, and ends by itself.
      const last = outside.confirmed + 10;
      watch(await startPostOffice(at.path, outside.confirmed + 1, last).ended, outside);
      expect(outside.failed).toEqual([]);
      expect(outside.confirmed).toBe(last);

      const raw = new Database(at.path, { readonly: true });
      const all = (sql: string): readonly string[] => raw.prepare<[], { t: string }>(sql).all().map(({ t }) => t);
      const updates = Array.from({ length: last + 1 }, (_, n) => n);
      // Every confirmed update had its effect, each once, in order in each chat.
      const readings = all('select text as t from reading order by id');
      expect([...readings].sort()).toEqual(updates.map((n) => `reading ${n}`).sort());
      const numbers = readings.map((text) => Number(text.split(' ')[1]));
      for (let chat = 0; chat < 3; chat++) expect(numbers.filter((n) => n % 3 === chat)).toEqual(updates.filter((n) => n % 3 === chat));

      // Every answer and every night's message is there once, and is marked as sent.
      const nights = [...new Set(updates.map((n) => `night:${n % 3}:${Math.floor(n / 5)}`))];
      const messages = [...updates.map((n) => `reply:${n}`), ...nights];
      expect([...all(`select key as t from outbound where state = 'sent'`)].sort()).toEqual([...messages].sort());
      expect(all(`select key as t from outbound where state <> 'sent'`)).toEqual([]);
      expect([...all('select body as t from advisory')].sort()).toEqual([...nights].sort());
      expect(all(`select update_id as t from inbound where state <> 'done' or content is not null`)).toEqual([]);

      // What is marked as sent did leave; what left twice was on its way when the plug was pulled, at most one a life.
      const left = new Set(outside.sent);
      expect(messages.filter((key) => !left.has(key))).toEqual([]);
      const twice = outside.sent.length - left.size;
      expect(twice).toBeLessThanOrEqual(outside.recovered);
      expect(outside.recovered).toBeLessThanOrEqual(ROUNDS);
      // First arrivals in each chat come in the order of the answers.
      const replies = [...left].filter((key) => key.startsWith('reply:')).map((key) => Number(key.slice('reply:'.length)));
      for (let chat = 0; chat < 3; chat++) expect(replies.filter((n) => n % 3 === chat)).toEqual(updates.filter((n) => n % 3 === chat));

      // The kills hit work in full swing.
      expect(last).toBeGreaterThan(ROUNDS * 5);
      expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
      raw.close();
      console.info(`${ROUNDS} kills: ${updates.length} updates, ${messages.length} messages; lost 0, applied twice 0, sent again after a kill during the send ${twice}`);
    },
    ROUND_TAKES_AT_MOST_MS * (ROUNDS + 1),
  );
});
