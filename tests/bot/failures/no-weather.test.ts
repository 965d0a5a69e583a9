import { DateTime } from 'luxon';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Channel } from '../../../bot/chat.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import type { Memory } from '../../../bot/journal.js';
import { postman } from '../../../bot/post/send-outbound.js';
import { jobsOfDay } from '../../../bot/schedule/day-jobs.js';
import { dayTimes } from '../../../bot/schedule/day-times.js';
import { tick } from '../../../bot/schedule/tick.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { liveSource, type LiveSource } from '../../../bot/weather/live-source.js';
import { workOutWeekHere } from '../../../bot/threads/week-work.js';
import { error, startHostileWeather, type HostileWeather } from '../../fixtures/hostile-weather.js';
import { grower } from '../../soak/world.js';

const HOUSE = grower(0);
const local = (text: string): number => DateTime.fromISO(text, { zone: HOUSE.zone }).toSeconds();
/** From before dawn of the second day on: that evening has an old forecast, the next one none that is young enough. */
const DOWN_FROM_S = local('2026-11-26T03:30');
const DOWN_UNTIL_S = DOWN_FROM_S + 40 * 3600;
const BEGIN_S = local('2026-11-25T12:00');
const END_S = local('2026-11-28T23:00');
const STEP_S = 900;
const EVENINGS = ['2026-11-25', '2026-11-26', '2026-11-27', '2026-11-28'];

interface Got {
  readonly text: string;
  readonly atS: number;
}

const clock = { atS: BEGIN_S, nowS: (): number => clock.atS };
const got: Got[] = [];
let memory: Memory;
let weather: HostileWeather;
let source: LiveSource;
const log = { info: () => undefined, warn: () => undefined, error: () => undefined };
const channel: Channel = {
  name: 'telegram',
  listen: () => Promise.resolve(),
  acknowledge: () => Promise.resolve(),
  send: (_to, { text }) => {
    got.push({ text, atS: clock.atS });
    return Promise.resolve({ kind: 'sent', message: String(got.length) });
  },
};

beforeAll(async () => {
  memory = await openSqliteStore({ path: ':memory:' });
  weather = await startHostileWeather({ nowS: clock.nowS });
  source = liveSource({ clock, store: memory, log, firstUrl: weather.url, apiKey: null, wantsMembers: false, secondUrl: null, contact: null });
  const ports = { memory, clock, log, weather: source.source, workOut: workOutHere, workOutWeek: workOutWeekHere, channels: new Map([['telegram', channel]] as const), count: () => undefined };
  const post = postman(ports);
  await memory.saveGreenhouse({ id: HOUSE.id, body: JSON.stringify(HOUSE.file), savedAtS: BEGIN_S });
  const chat = await memory.openChat({ channel: 'telegram', chat: '1' }, { isGroup: false, atS: BEGIN_S });
  await memory.updateChat(chat.id, { greenhouseId: HOUSE.id });
  for (const job of EVENINGS.flatMap((date) => jobsOfDay(HOUSE.id, HOUSE.greenhouse, HOUSE.zone, date))) if (job.kind === 'advisory') await memory.addJob(job);
  for (; clock.atS < END_S; clock.atS += STEP_S) {
    const isDown = clock.atS >= DOWN_FROM_S && clock.atS < DOWN_UNTIL_S;
    for (const path of ['/v1/forecast', '/v1/ensemble', '/v1/archive'] as const) weather.script(path, ...(isDown ? [error(503, 'out of order')] : []));
    await tick(ports);
    while ((await post.sendDue()) > 0) await post.idle();
  }
}, 120_000);
afterAll(async () => {
  await source.close();
  await weather.close();
  await memory.close();
});

const evening = (date: string): readonly Got[] => {
  const { advisoryS, deadlineS } = dayTimes(HOUSE.greenhouse, HOUSE.zone, date);
  return got.filter(({ text, atS }) => atS >= advisoryS && atS < deadlineS && /^(?:Tonight, |No weather)/u.test(text));
};

describe('a weather service that is down for 40 hours', () => {
  it('before and after: an advisory each evening', () => {
    for (const date of ['2026-11-25', '2026-11-28']) expect(evening(date).map(({ text }) => text)).toEqual([expect.stringMatching(/^Tonight, (?!.*OLD)/su)]);
  });

  it('in its first evening: an advisory that says how old its forecast is', () => {
    expect(evening('2026-11-26').map(({ text }) => text)).toEqual([expect.stringMatching(/^Tonight, .*OLD FORECAST: .*This stands on a forecast \d+ h old, and the range is wider for it/su)]);
  });

  it('in its second evening: no advice, but a word in time, in words for a grower', () => {
    const [word, ...more] = evening('2026-11-27').map(({ text }) => text);
    expect(more).toEqual([]);
    expect(word).toMatch(/^No weather to stand on, so no advice tonight: .*shut the house before sunset and cover what frost would hurt\.$/su);
    expect(word).not.toMatch(/DUSKWARD|--weather|HTTP|status|45\.1/u);
  });

  it('once an evening, whatever is tried again', () => {
    expect(got.filter(({ text }) => /^(?:Tonight, |No weather)/u.test(text))).toHaveLength(4);
  });
});
