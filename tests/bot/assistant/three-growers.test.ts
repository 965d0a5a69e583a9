import { DateTime } from 'luxon';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Channel, ChatAddress, Inbound, Outgoing } from '../../../bot/chat.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import { handleOpen } from '../../../bot/post/handle-inbound.js';
import { postman } from '../../../bot/post/send-outbound.js';
import { jobsOfDay } from '../../../bot/schedule/day-jobs.js';
import { dayTimes } from '../../../bot/schedule/day-times.js';
import { tick } from '../../../bot/schedule/tick.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { demoSource } from '../../../bot/weather/demo.js';
import { workOutWeekHere } from '../../../bot/threads/week-work.js';
import { checkGreenhouse, type Greenhouse, type GreenhouseFile } from '../../../engine/index.js';

/** Three growers in three zones, two days, on a clock that the test turns: the invented weather threatens their lettuce. */
const GROWERS = [
  { chat: '101', zone: 'America/Toronto', place: { latitude: 45.1, longitude: -72.2, timeZone: 'America/Toronto' } },
  { chat: '102', zone: 'Europe/Berlin', place: { latitude: 47.6, longitude: 10.2, timeZone: 'Europe/Berlin' } },
  { chat: '103', zone: 'Asia/Kathmandu', place: { latitude: 28.8, longitude: 83.9, timeZone: 'Asia/Kathmandu' } },
] as const;
const START_S = Date.parse('2026-11-25T09:00:00Z') / 1000;
const DAYS = 2;
const STEP_S = 600;

function greenhouseOf(n: number): { file: GreenhouseFile; greenhouse: Greenhouse } {
  const file: GreenhouseFile = { name: `House ${n}`, place: GROWERS[n]!.place, size: { width: 4, length: 8, height: 2.4 }, layers: [{ film: 'standard' }], beds: [{ name: 'north', area: 10, crops: ['lettuce'], worth: 150, cover: { kind: 'fabric', weight: 50 } }] };
  const check = checkGreenhouse(file);
  if (!check.ok) throw new Error(JSON.stringify(check.faults));
  return { file, greenhouse: check.greenhouse };
}

interface Sent {
  readonly to: ChatAddress;
  readonly message: Outgoing;
  readonly atS: number;
}

const sent: Sent[] = [];
const clock = { atS: START_S, nowS: (): number => clock.atS };
const log = { info: () => undefined, warn: () => undefined, error: (event: string, fields?: unknown) => void errors.push(`${event} ${JSON.stringify(fields, (_key, value: unknown) => (value instanceof Error ? value.message : value))}`) };
const errors: string[] = [];
const channel: Channel = {
  name: 'telegram',
  listen: () => Promise.resolve(),
  acknowledge: () => Promise.resolve(),
  send: (to, message) => {
    sent.push({ to, message, atS: clock.atS });
    return Promise.resolve({ kind: 'sent', message: String(sent.length) });
  },
};

let updates = 0;
const says = (chat: string, text: string): Inbound => ({ channel: 'telegram', chat, update: String(++updates), isGroup: false, sender: chat, receivedAtS: clock.atS, content: { kind: 'text', text, forwarded: false } });

beforeAll(async () => {
  const memory = await openSqliteStore({ path: ':memory:' });
  const ports = {
    memory,
    clock,
    log,
    weather: demoSource(clock),
    workOut: workOutHere,
    workOutWeek: workOutWeekHere,
    channels: new Map([['telegram', channel]] as const),
    count: () => undefined,
    acknowledge: () => Promise.resolve(),
    describe: { next: () => Promise.reject(new Error('nobody describes here')), change: () => Promise.resolve(null) },
  };
  const post = postman(ports);
  const sendAll = async (): Promise<void> => {
    while ((await post.sendDue()) > 0) await post.idle();
  };
  for (const [n, { chat, zone }] of GROWERS.entries()) {
    const { file, greenhouse } = greenhouseOf(n);
    const id = `house-${n}`;
    await memory.saveGreenhouse({ id, body: JSON.stringify(file), savedAtS: clock.atS });
    const stored = await memory.openChat({ channel: 'telegram', chat }, { isGroup: false, atS: clock.atS });
    await memory.updateChat(stored.id, { greenhouseId: id });
    for (const job of jobsOfDay(id, greenhouse, zone, DateTime.fromSeconds(START_S, { zone }).toISODate()!)) await memory.addJob(job);
  }
  for (; clock.atS < START_S + DAYS * 86_400; clock.atS += STEP_S) {
    await tick(ports);
    await sendAll();
    // Each answers the first question of each morning, a minute later.
    for (const { to, message } of sent.filter(({ atS }) => atS === clock.atS)) if (message.text.includes('lowest on the thermometer')) await memory.keepInbound(says(to.chat, '-1.5C'));
    while ((await handleOpen(ports)) > 0) await sendAll();
    await sendAll();
  }
  readings.push(...(await Promise.all(GROWERS.map(async (_, n) => (await memory.readings(`house-${n}`, 10)).map(({ tempC }) => tempC)))));
  await memory.close();
}, 240_000);
const readings: number[][] = [];

const to = (chat: string): readonly Sent[] => sent.filter((one) => one.to.chat === chat);
const advisories = (chat: string): readonly Sent[] => to(chat).filter(({ message }) => message.text.startsWith('Tonight, '));

describe('two days of three growers', () => {
  it('went without an error', () => {
    expect(errors).toEqual([]);
  });

  it.each(GROWERS.map(({ chat }, n) => [chat, n] as const))('grower %s has one advisory each local evening, in time for its work, with buttons', (chat, n) => {
    const { zone } = GROWERS[n]!;
    const dates = advisories(chat).map(({ atS }) => DateTime.fromSeconds(atS, { zone }).toISODate()!);
    expect(new Set(dates).size).toBe(dates.length);
    expect(dates.length).toBe(DAYS);
    for (const { atS, message } of advisories(chat)) {
      const { advisoryS, deadlineS } = dayTimes(greenhouseOf(n).greenhouse, zone, DateTime.fromSeconds(atS, { zone }).toISODate()!);
      expect(atS).toBeGreaterThanOrEqual(advisoryS);
      expect(atS).toBeLessThan(advisoryS + STEP_S);
      expect(atS).toBeLessThan(deadlineS);
      expect(message.text).toContain(`House ${n}`);
      expect(message.buttons).toBeDefined();
    }
  });

  it('nobody hears of another greenhouse, and nothing comes unasked in the quiet hours', () => {
    for (const [n, { chat, zone }] of GROWERS.entries()) {
      for (const { message, atS } of to(chat)) {
        for (let other = 0; other < GROWERS.length; other += 1) if (other !== n) expect(message.text).not.toContain(`House ${other}`);
        const local = DateTime.fromSeconds(atS, { zone }).toFormat('HH:mm');
        expect(local >= '06:30' && local < '21:30').toBe(true);
      }
    }
  });

  it('each is asked in the morning, without the forecast in the question, and the answers are kept', () => {
    for (const [n, { chat }] of GROWERS.entries()) {
      const asked = to(chat).filter(({ message }) => message.text.includes('lowest on the thermometer'));
      expect(asked.length).toBeGreaterThanOrEqual(1);
      expect(readings[n]!.length).toBe(asked.length);
      expect(readings[n]!.every((tempC) => tempC === -1.5)).toBe(true);
      expect(to(chat).filter(({ message }) => /^(?:Noted: -1\.5C inside,|-1\.5C as the low inside\?)/u.test(message.text)).length).toBe(asked.length);
    }
  });
});
