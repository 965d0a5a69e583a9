import { readFile } from 'node:fs/promises';
import type { Readable, Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import type { Settings } from '../config/settings.js';
import { talk } from './channels/console.js';
import { systemClock, trialClock } from './clock.js';
import { readGreenhouse } from './commands/read-input.js';
import { answerMessage, type ConversationPorts } from './conversation.js';
import { issueAdvisory, type EveningSubject } from './features/evening/issue-advisory.js';
import { workOutHere } from './features/evening/work-out-evening.js';
import { placeKeyOf } from './greenhouse-place.js';
import { createLog } from './log.js';
import { NoWeatherError, type Clock, type Log, type Store } from './ports.js';
import { openSqliteStore } from './store/sqlite-store.js';
import { FAREWELL, GREETING, noWeather, somethingFailed } from './text/reply-text.js';
import { zoneOf } from './time-zone.js';
import { demoSource } from './weather/demo.js';
import { liveSource, type LiveSource } from './weather/live-source.js';

export const DEMO_GREENHOUSE = fileURLToPath(new URL('../config/demo/greenhouse.json', import.meta.url));

export function clockFrom(settings: Settings, log: Log): Clock {
  if (settings.DUSKWARD_CLOCK === null) return systemClock;
  log.warn('the clock is set by DUSKWARD_CLOCK, for trials only');
  return trialClock(settings.DUSKWARD_CLOCK);
}

/** Live weather; the demo greenhouse has its own invented one unless a service is named. */
export function weatherFrom(settings: Settings, ports: { clock: Clock; store: Store; log: Log }): LiveSource {
  if (settings.DUSKWARD_GREENHOUSE === null && settings.DUSKWARD_WEATHER_URL === null) return { source: demoSource(ports.clock), lacksSecond: false, close: () => Promise.resolve() };
  return liveSource({ ...ports, firstUrl: settings.DUSKWARD_WEATHER_URL, apiKey: settings.DUSKWARD_WEATHER_KEY, secondUrl: settings.DUSKWARD_WEATHER2_URL, contact: settings.DUSKWARD_CONTACT });
}

/** The assistant on the console: tonight's advisory first, then the conversation. */
export async function runConsole(settings: Settings, streams: { input: Readable; output: Writable }): Promise<void> {
  const log = createLog(settings.DUSKWARD_LOG!);
  const clock = clockFrom(settings, log);
  const file = settings.DUSKWARD_GREENHOUSE ?? DEMO_GREENHOUSE;
  const greenhouse = await readGreenhouse(file);
  const store = await openSqliteStore({ path: settings.DUSKWARD_DATABASE!, placeKeyOf });
  const { source, lacksSecond, close } = weatherFrom(settings, { clock, store, log });
  if (lacksSecond) log.warn('no second weather service: DUSKWARD_CONTACT is not set');
  const subject: EveningSubject = { greenhouseId: 'console', greenhouse, zone: zoneOf(greenhouse) };
  const ports: ConversationPorts = { clock, weather: source, store, log, workOut: workOutHere };
  try {
    await store.saveGreenhouse({ id: subject.greenhouseId, body: await readFile(file, 'utf8'), savedAtS: clock.nowS() });
    streams.output.write(`${await firstWords(subject, ports)}\n\n${GREETING}\n`);
    await talk({ ...streams, prompt: '> ' }, async (text) => (await answerMessage({ greenhouseId: subject.greenhouseId, text, receivedAtS: clock.nowS() }, subject, ports)).text);
    streams.output.write(`${FAREWELL}\n`);
  } finally {
    await close();
    await store.close();
  }
}

async function firstWords(subject: EveningSubject, ports: ConversationPorts): Promise<string> {
  try {
    return (await issueAdvisory(subject, ports)).advisory.text;
  } catch (error) {
    if (error instanceof NoWeatherError) return noWeather(error.message);
    ports.log.error('first advisory failed', { error });
    return somethingFailed(error instanceof Error ? error.message : String(error));
  }
}
