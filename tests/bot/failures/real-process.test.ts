import Database from 'better-sqlite3';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { PNG } from 'pngjs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dayTimes } from '../../../bot/schedule/day-times.js';
import type { WorldMessage } from '../../fixtures/bot-api/chat-world.js';
import { silence } from '../../fixtures/hostile-weather.js';
import { startAssistant, THE_PROGRAM, type AssistantProcess } from '../../soak/assistant-process.js';
import { grower, settle, startWorld, within, type World } from '../../soak/world.js';

/** An afternoon on which nothing is due for a while. */
const START_S = Date.parse('2026-11-25T15:00:00Z') / 1000;
const HOUSE = grower(0);
/** A start with the source compiled on the way, on a machine that does other things too. */
const STARTS_WITHIN_MS = 40_000;
/** What the program promises, with a little for a machine that does other things too. */
const GOES_WITHIN_MS = 11_000;

let folder: string;
let world: World;
const processes: AssistantProcess[] = [];
const database = (name = 'duskward'): string => join(folder, `${name}.sqlite`);
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'duskward-process-'));
  world = await startWorld({ startS: START_S, speed: 1 });
  await settle(database(), [HOUSE], START_S);
});
afterEach(async () => {
  await Promise.all(processes.splice(0).map((started) => started.kill('SIGKILL')));
  await world.close();
  rmSync(folder, { recursive: true });
});

function start(path: string, more: Readonly<Record<string, string>> = {}): AssistantProcess {
  const started = startAssistant(THE_PROGRAM, world.settings(path, more));
  processes.push(started);
  return started;
}
async function listening(path = database()): Promise<AssistantProcess> {
  const started = start(path);
  expect(await within(STARTS_WITHIN_MS, () => world.api.isPolled() || started.isOver())).toBe(true);
  expect(started.errors).toEqual([]);
  return started;
}
const says = (text: string): unknown => world.api.act({ do: 'says', person: HOUSE.chat, text });
const heard = (): readonly string[] => world.api.sentTo(HOUSE.chat).map(({ text }) => text);
const readingsIn = (path: string): readonly string[] => {
  const file = new Database(path, { readonly: true });
  const texts = file.prepare<[], { text: string }>('select text from reading order by id').all();
  file.close();
  return texts.map(({ text }) => text);
};

describe('an evening of the whole program', () => {
  it('brings the message in time, once, with a picture that opens', async () => {
    await world.close();
    const { advisoryS, deadlineS } = dayTimes(HOUSE.greenhouse, HOUSE.zone, '2026-11-25');
    // Fast enough for minutes to pass, slow enough for an evening to be worked out in time.
    world = await startWorld({ startS: advisoryS - 60, speed: 30 });
    world.api.world.chat(HOUSE.chat).state = 'open';
    await listening();
    const evenings = (): readonly WorldMessage[] => world.api.sentTo(HOUSE.chat).filter(({ text }) => text.startsWith('Tonight, '));
    expect(await within(60_000, () => evenings().length > 0)).toBe(true);
    expect(evenings()[0]!.dateS).toBeLessThan(deadlineS);
    const pictures = world.api.sentTo(HOUSE.chat).flatMap(({ picture }) => (picture === null ? [] : [PNG.sync.read(Buffer.from(picture))]));
    expect(pictures).toHaveLength(1);
    expect(pictures[0]!.width).toBeGreaterThan(0);
    await sleepMs(2000);
    expect(evenings()).toHaveLength(1);
  });
});

describe('told to stop while an answer is worked out', () => {
  it('that never comes, it leaves within ten seconds with status 0; the next start answers all that was said, once', async () => {
    world.weather.script('/v1/forecast', silence);
    const first = await listening();
    says('tonight');
    says('low was -3C');
    expect(await within(10_000, () => world.weather.hits('/v1/forecast') > 0)).toBe(true);
    const toldMs = performance.now();
    expect((await first.kill('SIGTERM')).code).toBe(0);
    expect(performance.now() - toldMs).toBeLessThan(GOES_WITHIN_MS);
    expect(first.errors).toEqual([]);
    expect(heard()).toEqual([]);

    world.weather.script('/v1/forecast');
    await listening();
    expect(await within(60_000, () => heard().length >= 2)).toBe(true);
    expect(heard()).toEqual([expect.stringMatching(/^Tonight, /u), expect.stringMatching(/^Noted: -3C/u)]);
    expect(readingsIn(database())).toEqual(['low was -3C']);
    expect(world.api.pending()).toBe(0);
  });
});

describe('a start that must not be', () => {
  it('beside another process on the same database: refused with one line, and the other goes on', async () => {
    await listening();
    const second = start(database());
    expect((await second.ended).code).toBe(1);
    expect(second.errors).toEqual([expect.stringMatching(/^duskward: Cannot open the store .* already open, here or in another process\..*Stop the other Duskward/u)]);
    says('low was -3C');
    expect(await within(10_000, () => heard().length > 0)).toBe(true);
  });

  it('of a second process with the same bot: the older one ends with one line, the newer one goes on', async () => {
    const older = await listening();
    const newer = start(database('other'));
    expect((await older.ended).code).toBe(1);
    expect(older.errors).toEqual([expect.stringMatching(/^duskward: Another process receives this bot's messages .*409.*Only one may poll\.$/u)]);
    expect(await within(10_000, () => world.api.isPolled())).toBe(true);
    expect(newer.isOver()).toBe(false);
  });

  it('with a token that is wrong: one line, and the token is not in it', async () => {
    const token = `${world.api.token}x`;
    const wrong = start(database(), { DUSKWARD_TELEGRAM_TOKEN: token });
    expect((await wrong.ended).code).toBe(1);
    expect(wrong.errors).toEqual([expect.stringMatching(/^duskward: Telegram refuses the bot token .*401.*DUSKWARD_TELEGRAM_TOKEN/u)]);
    expect(wrong.errors.join('')).not.toContain(token);
  });
});
