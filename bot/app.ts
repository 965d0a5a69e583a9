import { dirname } from 'node:path';
import { SettingError, type Settings } from '../config/settings.js';
import { runAssistant, type AssistantPorts } from './assistant.js';
import { consoleChannel, type ConsoleStreams } from './channels/console/console-channel.js';
import { keptIn } from './channels/console/kept-files.js';
import { telegramChannel } from './channels/telegram/channel.js';
import { telegramFromSettings } from './channels/telegram/from-settings.js';
import { checkGlyphs } from './chart/glyph-check.js';
import { pngRenderer } from './chart/png-renderer.js';
import type { Channel } from './chat.js';
import { clockSpeed } from './clock.js';
import { openConsoleHouse, type ConsoleHouse } from './console-house.js';
import { clockFrom, demoWeatherUnlessNamed, liveWeatherFrom } from './from-settings.js';
import { placeKeyOf } from './greenhouse-place.js';
import { httpAddress } from './http/address.js';
import type { Door } from './http/door.js';
import { createMetrics, type Metrics } from './http/metrics.js';
import { startHttp, type HttpOptions } from './http/server.js';
import type { Memory } from './journal.js';
import { createLog } from './log.js';
import type { Clock, Log } from './ports.js';
import { describer } from './post/describe-reply.js';
import { openSqliteStore } from './store/sqlite-store.js';
import { COMMAND_WORDS, SHARE_PLACE } from './text/command-words.js';
import { CONSOLE_WORDS } from './text/console-text.js';
import { nightThreads } from './threads/night-threads.js';
import { geocoder } from './weather/geocoding.js';

const EVENTS = ['sent', 'later', 'gone', 'refused', 'unknown', 'job-done', 'job-failed', 'job-dropped', 'inbound-done', 'inbound-failed', 'inbound-parked'] as const;

/** A channel with what it adds to the assistant around it. */
interface OpenChannel {
  readonly channel: Channel;
  readonly checks: HttpOptions['checks'];
  readonly doors: readonly Door[];
}

/** The assistant, until the signal or until the grower on the console leaves: composition only. On Telegram when a token is set, else on the console. */
export async function runApp(settings: Settings, { streams, house }: { streams: ConsoleStreams; house: ConsoleHouse }, signal: AbortSignal): Promise<void> {
  const log = createLog(settings.DUSKWARD_LOG!);
  const clock = clockFrom(settings, log);
  const telegram = telegramFromSettings(settings);
  const address = httpAddress(settings);
  const memory = await openSqliteStore({ path: settings.DUSKWARD_DATABASE!, placeKeyOf });
  const weather = telegram === null && house.kind === 'demo' ? demoWeatherUnlessNamed(settings, { clock, store: memory, log }) : liveWeatherFrom(settings, { clock, store: memory, log });
  if (weather.lacksSecond) log.warn('no second weather service: DUSKWARD_CONTACT is not set');
  const threads = nightThreads();
  const places = geocoder({ baseUrl: settings.DUSKWARD_WEATHER_URL, apiKey: settings.DUSKWARD_WEATHER_KEY, contact: settings.DUSKWARD_CONTACT, log });
  const leaving = new AbortController();
  let http: Awaited<ReturnType<typeof startHttp>> | null = null;
  try {
    const { channel, checks, doors } = telegram ? onTelegram(telegram, { clock, log }) : await onConsole({ settings, streams, house, memory, clock, leave: () => leaving.abort() });
    const metrics = createMetrics();
    http = address === null ? null : await startHttp({ address, checks: { store: () => storeTrouble(memory), ...checks }, metrics, doors, log });
    const ports: AssistantPorts = {
      memory,
      channels: new Map([[channel.name, channel]]),
      clock,
      log,
      weather: weather.source,
      workOut: threads.workOut,
      workOutWeek: threads.workOutWeek,
      drawNights: threads.drawNights,
      describe: describer({ memory, weather: weather.source, workOut: threads.workOut, places, clock, log }),
      acknowledge: (row) => (row.content.kind === 'press' ? channel.acknowledge(row.content.token) : Promise.resolve()),
      count: countEvents(metrics, memory, clock),
      clockSpeed: clockSpeed(settings.DUSKWARD_CLOCK),
    };
    void checkPictures(log);
    log.info('started', { http: http?.url });
    await runAssistant(ports, AbortSignal.any([signal, leaving.signal]));
  } finally {
    await http?.close();
    await Promise.all([threads.close(), weather.close(), places.close()]);
    await memory.close();
    log.info('stopped');
  }
}

function onTelegram(telegram: NonNullable<ReturnType<typeof telegramFromSettings>>, { clock, log }: { clock: Clock; log: Log }): OpenChannel {
  const channel = telegramChannel({ ...telegram, commands: COMMAND_WORDS, placeLabel: SHARE_PLACE, clock, log });
  return { channel, checks: { telegram: () => channel.trouble() }, doors: channel.door ? [channel.door] : [] };
}

interface ConsoleParts {
  readonly settings: Settings;
  readonly streams: ConsoleStreams;
  readonly house: ConsoleHouse;
  readonly memory: Memory;
  readonly clock: Clock;
  readonly leave: () => void;
}

async function onConsole({ settings, streams, house, memory, clock, leave }: ConsoleParts): Promise<OpenChannel> {
  await refuseOthersGrowers(memory, settings.DUSKWARD_DATABASE!);
  const { address, hasHouse } = await openConsoleHouse(house, { memory, clock });
  const channel = consoleChannel({
    ...streams,
    address,
    clock,
    firstWords: hasHouse ? CONSOLE_WORDS.tonight : CONSOLE_WORDS.begin,
    greeting: CONSOLE_WORDS.greeting,
    farewell: CONSOLE_WORDS.farewell,
    keepFile: keptIn(dirname(settings.DUSKWARD_DATABASE!), CONSOLE_WORDS),
    isUnsettled: () => memory.isUnsettled(address, clock.nowS()),
    left: leave,
  });
  return { channel, checks: {}, doors: [] };
}

/** Messages to growers on Telegram would be lost while nobody carries them. */
async function refuseOthersGrowers(memory: Memory, database: string): Promise<void> {
  if (!(await memory.channelsInUse()).includes('telegram')) return;
  throw new SettingError(`DUSKWARD_TELEGRAM_TOKEN is not set, and growers on Telegram are kept in ${database}: set the token, or name another DUSKWARD_DATABASE for the console.`);
}

/** A machine on which pictures cannot be drawn says so at the start; words go out all the same. */
async function checkPictures(log: Log): Promise<void> {
  const renderer = pngRenderer();
  try {
    await checkGlyphs(renderer.renderPng);
  } catch (error) {
    log.error('pictures will be missing', { error });
  } finally {
    await renderer.close();
  }
}

/** A store that answers is a store that works. */
async function storeTrouble(memory: Memory): Promise<string | null> {
  await memory.chatsAfter(null, 1);
  return null;
}

function countEvents(metrics: Metrics, memory: Memory, clock: Clock): (event: string) => void {
  const count = metrics.counter('events_total', 'What the assistant did, by kind', { event: EVENTS });
  metrics.gauge('inbound_open', 'Updates that are not answered yet, up to 1000', async () => (await memory.openInbound(1000)).length);
  metrics.gauge('jobs_due', 'Jobs that are due and not done, up to 1000', async () => (await memory.dueJobs(clock.nowS(), 1000)).length);
  return (event) => count({ event });
}
