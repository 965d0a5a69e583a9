import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Memory } from '../../../bot/journal.js';
import { jobsOfDay } from '../../../bot/schedule/day-jobs.js';
import { tick, type TickPorts } from '../../../bot/schedule/tick.js';
import { StoreError } from '../../../bot/store/store-error.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { grower } from '../../soak/world.js';

const HOUSES = [grower(0), grower(3)];
const DATE = '2026-11-25';
const AT_S = Date.parse('2026-11-26T03:00:00Z') / 1000;
const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
const full = (): Promise<never> => Promise.reject(new StoreError('full', 'database or disk is full'));

let memory: Memory;
beforeEach(async () => {
  memory = await openSqliteStore({ path: ':memory:' });
  for (const { id, file, greenhouse, zone } of HOUSES) {
    await memory.saveGreenhouse({ id, body: JSON.stringify(file), savedAtS: AT_S });
    for (const job of jobsOfDay(id, greenhouse, zone, DATE)) if (job.kind === 'advisory') await memory.addJob(job);
  }
});
afterEach(() => memory.close());

const asked: string[] = [];
beforeEach(() => void asked.splice(0));
const ports = (more: Partial<TickPorts> = {}): TickPorts => ({
  memory,
  clock: { nowS: () => AT_S },
  log: quiet,
  weather: {
    weatherAt: () => {
      asked.push('weather');
      return Promise.reject(new Error('a fault of ours'));
    },
  },
  workOut: () => Promise.reject(new Error('never comes so far')),
  workOutWeek: () => Promise.reject(new Error('never comes so far')),
  count: () => undefined,
  ...more,
});
const attempts = async (): Promise<readonly number[]> => (await memory.dueJobs(AT_S + 86_400, 10)).map((job) => job.attempts);

describe('jobs that are due', () => {
  it('that fail are each put off and counted, and hold up no other', async () => {
    expect(await tick(ports())).toBe(2);
    expect(asked).toHaveLength(2);
    expect(await attempts()).toEqual([1, 1]);
  });

  it('that a full disk does not let end are put off, and it is not counted against them', async () => {
    const noWeather = { weatherAt: () => full() };
    expect(await tick(ports({ weather: noWeather }))).toBe(2);
    expect(await attempts()).toEqual([0, 0]);
    expect(await memory.dueJobs(AT_S, 10)).toEqual([]);
  });

  it('that cannot even be put off are left for the next minute: the tick ends', async () => {
    const stuck: Memory = { ...memory, atomically: full, moveJob: full, postponeJob: full };
    expect(await tick(ports({ memory: stuck }))).toBe(0);
    expect(asked).toHaveLength(2);
    expect(await memory.dueJobs(AT_S, 10)).toHaveLength(2);
  });

  it('after a stop none is begun, and one that is cut off by it is done after the next start', async () => {
    const stop = new AbortController();
    const weather = {
      weatherAt: () => {
        asked.push('weather');
        stop.abort();
        return Promise.reject(new Error('taken away by the stop'));
      },
    };
    await tick(ports({ weather }), { signal: stop.signal });
    expect(asked.length).toBeLessThanOrEqual(2);
    expect(await attempts()).toEqual([0, 0]);
    await tick(ports(), { signal: stop.signal });
    expect(await memory.dueJobs(AT_S, 10)).toHaveLength(2);
  });
});
