import Database from 'better-sqlite3';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { afterEach, describe, expect, it } from 'vitest';
import { dayTimes } from '../../../bot/schedule/day-times.js';
import { grower, within } from '../../soak/world.js';
import { startRunning, type Running } from './running.js';

const LONG_MS = 40_000;
const LONG_BYTES = 9_000;
/** Nothing is due for a while. */
const QUIET_S = Date.parse('2026-11-25T15:00:00Z') / 1000;

let running: Running;
afterEach(() => running.close());
const start = async (startS = QUIET_S, speed = 60, growers?: number): Promise<void> => void (running = await startRunning({ startS, speed, ...(growers === undefined ? {} : { growers }) }));
const texts = async (n: number): Promise<readonly string[]> => (await running.memory.readings(running.growers[n]!.id, 100)).map(({ text }) => text).reverse();
/** When the first grower's evening message is due, and when the work must be done. */
const { advisoryS: DUE_S, deadlineS: DEADLINE_S } = dayTimes(grower(0).greenhouse, grower(0).zone, '2026-11-25');

describe('an answer that fails', () => {
  it('every time is set aside with a word; what comes after it and other growers are answered', async () => {
    await start();
    running.beforeAnswer = (text) => {
      if (text === 'poison') throw new Error('a fault of ours');
    };
    running.says(0, 'poison');
    running.says(0, 'low was -3C');
    running.says(1, 'low was -2C');
    expect(await within(LONG_MS, () => running.heard(0).length >= 2 && running.heard(1).length >= 1)).toBe(true);
    expect(running.heard(0)).toEqual([expect.stringMatching(/^I could not handle that message, and have put it aside/u), expect.stringMatching(/^Noted: -3C/u)]);
    expect(running.heard(1)).toEqual([expect.stringMatching(/^Noted: -2C/u)]);
    expect(running.counted.filter((event) => event === 'inbound-parked')).toHaveLength(1);
  });

  it('once is given at the second try, once', async () => {
    await start();
    running.beforeAnswer = () => {
      running.beforeAnswer = () => undefined;
      throw new Error('a fault that passes');
    };
    running.says(0, 'low was -3C');
    expect(await within(LONG_MS, () => running.heard(0).length > 0)).toBe(true);
    await sleepMs(1000);
    expect(running.heard(0)).toEqual([expect.stringMatching(/^Noted: -3C/u)]);
    expect(await texts(0)).toEqual(['low was -3C']);
  });
});

describe('a send whose answer is lost', () => {
  it('comes twice and no more, before what follows it; other growers get theirs once', async () => {
    await start();
    running.world.api.fail({ method: 'sendMessage', chat: running.growers[0]!.chat, fault: { kind: 'lost-answer' } });
    for (const reading of ['low was -3C', 'low was -4C']) for (const n of [0, 1]) running.says(n, reading);
    expect(await within(LONG_MS, () => running.heard(0).length >= 3 && running.heard(1).length >= 2)).toBe(true);
    await sleepMs(1000);
    expect(running.heard(0).map((text) => text.slice(0, 10))).toEqual(['Noted: -3C', 'Noted: -3C', 'Noted: -4C']);
    expect(running.heard(1).map((text) => text.slice(0, 10))).toEqual(['Noted: -3C', 'Noted: -4C']);
    expect(await texts(0)).toEqual(['low was -3C', 'low was -4C']);
  });
});

describe('a database that another program holds', () => {
  it('keeps what came in with the service, says so, and all of it is answered once when it is free', async () => {
    await start();
    const other = new Database(running.path);
    other.exec('begin immediate');
    for (const reading of ['low was -3C', 'low was -4C']) for (const n of [0, 1]) running.says(n, reading);
    expect(await within(LONG_MS, () => running.channel.trouble() !== null)).toBe(true);
    expect(running.channel.trouble()).toMatch(/^what came in cannot be kept: .*expected to be the only writer/u);
    await sleepMs(1500);
    expect(running.heard(0)).toEqual([]);
    expect(running.world.api.pending()).toBe(4);
    other.exec('rollback');
    other.close();
    expect(await within(LONG_MS, () => running.heard(0).length >= 2 && running.heard(1).length >= 2)).toBe(true);
    expect(running.channel.trouble()).toBeNull();
    for (const n of [0, 1]) expect(await texts(n)).toEqual(['low was -3C', 'low was -4C']);
    for (const n of [0, 1]) expect(running.heard(n)).toHaveLength(2);
  });
});

