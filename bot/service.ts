import type { Settings } from '../config/settings.js';
import { runAssistant, type AssistantPorts } from './assistant.js';
import { telegramChannel } from './channels/telegram/channel.js';
import { telegramFromSettings } from './channels/telegram/from-settings.js';
import type { Channel, ChannelName } from './chat.js';
import { clockSpeed } from './clock.js';
import { clockFrom } from './app.js';
import { httpAddress } from './http/address.js';
import type { Door } from './http/door.js';
import { createMetrics, type Metrics } from './http/metrics.js';
import { startHttp } from './http/server.js';
import { placeKeyOf } from './greenhouse-place.js';
import { createLog } from './log.js';
import type { Memory } from './journal.js';
import { openSqliteStore } from './store/sqlite-store.js';
import { COMMAND_WORDS, SHARE_PLACE } from './text/command-words.js';
import { eveningThreads } from './threads/evening-threads.js';
import { describer } from './post/describe-reply.js';
import { geocoder } from './weather/geocoding.js';
import { liveSource } from './weather/live-source.js';

const EVENTS = ['sent', 'later', 'gone', 'refused', 'unknown', 'job-done', 'job-failed', 'job-dropped', 'inbound-done', 'inbound-failed', 'inbound-parked'] as const;

/** The assistant on its chat services, until the signal: composition only. */
export async function runService(settings: Settings, signal: AbortSignal): Promise<void> {
  const log = createLog(settings.DUSKWARD_LOG!);
  const clock = clockFrom(settings, log);
  const telegram = telegramFromSettings(settings);
  if (!telegram) throw new Error('no chat service is set');
  const address = httpAddress(settings);
  const memory = await openSqliteStore({ path: settings.DUSKWARD_DATABASE!, placeKeyOf });
  const metrics = createMetrics();
  const weather = liveSource({ clock, store: memory, log, firstUrl: settings.DUSKWARD_WEATHER_URL, apiKey: settings.DUSKWARD_WEATHER_KEY, secondUrl: settings.DUSKWARD_WEATHER2_URL, contact: settings.DUSKWARD_CONTACT });
  if (weather.lacksSecond) log.warn('no second weather service: DUSKWARD_CONTACT is not set');
  const threads = eveningThreads();
  const places = geocoder({ baseUrl: settings.DUSKWARD_WEATHER_URL, apiKey: settings.DUSKWARD_WEATHER_KEY, contact: settings.DUSKWARD_CONTACT, log });
  const channel = telegramChannel({ ...telegram, commands: COMMAND_WORDS, placeLabel: SHARE_PLACE, clock, log });
  const channels = new Map<ChannelName, Channel>([[channel.name, channel]]);
  const doors: readonly Door[] = channel.door ? [channel.door] : [];
  const http = address === null ? null : await startHttp({ address, checks: { store: () => storeTrouble(memory), telegram: () => channel.trouble() }, metrics, doors, log });
  const ports: AssistantPorts = {
    memory,
    channels,
    clock,
    log,
    weather: weather.source,
    workOut: threads.workOut,
    describe: describer({ memory, weather: weather.source, workOut: threads.workOut, places, clock, log }),
    acknowledge: (row) => (row.content.kind === 'press' ? channel.acknowledge(row.content.token) : Promise.resolve()),
    count: countEvents(metrics, memory, clock),
    clockSpeed: clockSpeed(settings.DUSKWARD_CLOCK),
  };
  log.info('started', { http: http?.url });
  try {
    await runAssistant(ports, signal);
  } finally {
    await http?.close();
    await Promise.all([threads.close(), weather.close(), places.close()]);
    await memory.close();
    log.info('stopped');
  }
}

/** A store that answers is a store that works. */
async function storeTrouble(memory: Memory): Promise<string | null> {
  await memory.chatsAfter(null, 1);
  return null;
}

function countEvents(metrics: Metrics, memory: Memory, clock: { nowS(): number }): (event: string) => void {
  const count = metrics.counter('events_total', 'What the assistant did, by kind', { event: EVENTS });
  metrics.gauge('inbound_open', 'Updates that are not answered yet, up to 1000', async () => (await memory.openInbound(1000)).length);
  metrics.gauge('jobs_due', 'Jobs that are due and not done, up to 1000', async () => (await memory.dueJobs(clock.nowS(), 1000)).length);
  return (event) => count({ event });
}
