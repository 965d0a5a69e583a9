import { DateTime } from 'luxon';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { placeKeyOf } from '../../bot/greenhouse-place.js';
import { jobsOfDay } from '../../bot/schedule/day-jobs.js';
import { openSqliteStore } from '../../bot/store/sqlite-store.js';
import { checkGreenhouse, type Greenhouse, type GreenhouseFile } from '../../engine/index.js';
import { startBotApi } from '../fixtures/bot-api/server.js';
import type { BotApi } from '../fixtures/bot-api/stand-in.js';
import { startHostileWeather, type HostileWeather } from '../fixtures/hostile-weather.js';

/** A grower of the trial: one house, one private chat. */
export interface Grower {
  readonly chat: number;
  readonly id: string;
  readonly zone: string;
  readonly file: GreenhouseFile;
  readonly greenhouse: Greenhouse;
}

/** Invented houses at invented places in three zones. */
const PLACES = [
  { timeZone: 'America/Toronto', latitude: 45.1, longitude: -72.2 },
  { timeZone: 'Europe/Berlin', latitude: 47.6, longitude: 10.2 },
  { timeZone: 'Asia/Kathmandu', latitude: 28.8, longitude: 83.9 },
] as const;
const FIRST_CHAT = 4001;

export function grower(n: number, place: GreenhouseFile['place'] = PLACES[n % PLACES.length]!): Grower {
  const file: GreenhouseFile = { name: `House ${n}`, place, size: { width: 4, length: 8, height: 2.4 }, layers: [{ film: 'standard' }], beds: [{ name: 'north', area: 10, crops: ['lettuce'], worth: 150, cover: { kind: 'fabric', weight: 50 } }] };
  const check = checkGreenhouse(file);
  if (!check.ok) throw new Error(`expected a good greenhouse, got ${JSON.stringify(check.faults)}`);
  return { chat: FIRST_CHAT + n, id: `house-${n}`, zone: place.timeZone ?? 'UTC', file, greenhouse: check.greenhouse };
}

/** Writes the growers into a new database as the set-up by talking would have left them. */
export async function settle(database: string, growers: readonly Grower[], atS: number): Promise<void> {
  const memory = await openSqliteStore({ path: database, placeKeyOf });
  await memory.atomically(async (within) => {
    for (const { id, chat, file, greenhouse, zone } of growers) {
      await within.saveGreenhouse({ id, body: JSON.stringify(file), savedAtS: atS });
      const stored = await within.openChat({ channel: 'telegram', chat: String(chat) }, { isGroup: false, atS });
      await within.updateChat(stored.id, { greenhouseId: id });
      for (const job of jobsOfDay(id, greenhouse, zone, DateTime.fromSeconds(atS, { zone }).toISODate()!)) if (job.dueAtS > atS) await within.addJob(job);
    }
  });
  await memory.close();
}

/** The services that the assistant talks to, and time as they have it. */
export interface World {
  readonly api: BotApi;
  readonly weather: HostileWeather;
  /** Simulated epoch seconds. */
  readonly nowS: () => number;
  /** Settings for an assistant that starts now. */
  settings(database: string, more?: Readonly<Record<string, string>>): Readonly<Record<string, string>>;
  close(): Promise<void>;
}

export interface WorldOptions {
  readonly startS: number;
  /** 1 for time as it is. */
  readonly speed: number;
  /** Before the weather service answers. */
  readonly weatherDelayMs?: number;
}

export async function startWorld({ startS, speed, weatherDelayMs = 0 }: WorldOptions): Promise<World> {
  const begunMs = performance.now();
  const nowS = (): number => Math.floor(startS + ((performance.now() - begunMs) / 1000) * speed);
  const api = await startBotApi({ nowS });
  const weather = await startHostileWeather({ nowS, delayMs: weatherDelayMs });
  return {
    api,
    weather,
    nowS,
    settings: (database, more = {}) => ({
      DUSKWARD_TELEGRAM_TOKEN: api.token,
      DUSKWARD_TELEGRAM_API_ROOT: api.url,
      DUSKWARD_WEATHER_URL: weather.url,
      DUSKWARD_DATABASE: database,
      DUSKWARD_CLOCK: `${new Date(nowS() * 1000).toISOString()} x${speed}`,
      DUSKWARD_LOG: 'error',
      ...more,
    }),
    close: async () => {
      await Promise.all([api.close(), weather.close()]);
    },
  };
}

const LOOK_MS = 10;

/** Waits until it is so; false when it is not within this time. */
export async function within(longestMs: number, isSo: () => boolean): Promise<boolean> {
  const endMs = performance.now() + longestMs;
  while (!isSo()) {
    if (performance.now() > endMs) return false;
    await sleepMs(LOOK_MS);
  }
  return true;
}
