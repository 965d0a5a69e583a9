import { SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from '../../engine/index.js';
import { NoWeatherError, type Clock, type Log, type Place, type Store, type WeatherAnswer, type WeatherSource } from '../ports.js';
import { mergedHours } from './merge.js';
import type { AskWeather } from './open-meteo/ask.js';
import { AnswerRefusedError, ServiceCallError } from './open-meteo/errors.js';
import { AHEAD_HOURS, FULL_PAST_HOURS, type HourSpan } from './open-meteo/request.js';
import { placeKey } from './place-key.js';
import { spanNotes } from './span.js';
import { parseStoredAnswer } from './stored-answer.js';

export interface StoredSourceOptions {
  readonly ask: AskWeather;
  readonly store: Pick<Store, 'saveWeather' | 'lastWeather'>;
  readonly clock: Clock;
  readonly log: Log;
}

// The service has new runs every hour at best; everybody at the same place shares the answer.
const FRESH_S = 60 * SECONDS_PER_MINUTE;
// Older than this, a forecast of a night says little more than the season does.
const OLDEST_FALLBACK_S = 36 * SECONDS_PER_HOUR;
const LEAST_FALLBACK_AHEAD_S = 12 * SECONDS_PER_HOUR;
// The hours just before the last issue were still forecasts of long lead in it; they are asked again.
const OVERLAP_HOURS = 12;
// A clock that was put back a little is no reason to distrust the store.
const CLOCK_STEP_S = SECONDS_PER_HOUR;

/** Remembers what the service said: asks only for what is missing, at most once an hour, and lives through outages. */
export function storedSource(options: StoredSourceOptions): WeatherSource {
  const { clock } = options;
  const underWay = new Map<string, Promise<WeatherAnswer>>();
  return {
    weatherAt(place) {
      const key = placeKey(place);
      const asked = underWay.get(key) ?? answerFor(options, place, clock.nowS()).finally(() => underWay.delete(key));
      underWay.set(key, asked);
      return asked;
    },
  };
}

async function answerFor({ ask, store, clock, log }: StoredSourceOptions, place: Place, nowS: number): Promise<WeatherAnswer> {
  const key = placeKey(place);
  const stored = await lastGood({ store, log }, key, nowS);
  if (stored !== null && nowS - stored.issuedAtS < FRESH_S) return stored;
  let fresh;
  try {
    fresh = await ask(place, { span: missingSpan(stored, nowS), yearlyMeanAirTempK: stored?.ground.yearlyMeanAirTempK ?? null });
  } catch (error) {
    if (error instanceof ServiceCallError || error instanceof AnswerRefusedError) return fallback({ place, stored, cause: error, nowS: clock.nowS(), log });
    throw error;
  }
  const issuedAtS = clock.nowS();
  const hours = stored === null ? fresh.hours : mergedHours(stored.hours, fresh.hours, firstWantedS(issuedAtS));
  const notes = [...fresh.notes, ...spanNotes(hours, issuedAtS)];
  const answer: WeatherAnswer = { hours, ground: fresh.ground, source: 'open-meteo', issuedAtS, stale: false, notes };
  try {
    await store.saveWeather({ placeKey: key, issuedAtS, body: JSON.stringify(answer) });
  } catch (error) {
    // Tonight's advice matters more than tomorrow's fallback.
    log.error('weather-not-stored', { placeKey: key, error: String(error) });
  }
  return answer;
}

const hourOf = (timeS: number): number => Math.floor(timeS / SECONDS_PER_HOUR) * SECONDS_PER_HOUR;
const firstWantedS = (nowS: number): number => hourOf(nowS) - FULL_PAST_HOURS * SECONDS_PER_HOUR;

/** The past in full when the stored one is not, else from a little before the last issue on. */
function missingSpan(stored: WeatherAnswer | null, nowS: number): HourSpan {
  const full = { pastHours: FULL_PAST_HOURS, aheadHours: AHEAD_HOURS };
  const storedFromS = stored?.hours.timeS[0];
  const storedToS = stored?.hours.timeS.at(-1);
  if (stored === null || storedFromS === undefined || storedToS === undefined || storedFromS > firstWantedS(nowS)) return full;
  const pastHours = Math.max(0, hourOf(nowS) - hourOf(stored.issuedAtS)) / SECONDS_PER_HOUR + OVERLAP_HOURS;
  const touches = storedToS >= hourOf(nowS) - (pastHours + 1) * SECONDS_PER_HOUR;
  return touches && pastHours < FULL_PAST_HOURS ? { pastHours, aheadHours: AHEAD_HOURS } : full;
}

async function lastGood({ store, log }: Pick<StoredSourceOptions, 'store' | 'log'>, key: string, nowS: number): Promise<WeatherAnswer | null> {
  const row = await store.lastWeather(key);
  if (row === null) return null;
  const answer = parseStoredAnswer(row.body);
  if (answer === null) {
    log.warn('stored-weather-unreadable', { placeKey: key, issuedAtS: row.issuedAtS });
    return null;
  }
  if (answer.issuedAtS > nowS + CLOCK_STEP_S) {
    log.warn('stored-weather-from-the-future', { placeKey: key, issuedAtS: answer.issuedAtS, nowS });
    return null;
  }
  return answer;
}

function fallback(failure: { place: Place; stored: WeatherAnswer | null; cause: Error; nowS: number; log: Log }): WeatherAnswer {
  const { place, stored, cause, nowS, log } = failure;
  log.warn('weather-service-failed', { placeKey: placeKey(place), cause: cause.message });
  const ageS = stored === null ? null : Math.max(0, nowS - stored.issuedAtS);
  const aheadS = (stored?.hours.timeS.at(-1) ?? nowS) - nowS;
  if (stored !== null && ageS !== null && ageS <= OLDEST_FALLBACK_S && aheadS >= LEAST_FALLBACK_AHEAD_S) {
    return { ...stored, stale: true, notes: [{ code: 'stale', ageS, cause: cause.message }, ...stored.notes] };
  }
  const inHours = (seconds: number): string => (seconds / SECONDS_PER_HOUR).toFixed(1);
  const last =
    ageS === null
      ? 'no earlier answer is stored'
      : `the last stored answer is ${inHours(ageS)} h old and reaches ${inHours(Math.max(0, aheadS))} h ahead (needed: at most ${inHours(OLDEST_FALLBACK_S)} h old, at least ${inHours(LEAST_FALLBACK_AHEAD_S)} h ahead)`;
  throw new NoWeatherError(
    `No usable weather for ${placeKey(place)}. Asked the weather service: ${cause.message} Looked in the store: ${last}. ` +
      'Check the connection and DUSKWARD_WEATHER_URL, or give a saved answer with --weather FILE.',
    { cause },
  );
}
