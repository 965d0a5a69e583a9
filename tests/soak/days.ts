import { DateTime } from 'luxon';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { openSqliteStore } from '../../bot/store/sqlite-store.js';
import { dayTimes } from '../../bot/schedule/day-times.js';
import type { WorldMessage } from '../fixtures/bot-api/chat-world.js';
import { startAssistant, THE_PROGRAM } from './assistant-process.js';
import type { Report } from './report.js';
import { grower, settle, startWorld, within, type Grower } from './world.js';

const START_S = Date.parse('2026-11-25T09:00:00Z') / 1000;
const GROWERS = 3;
const DAY_S = 86_400;
const READING = 'low was -1.5C';
const STARTS_WITHIN_MS = 60_000;
const HOUR_S = 3600;

export interface DaysOptions {
  readonly days: number;
  readonly speed: number;
}

/** Three growers in three time zones through some days with the whole program: every evening message in time and once, every reading kept, every picture a picture. */
export async function days({ days: howMany, speed }: DaysOptions): Promise<Report> {
  const folder = mkdtempSync(join(tmpdir(), 'duskward-days-'));
  const database = join(folder, 'duskward.sqlite');
  const growers = Array.from({ length: GROWERS }, (_, n) => grower(n));
  await settle(database, growers, START_S);
  const world = await startWorld({ startS: START_S, speed });
  for (const { chat } of growers) world.api.world.chat(chat).state = 'open';
  const life = startAssistant(THE_PROGRAM, world.settings(database));
  const endS = START_S + howMany * DAY_S;
  const answered = new Set<number>();
  try {
    if (!(await within(STARTS_WITHIN_MS, () => world.api.isPolled() || life.isOver()))) throw new Error('expected it to listen, it does not');
    await within(((endS - world.nowS()) / speed) * 1000, () => {
      for (const { fromBot, text, id, chat } of world.api.world.messages) {
        if (!fromBot || answered.has(id) || !text.includes('lowest on the thermometer')) continue;
        answered.add(id);
        world.api.act({ do: 'says', person: chat, text: READING });
      }
      return life.isOver();
    });
    const { code } = await life.kill('SIGTERM');
    const kept = await readingsKept(database, growers);
    return judged({ growers, messages: world.api.world.messages, endS: world.nowS(), asked: answered.size, kept, trouble: [...life.errors, ...(code === 0 ? [] : [`ended with ${code}`])], title: `${GROWERS} growers in three time zones, ${howMany} days, clock x${speed}` });
  } finally {
    await life.kill('SIGKILL');
    await world.close();
    rmSync(folder, { recursive: true });
  }
}

async function readingsKept(database: string, growers: readonly Grower[]): Promise<number> {
  const memory = await openSqliteStore({ path: database });
  const kept = await Promise.all(growers.map(({ id }) => memory.readings(id, 1000)));
  await memory.close();
  return kept.flat().length;
}

interface Lived {
  readonly title: string;
  readonly growers: readonly Grower[];
  readonly messages: readonly WorldMessage[];
  readonly endS: number;
  readonly asked: number;
  readonly kept: number;
  readonly trouble: readonly string[];
}

function judged({ title, growers, messages, endS, asked, kept, trouble }: Lived): Report {
  const broken: string[] = trouble.map((line) => `said on standard error: ${line}`);
  let [evenings, latestS, leastSpareS, pictures] = [0, 0, Infinity, 0];
  for (const { chat, greenhouse, zone } of growers) {
    const advisories = messages.filter((message) => message.fromBot && message.chat === chat && message.text.startsWith('Tonight, '));
    for (const date of datesOf(zone, endS)) {
      const { advisoryS, deadlineS, bedtimeS } = dayTimes(greenhouse, zone, date);
      if (advisoryS <= START_S || deadlineS + HOUR_S > endS) continue;
      evenings += 1;
      const inTime = advisories.filter(({ dateS }) => dateS >= advisoryS && dateS < deadlineS);
      if (inTime.length !== 1) broken.push(`${greenhouse.name}, ${date}: ${inTime.length} evening messages between ${clockOf(advisoryS, zone)} and ${clockOf(deadlineS, zone)}; there are ${advisories.map(({ dateS }) => clockOf(dateS, zone)).join(', ')}`);
      // A newer forecast half an hour before bedtime may bring another one.
      const late = advisories.filter(({ dateS }) => dateS >= deadlineS && dateS < bedtimeS - HOUR_S);
      if (late.length > 0) broken.push(`${greenhouse.name}, ${date}: one more at ${clockOf(late[0]!.dateS, zone)}`);
      for (const { dateS, picture, text } of inTime) {
        latestS = Math.max(latestS, dateS - advisoryS);
        leastSpareS = Math.min(leastSpareS, deadlineS - dateS);
        if (picture ?? messages.find((other) => other.fromBot && other.chat === chat && other.picture !== null && Math.abs(other.dateS - dateS) < HOUR_S)?.picture) pictures += 1;
        else broken.push(`${greenhouse.name}, ${date}: no picture with "${text.slice(0, 40)}"`);
      }
    }
  }
  for (const { picture, id } of messages) if (picture !== null && !opens(picture)) broken.push(`picture of message ${id} does not open`);
  if (kept !== asked) broken.push(`${asked} readings said, ${kept} kept`);
  if (evenings === 0) broken.push('no evening was due');
  return {
    title,
    figures: [
      ['evenings due', `${evenings}`],
      ['longest after its time, simulated minutes', (latestS / 60).toFixed(0)],
      ['least time left before the deadline, simulated minutes', (leastSpareS / 60).toFixed(0)],
      ['pictures that open', `${pictures}`],
      ['readings asked for, said and kept', `${asked}, ${kept}`],
      ['messages in all', `${messages.filter(({ fromBot }) => fromBot).length}`],
    ],
    broken,
  };
}

function datesOf(zone: string, endS: number): readonly string[] {
  const dates: string[] = [];
  for (let day = DateTime.fromSeconds(START_S, { zone }); day.toSeconds() < endS + DAY_S; day = day.plus({ days: 1 })) dates.push(day.toISODate()!);
  return dates;
}

const clockOf = (atS: number, zone: string): string => DateTime.fromSeconds(atS, { zone }).toFormat('dd HH:mm');

function opens(picture: Uint8Array): boolean {
  try {
    const { width, height } = PNG.sync.read(Buffer.from(picture));
    return width > 0 && height > 0;
  } catch {
    return false;
  }
}
