import { SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from '../../engine/index.js';
import type { Place, WeatherAnswer, WeatherSource } from '../ports.js';
import { mergedHours } from './merge.js';
import type { AskWeather } from './open-meteo/ask.js';
import { AHEAD_HOURS, FULL_PAST_HOURS, type HourSpan } from './open-meteo/request.js';
import { placeKey } from './place-key.js';
import { firstWantedS, hourOf, spanNotes } from './span.js';
import { storedRow, storeRow } from './stored-row.js';
import { isWeatherFailure } from './weather-failure.js';
import { withoutFirst, type WithoutFirstPorts } from './without-first.js';

export interface StoredSourceOptions extends WithoutFirstPorts {
  readonly ask: AskWeather;
}

// The service has new runs every hour at best; everybody at the same place shares the answer.
const FRESH_S = 60 * SECONDS_PER_MINUTE;
// The hours just before the last issue were still forecasts of long lead in it; they are asked again.
const OVERLAP_HOURS = 12;

/** Remembers what the service said: asks only for what is missing, at most once an hour, and lives through outages: first service, second, what is stored. */
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

async function answerFor(options: StoredSourceOptions, place: Place, nowS: number): Promise<WeatherAnswer> {
  const { ask, clock, log } = options;
  const key = placeKey(place);
  const stored = await storedRow(options, key, nowS);
  if (stored !== null && nowS - stored.issuedAtS < FRESH_S) return stored;
  let fresh;
  try {
    fresh = await ask(place, { span: missingSpan(stored, nowS), yearlyMeanAirTempK: stored?.ground.yearlyMeanAirTempK ?? null });
  } catch (error) {
    if (isWeatherFailure(error)) return withoutFirst(options, place, { stored, failure: error });
    throw error;
  }
  for (const note of fresh.notes) if (note.code === 'no-members') log.warn('weather-members-not-used', { cause: note.cause });
  const issuedAtS = clock.nowS();
  const hours = stored === null ? fresh.hours : mergedHours(stored.hours, fresh.hours, firstWantedS(issuedAtS));
  const notes = [...fresh.notes, ...spanNotes(hours, issuedAtS)];
  const answer: WeatherAnswer = { hours, ground: fresh.ground, source: 'open-meteo', issuedAtS, stale: false, notes };
  await storeRow(options, key, answer);
  return answer;
}

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
