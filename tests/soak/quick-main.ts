/**
 * Run as a process of its own, with the settings of the program in the environment: the assistant with the rooms of the program,
 * but for the physics. The evening to make others from is the JSON file at argv[2].
 */
import { readFileSync } from 'node:fs';
import { runAssistant } from '../../bot/assistant.js';
import { clockSpeed, trialClock } from '../../bot/clock.js';
import type { WorkedOutEvening } from '../../bot/features/evening/work-out-evening.js';
import { placeKeyOf } from '../../bot/greenhouse-place.js';
import { createLog } from '../../bot/log.js';
import { openSqliteStore } from '../../bot/store/sqlite-store.js';
import { nightThreads } from '../../bot/threads/night-threads.js';
import { readSettings } from '../../config/settings.js';
import { composed } from './composed.js';
import { quickEvening } from './quick-evening.js';

const settings = readSettings(process.env);
const model = JSON.parse(readFileSync(process.argv[2]!, 'utf8')) as WorkedOutEvening;
const memory = await openSqliteStore({ path: settings.DUSKWARD_DATABASE!, placeKeyOf });
const threads = nightThreads(1);
const rooms = composed({
  memory,
  clock: trialClock(settings.DUSKWARD_CLOCK!),
  clockSpeed: clockSpeed(settings.DUSKWARD_CLOCK),
  log: createLog(settings.DUSKWARD_LOG!),
  workOut: quickEvening(model),
  workOutWeek: threads.workOutWeek,
  telegram: { token: settings.DUSKWARD_TELEGRAM_TOKEN!, apiRoot: settings.DUSKWARD_TELEGRAM_API_ROOT! },
  weatherUrl: settings.DUSKWARD_WEATHER_URL!,
});
const stopping = new AbortController();
for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, () => stopping.abort());
await runAssistant(rooms.ports, stopping.signal);
await Promise.all([rooms.close(), threads.close()]);
await memory.close();
