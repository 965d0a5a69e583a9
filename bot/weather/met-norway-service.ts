import { setTimeout as sleep } from 'node:timers/promises';
import type { Clock, Log, Store } from '../ports.js';
import { askMetNorway, type AskSecond } from './met-norway/ask.js';
import { MetNorwayClient } from './met-norway/client.js';
import { Pace } from './met-norway/pace.js';
import { completeAddress } from './met-norway/request.js';
import { TRANSPORT_TIMES, Transport } from './open-meteo/transport.js';

export interface MetNorwayOptions {
  readonly clock: Clock;
  readonly store: Pick<Store, 'saveWeather' | 'lastWeather'>;
  readonly log: Log;
  readonly baseUrl: string | null;
  readonly contact: string;
}

/** The terms allow 20 a second for all who use the program; a place needs one an hour (choice of this project). */
const MOST_PER_SECOND = 4;
const REDIRECTIONS = 3;

/** The second weather service, wired; close it to let the process end. */
export function metNorwayService({ clock, store, log, baseUrl, contact }: MetNorwayOptions): { ask: AskSecond; close: () => Promise<void> } {
  const transport = new Transport(TRANSPORT_TIMES, REDIRECTIONS);
  const pace = new Pace({
    mostPerSecond: MOST_PER_SECOND,
    monotonicMs: () => performance.now(),
    sleepS: async (seconds: number) => {
      await sleep(seconds * 1000);
    },
  });
  const client = new MetNorwayClient({ transport, clock, log, pace, contact });
  return { ask: askMetNorway({ client, address: completeAddress(baseUrl), store, clock, log }), close: () => transport.close() };
}
