import { SECONDS_PER_HOUR } from '../../engine/index.js';
import type { Log, Store, WeatherAnswer } from '../ports.js';
import { parseStoredAnswer } from './stored-answer.js';

// A clock that was put back a little is no reason to distrust the store.
const CLOCK_STEP_S = SECONDS_PER_HOUR;

/** The answer stored under a key; null when there is none, or none that can be used. */
export async function storedRow({ store, log }: { readonly store: Pick<Store, 'lastWeather'>; readonly log: Log }, key: string, nowS: number): Promise<WeatherAnswer | null> {
  const row = await store.lastWeather(key);
  if (row === null) return null;
  const answer = parseStoredAnswer(row.body);
  if (answer === null) {
    log.warn('stored-weather-unreadable', { issuedAtS: row.issuedAtS });
    return null;
  }
  if (answer.issuedAtS > nowS + CLOCK_STEP_S) {
    log.warn('stored-weather-from-the-future', { issuedAtS: answer.issuedAtS, nowS });
    return null;
  }
  return answer;
}

export async function storeRow({ store, log }: { readonly store: Pick<Store, 'saveWeather'>; readonly log: Log }, key: string, answer: WeatherAnswer): Promise<void> {
  try {
    await store.saveWeather({ placeKey: key, issuedAtS: answer.issuedAtS, body: JSON.stringify(answer) });
  } catch (error) {
    // Tonight's advice matters more than tomorrow's fallback.
    log.error('weather-not-stored', { error: String(error) });
  }
}
