import { SECONDS_PER_HOUR } from '../../engine/index.js';
import { NoWeatherError, type Clock, type Log, type Place, type Store, type WeatherAnswer } from '../ports.js';
import type { AskSecond } from './met-norway/ask.js';
import type { AnswerRefusedError, ServiceCallError } from './open-meteo/errors.js';
import { placeKey, secondPlaceKey } from './place-key.js';
import { newestFirst, secondAnswer } from './second-answer.js';
import { storedRow } from './stored-row.js';
import { isWeatherFailure } from './weather-failure.js';

export interface WithoutFirstPorts {
  /** The service that is asked when the first fails; null or absent where there is none. */
  readonly askSecond?: AskSecond | null;
  readonly store: Pick<Store, 'saveWeather' | 'lastWeather'>;
  readonly clock: Clock;
  readonly log: Log;
}

// Older than this, a forecast of a night says little more than the season does.
const OLDEST_FALLBACK_S = 36 * SECONDS_PER_HOUR;
const LEAST_FALLBACK_AHEAD_S = 12 * SECONDS_PER_HOUR;

interface FirstFailed {
  /** The first service's last good answer. */
  readonly stored: WeatherAnswer | null;
  readonly failure: ServiceCallError | AnswerRefusedError;
}

/** The first service brought nothing: the second, or else the newest good answer of either, or else NoWeatherError with all that was tried. */
export async function withoutFirst(options: WithoutFirstPorts, place: Place, { stored, failure }: FirstFailed): Promise<WeatherAnswer> {
  const { askSecond = null, clock, log } = options;
  log.warn('weather-service-failed', { cause: failure.message });
  const second = await storedRow(options, secondPlaceKey(place), clock.nowS());
  const [newest = null] = newestFirst(stored, second);
  if (askSecond === null) return lastGood(place, newest, { nowS: clock.nowS(), causes: [failure], tried: `${failure.message} There is no second weather service while DUSKWARD_CONTACT is not set.` });
  try {
    return await secondAnswer({ ...options, askSecond }, place, { first: stored, second, failure });
  } catch (error) {
    if (!isWeatherFailure(error)) throw error;
    log.warn('second-weather-service-failed', { cause: error.message });
    return lastGood(place, newest, { nowS: clock.nowS(), causes: [failure, error], tried: `${failure.message} Asked the second: ${error.message}` });
  }
}

function lastGood(place: Place, stored: WeatherAnswer | null, failed: { readonly nowS: number; readonly causes: readonly Error[]; readonly tried: string }): WeatherAnswer {
  const { nowS, causes, tried } = failed;
  const ageS = stored === null ? null : Math.max(0, nowS - stored.issuedAtS);
  const aheadS = (stored?.hours.timeS.at(-1) ?? nowS) - nowS;
  if (stored !== null && ageS !== null && ageS <= OLDEST_FALLBACK_S && aheadS >= LEAST_FALLBACK_AHEAD_S) {
    return { ...stored, stale: true, notes: [{ code: 'stale', ageS, cause: causes.map(({ message }) => message).join(' ') }, ...stored.notes] };
  }
  const inHours = (seconds: number): string => (seconds / SECONDS_PER_HOUR).toFixed(1);
  const last =
    ageS === null
      ? 'no earlier answer is stored'
      : `the last stored answer is ${inHours(ageS)} h old and reaches ${inHours(Math.max(0, aheadS))} h ahead (needed: at most ${inHours(OLDEST_FALLBACK_S)} h old, at least ${inHours(LEAST_FALLBACK_AHEAD_S)} h ahead)`;
  throw new NoWeatherError(
    `No usable weather for ${placeKey(place)}. Asked the weather service: ${tried} Looked in the store: ${last}. ` +
      'Check the connection and DUSKWARD_WEATHER_URL, or give a saved answer with --weather FILE.',
    { cause: causes[0] },
  );
}
