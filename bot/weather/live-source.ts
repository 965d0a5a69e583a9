import type { Clock, Log, Store, WeatherSource } from '../ports.js';
import { metNorwayService } from './met-norway-service.js';
import { openMeteoService } from './open-meteo-service.js';
import { storedSource } from './stored-source.js';

export interface LiveSourceOptions {
  readonly clock: Clock;
  readonly store: Store;
  readonly log: Log;
  readonly firstUrl: string | null;
  readonly apiKey: string | null;
  /** Ask the first for the single runs of its ensemble. */
  readonly wantsMembers: boolean;
  readonly secondUrl: string | null;
  /** The second service demands it: without one it is not asked. */
  readonly contact: string | null;
}

export interface LiveSource {
  readonly source: WeatherSource;
  /** No service is left to ask when the first fails. */
  readonly lacksSecond: boolean;
  readonly close: () => Promise<void>;
}

/** Both weather services with their store, wired; close it to let the process end. */
export function liveSource({ clock, store, log, ...options }: LiveSourceOptions): LiveSource {
  const { firstUrl, apiKey, wantsMembers, secondUrl, contact } = options;
  const first = openMeteoService({ clock, baseUrl: firstUrl, apiKey, contact, wantsMembers });
  const second = contact === null ? null : metNorwayService({ clock, store, log, baseUrl: secondUrl, contact });
  return {
    source: storedSource({ ask: first.ask, askSecond: second?.ask ?? null, store, clock, log }),
    lacksSecond: second === null,
    close: async () => {
      await Promise.all([first.close(), second?.close()]);
    },
  };
}
