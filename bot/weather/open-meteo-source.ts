import { setTimeout as sleep } from 'node:timers/promises';
import type { Clock, Log, Store, WeatherSource } from '../ports.js';
import { askOpenMeteo } from './open-meteo/ask.js';
import { OpenMeteoClient } from './open-meteo/client.js';
import { weatherHosts } from './open-meteo/hosts.js';
import { Transport } from './open-meteo/transport.js';
import { storedSource } from './stored-source.js';

export interface OpenMeteoSourceOptions {
  readonly clock: Clock;
  readonly store: Store;
  readonly log: Log;
  readonly baseUrl: string | null;
  readonly apiKey: string | null;
  readonly contact: string | null;
}

/** Refused calls are repeated a little after the full minute, spread so that not everybody asks at once. */
const LEAST_JITTER_S = 1;
const JITTER_SPAN_S = 4;

/** The weather service with its store, wired; close it to let the process end. */
export function openMeteoSource(options: OpenMeteoSourceOptions): { source: WeatherSource; close: () => Promise<void> } {
  const { clock, store, log, apiKey } = options;
  const transport = new Transport();
  const client = new OpenMeteoClient({
    transport,
    clock,
    sleepS: async (seconds: number) => {
      await sleep(seconds * 1000);
    },
    jitterS: () => LEAST_JITTER_S + Math.random() * JITTER_SPAN_S,
    apiKey,
    contact: options.contact,
  });
  const hosts = weatherHosts({ baseUrl: options.baseUrl, withKey: apiKey !== null });
  return { source: storedSource({ ask: askOpenMeteo({ client, hosts, clock }), store, clock, log }), close: () => transport.close() };
}
