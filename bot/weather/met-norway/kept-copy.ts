import { z } from 'zod';
import { SECONDS_PER_HOUR } from '../../../engine/index.js';
import type { Log, Place, Store } from '../../ports.js';
import { placeKey } from '../place-key.js';

/** The service's last answer as it came, with what its terms hang on: kept in the store, so that a restart does not ask too soon. */
export interface KeptCopy {
  readonly lastModified: string | null;
  readonly expiresAtS: number;
  /** When the service last gave it, or said that it still stands. */
  readonly confirmedAtS: number;
  readonly body: unknown;
}

const Copy = z.object({ lastModified: z.string().nullable(), expiresAtS: z.number(), confirmedAtS: z.number(), body: z.unknown() });

// A clock that was put back a little is no reason to distrust the store.
const CLOCK_STEP_S = SECONDS_PER_HOUR;

const copyKey = (place: Place): string => `met-norway copy ${placeKey(place)}`;

export async function keptCopy(ports: { readonly store: Pick<Store, 'lastWeather'>; readonly log: Log }, place: Place, nowS: number): Promise<KeptCopy | null> {
  const row = await ports.store.lastWeather(copyKey(place));
  if (row === null) return null;
  const copy = Copy.safeParse(jsonOrNull(row.body));
  if (copy.success && copy.data.confirmedAtS <= nowS + CLOCK_STEP_S) return copy.data;
  ports.log.warn('second-weather-copy-unusable', { issuedAtS: row.issuedAtS, nowS });
  return null;
}

export async function keepCopy(ports: { readonly store: Pick<Store, 'saveWeather'>; readonly log: Log }, place: Place, copy: KeptCopy): Promise<void> {
  try {
    await ports.store.saveWeather({ placeKey: copyKey(place), issuedAtS: copy.confirmedAtS, body: JSON.stringify(copy) });
  } catch (error) {
    // Tonight's advice matters more than the next request's manners.
    ports.log.error('second-weather-copy-not-stored', { error: String(error) });
  }
}

function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
