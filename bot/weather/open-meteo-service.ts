import { setTimeout as sleep } from 'node:timers/promises';
import type { Clock } from '../ports.js';
import { askOpenMeteo, type AskWeather } from './open-meteo/ask.js';
import { OpenMeteoClient } from './open-meteo/client.js';
import { weatherHosts } from './open-meteo/hosts.js';
import { Transport } from './open-meteo/transport.js';

export interface OpenMeteoOptions {
  readonly clock: Clock;
  readonly baseUrl: string | null;
  readonly apiKey: string | null;
  readonly contact: string | null;
  readonly wantsMembers: boolean;
}

/** Refused calls are repeated a little after the full minute, spread so that not everybody asks at once. */
const LEAST_JITTER_S = 1;
const JITTER_SPAN_S = 4;

/** The first weather service, wired; close it to let the process end. */
export function openMeteoService({ clock, baseUrl, apiKey, contact, wantsMembers }: OpenMeteoOptions): { ask: AskWeather; close: () => Promise<void> } {
  const transport = new Transport();
  const client = new OpenMeteoClient({
    transport,
    clock,
    sleepS: async (seconds: number) => {
      await sleep(seconds * 1000);
    },
    jitterS: () => LEAST_JITTER_S + Math.random() * JITTER_SPAN_S,
    apiKey,
    contact,
  });
  return { ask: askOpenMeteo({ client, hosts: weatherHosts({ baseUrl, withKey: apiKey !== null }), clock, wantsMembers }), close: () => transport.close() };
}
