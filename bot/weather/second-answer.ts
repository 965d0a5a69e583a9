import { SECONDS_PER_DAY, SECONDS_PER_HOUR, type GroundOutside, type WeatherHours } from '../../engine/index.js';
import type { Clock, Log, Place, Store, WeatherAnswer, WeatherNote } from '../ports.js';
import { mergedHours } from './merge.js';
import type { AskSecond } from './met-norway/ask.js';
import type { AnswerRefusedError, ServiceCallError } from './open-meteo/errors.js';
import { secondPlaceKey } from './place-key.js';
import { firstWantedS, spanNotes } from './span.js';
import { storeRow } from './stored-row.js';
import { failureOf } from './weather-failure.js';

export interface SecondAnswerPorts {
  readonly askSecond: AskSecond;
  readonly store: Pick<Store, 'saveWeather'>;
  readonly clock: Clock;
  readonly log: Log;
}

/** What is stored of either service, and why the first brought nothing now. */
export interface KnownWithoutFirst {
  readonly first: WeatherAnswer | null;
  readonly second: WeatherAnswer | null;
  readonly failure: ServiceCallError | AnswerRefusedError;
}

// At 18 cm the ground changes by some 2 K in this time (project estimate); older, it is not the ground of now.
const OLDEST_SOIL_S = 10 * SECONDS_PER_DAY;

/**
 * Weather that stands on the second service: its hours from now on, the past from what either service had said, the ground from the first.
 * Throws ServiceCallError or AnswerRefusedError.
 */
export async function secondAnswer(ports: SecondAnswerPorts, place: Place, known: KnownWithoutFirst): Promise<WeatherAnswer> {
  const { hours: ahead, notes, issuedAtS } = await ports.askSecond(place);
  const nowS = ports.clock.nowS();
  const hours = mergedHours(pastBefore(ahead, known) ?? ahead, ahead, firstWantedS(nowS));
  const { ground, notes: groundNotes } = groundFrom(known.first, nowS);
  const answer: WeatherAnswer = {
    hours,
    ground,
    source: 'met-norway',
    issuedAtS,
    stale: false,
    notes: [{ code: 'second-service', failure: failureOf(known.failure), cause: known.failure.message }, ...groundNotes, ...notes, ...spanNotes(hours, nowS)],
  };
  await storeRow(ports, secondPlaceKey(place), answer);
  return answer;
}

/** Of the two stored answers the newer one that reaches to the first of the new hours. */
function pastBefore(ahead: WeatherHours, { first, second }: KnownWithoutFirst): WeatherHours | null {
  const joinS = (ahead.timeS[0] ?? 0) - SECONDS_PER_HOUR;
  return newestFirst(first, second).find(({ hours }) => hours.timeS.includes(joinS))?.hours ?? null;
}

export function newestFirst(...answers: readonly (WeatherAnswer | null)[]): readonly WeatherAnswer[] {
  return answers.filter((answer) => answer !== null).sort((a, b) => b.issuedAtS - a.issuedAtS);
}

function groundFrom(first: WeatherAnswer | null, nowS: number): { readonly ground: GroundOutside; readonly notes: readonly WeatherNote[] } {
  const yearlyMeanAirTempK = first?.ground.yearlyMeanAirTempK ?? null;
  const soil = first !== null && nowS - first.issuedAtS <= OLDEST_SOIL_S ? first.ground : { soilTemp18cmK: null, soilTemp54cmK: null };
  const { soilTemp18cmK, soilTemp54cmK } = soil;
  const notes: WeatherNote[] = soilTemp18cmK === null && soilTemp54cmK === null ? [{ code: 'missing-variable', variable: 'soil temperature', instead: 'not known' }] : [];
  return { ground: { soilTemp18cmK, soilTemp54cmK, yearlyMeanAirTempK }, notes };
}
