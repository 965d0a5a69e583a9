import { DateTime } from 'luxon';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Memory } from '../../../bot/journal.js';
import { workOutHere, type WorkedOutEvening } from '../../../bot/features/evening/work-out-evening.js';
import { describer } from '../../../bot/post/describe-reply.js';
import { handleOpen } from '../../../bot/post/handle-inbound.js';
import { jobsOfDay } from '../../../bot/schedule/day-jobs.js';
import { tick } from '../../../bot/schedule/tick.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { demoSource } from '../../../bot/weather/demo.js';
import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import { modelEvening, quickEvening } from '../../soak/quick-evening.js';
import { grower } from '../../soak/world.js';
import { tellingWeek } from '../privacy/telling-evening.js';

const ZONE = 'America/Toronto';
// In April it is light long enough for an evening message at any of these hours.
const DATE = '2026-04-08';
const at = (clock: string, zone = ZONE): number => DateTime.fromISO(`${DATE}T${clock}`, { zone }).toSeconds();
const FILE: GreenhouseFile = { ...grower(0).file, grower: { eveningAt: '16:30', units: 'C' } };

let model: WorkedOutEvening;
beforeAll(async () => {
  model = await modelEvening(grower(0), at('16:00'), workOutHere);
});

let memory: Memory;
let atS: number;
let evenings: string[];
let update = 0;
beforeEach(async () => {
  memory = await openSqliteStore({ path: ':memory:' });
  evenings = [];
  atS = at('15:00');
  const check = checkGreenhouse(FILE);
  if (!check.ok) throw new Error(JSON.stringify(check.faults));
  await memory.saveGreenhouse({ id: 'h', body: JSON.stringify(FILE), savedAtS: atS });
  const { id } = await memory.openChat({ channel: 'telegram', chat: '7' }, { isGroup: false, atS });
  await memory.updateChat(id, { greenhouseId: 'h' });
  for (const job of jobsOfDay('h', check.greenhouse, ZONE, DATE)) if (job.dueAtS > atS) await memory.addJob(job);
});
afterEach(() => memory.close());

const clock = { nowS: (): number => atS };
const failures: unknown[] = [];
function ports() {
  const quiet = { info: () => undefined, warn: () => undefined, error: (_event: string, fields?: Record<string, unknown>) => void failures.push(fields?.['error']) };
  const rooms = { memory, clock, log: quiet, weather: demoSource(clock), workOut: quickEvening(model), workOutWeek: tellingWeek };
  const places = { placesCalled: () => Promise.resolve([{ name: 'Fell End', region: 'Cumbria', country: 'United Kingdom', countryCode: 'GB', latitude: 54.4, longitude: -2.4 }]) };
  return { ...rooms, describe: describer({ ...rooms, places }), acknowledge: () => Promise.resolve(), count: () => undefined };
}

async function says(text: string): Promise<string> {
  await memory.keepInbound({ channel: 'telegram', chat: '7', update: String(++update), isGroup: false, sender: '7', receivedAtS: atS, content: { kind: 'text', text, forwarded: false } });
  await handleOpen(ports());
  return (await taken()).join('\n');
}

/** Every message that may go now, sent. */
async function taken(): Promise<readonly string[]> {
  const texts: string[] = [];
  for (let due = await memory.dueOutbound(atS, 10); due.length > 0; due = await memory.dueOutbound(atS, 10)) {
    for (const { id, message } of due) {
      texts.push(message.text);
      await memory.beginSend(id, atS);
      await memory.endSend(id, { state: 'sent', sentAs: String(id) }, atS);
    }
  }
  return texts;
}

/** Lets the minutes pass; the clock times at which an evening message came, on the grower's new clock. */
async function until(clockTime: string, zone = ZONE): Promise<void> {
  for (const endS = at(clockTime); atS <= endS; atS += 300) {
    await tick(ports());
    for (const text of await taken()) if (text.startsWith('Tonight')) evenings.push(DateTime.fromSeconds(atS, { zone }).toFormat('HH:mm'));
  }
  expect(failures).toEqual([]);
}

describe('an evening time that is changed on the day itself', () => {
  it('to later: the message comes once, at the new time', async () => {
    await until('15:55');
    expect(await says('evening message at 6 pm')).toContain('18:00');
    await until('23:00');
    expect(evenings).toEqual(['18:00']);
  });

  it('to a time that is over: it comes at once, and once', async () => {
    await until('15:55');
    await says('evening message at 3 pm');
    await until('23:00');
    expect(evenings).toEqual(['16:00']);
  });

  it('after the message went out: no second one comes that day', async () => {
    await until('17:00');
    await says('evening message at 6 pm');
    await until('23:00');
    expect(evenings).toEqual(['16:30']);
  });

  it('to later, where the old time was over when the day began: it comes all the same', async () => {
    await memory.cancelJobs('h', 'advisory');
    await until('17:00');
    await says('evening message at 6 pm');
    await until('23:00');
    expect(evenings).toEqual(['18:00']);
  });
});

describe('a house that is changed', () => {
  it('moves with its place to the clock there', async () => {
    atS = at('06:00');
    expect(await says('we moved to Fell End')).toContain('Fell End');
    await until('23:00', 'Europe/London');
    expect(evenings).toEqual(['16:30']);
  });

  it('that was told nothing new keeps its hours', async () => {
    await until('15:55');
    expect(await says('one layer')).toContain('I have that already');
    await until('23:00');
    expect(evenings).toEqual(['16:30']);
  });
});
