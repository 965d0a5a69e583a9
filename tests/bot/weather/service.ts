import type { Clock, Log, Store, StoredWeather, WeatherSource } from '../../../bot/ports.js';
import { askOpenMeteo } from '../../../bot/weather/open-meteo/ask.js';
import { OpenMeteoClient } from '../../../bot/weather/open-meteo/client.js';
import { weatherHosts } from '../../../bot/weather/open-meteo/hosts.js';
import { Transport } from '../../../bot/weather/open-meteo/transport.js';
import { storedSource } from '../../../bot/weather/stored-source.js';

/** The whole weather room over a given address, with a clock and a sleep that take no real time. */
export interface TestService {
  readonly source: WeatherSource;
  readonly client: OpenMeteoClient;
  readonly clock: Clock & { set(nowS: number): void };
  readonly sleptS: readonly number[];
  readonly warnings: readonly string[];
  readonly rows: Map<string, StoredWeather>;
  close(): Promise<void>;
}

export const START_S = Date.parse('2026-11-23T21:20:30Z') / 1000;
export const PLACE = { latitude: 44.26, longitude: -72.58, elevationM: 187 };
const JITTER_S = 3;

export interface TestServiceOptions {
  readonly startS?: number;
  readonly apiKey?: string;
  readonly contact?: string;
  readonly budgetMs?: number;
  /** How long an answer may take to begin: short, so that silence is soon over, but not for a service that works on its answers. */
  readonly answerMs?: number;
  readonly wantsMembers?: boolean;
}

export function startTestService(baseUrl: string, options: TestServiceOptions = {}): TestService {
  let nowS = options.startS ?? START_S;
  const clock = { nowS: () => nowS, set: (value: number) => void (nowS = value) };
  const sleptS: number[] = [];
  const warnings: string[] = [];
  const rows = new Map<string, StoredWeather>();
  const { answerMs = 100 } = options;
  const transport = new Transport({ connectMs: 500, headersMs: answerMs, bodyMs: answerMs, retryAfterMs: 5 });
  const client = new OpenMeteoClient({
    transport,
    clock,
    sleepS: (seconds) => {
      sleptS.push(seconds);
      nowS += seconds;
      return Promise.resolve();
    },
    jitterS: () => JITTER_S,
    apiKey: options.apiKey ?? null,
    contact: options.contact ?? null,
    budgetMs: options.budgetMs ?? 5_000,
  });
  const store: Pick<Store, 'saveWeather' | 'lastWeather'> = {
    saveWeather: (row) => Promise.resolve(void rows.set(row.placeKey, row)),
    lastWeather: (key) => Promise.resolve(rows.get(key) ?? null),
  };
  const log: Log = { info: () => undefined, warn: (event) => void warnings.push(event), error: (event) => void warnings.push(event) };
  const ask = askOpenMeteo({ client, hosts: weatherHosts({ baseUrl, withKey: options.apiKey !== undefined }), clock, wantsMembers: options.wantsMembers ?? false });
  return { source: storedSource({ ask, store, clock, log }), client, clock, sleptS, warnings, rows, close: () => transport.close() };
}
