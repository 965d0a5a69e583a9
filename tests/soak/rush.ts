import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { dayTimes } from '../../bot/schedule/day-times.js';
import { nightThreads } from '../../bot/threads/night-threads.js';
import { startAssistant, THE_PROGRAM } from './assistant-process.js';
import { modelEvening } from './quick-evening.js';
import type { Report } from './report.js';
import { grower, settle, startWorld, within } from './world.js';

const DATE = '2026-11-25';
/** Neighbours: each has weather of its own, and nearly the same dusk. */
const APART_DEG = 0.002;
const STARTS_WITHIN_MS = 120_000;
const LOOK_MS = 100;
const MEGABYTE = 1_000_000;
/** Longest that one evening may take. Project estimate: thrice what it takes on an idle core. */
const LONGEST_PER_GROWER_MS = 10_000;

export interface RushOptions {
  readonly growers: number;
  readonly places: number;
  /** False: evenings are copies of one, so that all else is measured. */
  readonly physics: boolean;
}

/** Many growers whose evening message is due in the same minute: how long until the last has it, how often the weather service is asked, how much memory it takes. */
export async function rush({ growers: howMany, places, physics }: RushOptions): Promise<Report> {
  const folder = mkdtempSync(join(tmpdir(), 'duskward-rush-'));
  const database = join(folder, 'duskward.sqlite');
  const model = join(folder, 'evening.json');
  const growers = Array.from({ length: howMany }, (_, n) => grower(n, { timeZone: 'America/Toronto', latitude: 45.1 + (n % places) * APART_DEG, longitude: -72.2 }));
  const dueS = growers.map(({ greenhouse, zone }) => dayTimes(greenhouse, zone, DATE).advisoryS);
  const startS = Math.max(...dueS) + 1;
  if (!physics) {
    const threads = nightThreads(1);
    writeFileSync(model, JSON.stringify(await modelEvening(growers[0]!, startS, threads.workOut)));
    await threads.close();
  }
  await settle(database, growers, Math.min(...dueS) - 1);
  const world = await startWorld({ startS, speed: 1 });
  for (const { chat } of growers) world.api.world.chat(chat).state = 'open';
  const life = startAssistant(physics ? THE_PROGRAM : ['tests/soak/quick-main.ts', model], world.settings(database));
  let mostBytes = 0;
  const measuring = new AbortController();
  const measured = (async () => {
    while (!measuring.signal.aborted) {
      mostBytes = Math.max(mostBytes, life.residentBytes());
      await sleepMs(LOOK_MS);
    }
  })();
  const got = (): number => new Set(world.api.world.messages.filter(({ fromBot, text }) => fromBot && text.startsWith('Tonight, ')).map(({ chat }) => chat)).size;
  try {
    if (!(await within(STARTS_WITHIN_MS, () => world.api.isPolled() || life.isOver()))) throw new Error('expected it to listen, it does not');
    const begunMs = performance.now();
    const haveAll = await within(howMany * LONGEST_PER_GROWER_MS, () => got() === howMany || life.isOver());
    const tookS = (performance.now() - begunMs) / 1000;
    // Whoever asks in between must not wait for all the others.
    const { code } = await life.kill('SIGTERM');
    const advisories = world.api.world.messages.filter(({ fromBot, text }) => fromBot && text.startsWith('Tonight, '));
    const asked = world.weather.seen.length;
    return {
      title: `${howMany} growers due in the same minute, at ${places} places, ${physics ? 'with the physics' : 'without the physics'}`,
      figures: [
        ['until the last has it, s', tookS.toFixed(1)],
        ['for each grower, s', (tookS / howMany).toFixed(3)],
        ['evening messages', `${advisories.length}`],
        ['requests to the weather service', `${asked} (${(asked / places).toFixed(1)} for each place)`],
        ['most memory, MB', (mostBytes / MEGABYTE).toFixed(0)],
      ],
      broken: [
        ...(haveAll ? [] : [`${howMany - got()} growers have no evening message`]),
        ...(advisories.length > howMany ? [`${advisories.length - howMany} evening messages too many`] : []),
        ...(asked > REQUESTS_A_PLACE * places ? [`${asked} requests for ${places} places: growers at one place must share them`] : []),
        ...(code === 0 ? [] : [`ended with ${code}`]),
        ...life.errors.map((error) => `said on standard error: ${error}`),
      ],
    };
  } finally {
    measuring.abort();
    await measured;
    await life.kill('SIGKILL');
    await world.close();
    rmSync(folder, { recursive: true });
  }
}

/** Forecast, ensemble and the mean of the year. */
const REQUESTS_A_PLACE = 3;