/** No page more than there is now, and none of them free. */
async function fillDisk(): Promise<void> {
  running.file.database.pragma(`max_page_count = ${Number(running.file.database.pragma('page_count', { simple: true }))}`);
  for (const size of [10_000, 1_000, 100]) {
    for (let n = 0, isFull = false; !isFull; n += 1) isFull = await running.memory.saveWeather({ placeKey: `filler ${size} ${n}`, issuedAtS: QUIET_S, body: 'x'.repeat(size) }).then(() => false, () => true);
  }
}

describe('a full disk', () => {
  it('in the evening: nothing is acknowledged that is not kept; all comes once, the evening message too, when there is room', async () => {
    await start(DUE_S - 300, 60, 1);
    await fillDisk();
    const quick = running.workOut;
    // More than the free part of the last page of any table.
    running.workOut = async (question) => {
      const evening = await quick(question);
      return { ...evening, advisory: { ...evening.advisory, greenhouse: evening.advisory.greenhouse.padEnd(LONG_BYTES) } };
    };
    expect(running.world.nowS()).toBeLessThan(DUE_S);
    running.says(0, 'low was -3C'.padEnd(LONG_BYTES, ' inside'));
    expect(await within(LONG_MS, () => running.world.nowS() > DUE_S + 180)).toBe(true);
    expect(running.heard(0)).toEqual([]);
    running.file.database.pragma('max_page_count = 1000000');
    expect(await within(LONG_MS, () => running.heardOf(0, 'Noted: ').length > 0 && running.heardOf(0, 'Tonight, ').length > 0)).toBe(true);
    expect(running.world.nowS()).toBeLessThan(DEADLINE_S);
    await sleepMs(1000);
    expect(running.heardOf(0, 'Noted: ')).toHaveLength(1);
    expect(running.heardOf(0, 'Tonight, ')).toHaveLength(1);
    expect(await texts(0)).toHaveLength(1);
  });
});

describe('a chat service that is down for an hour around the evening message', () => {
  it.each([
    ['breaks every connection', { kind: 'cut' } as const],
    ['says that it is out of order', { kind: 'answer', code: 500, description: 'Internal Server Error' } as const],
  ])('and %s: the message comes once, in time for the work, and what growers wrote is answered once', async (_how, fault) => {
    await start(DUE_S - 3000, 600, 1);
    running.world.api.fail({ times: 1_000_000, fault });
    running.says(0, 'low was -3C');
    expect(await within(LONG_MS, () => running.world.nowS() >= DUE_S + 600)).toBe(true);
    expect(running.heard(0)).toEqual([]);
    running.world.api.faultsOver();
    expect(await within(LONG_MS, () => running.heardOf(0, 'Noted: ').length > 0 && running.heardOf(0, 'Tonight, ').length > 0)).toBe(true);
    const advisory = running.world.api.sentTo(running.growers[0]!.chat).find(({ text }) => text.startsWith('Tonight, '))!;
    expect(advisory.dateS).toBeLessThan(DEADLINE_S);
    await sleepMs(2000);
    expect(running.heardOf(0, 'Noted: ')).toHaveLength(1);
    expect(running.heardOf(0, 'Tonight, ')).toHaveLength(1);
  });
});

describe('a question in a topic of a group', () => {
  it('is answered there', async () => {
    await start();
    const { chat: person } = running.growers[0]!;
    running.world.api.act({ do: 'says', person, chat: -5001, topic: 77, text: '/start' });
    expect(await within(LONG_MS, () => running.world.api.sentTo(-5001).length > 0)).toBe(true);
    expect(running.world.api.sentTo(-5001).map(({ topic }) => topic)).toEqual([77]);
  });
});
