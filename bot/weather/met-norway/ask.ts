import type { Clock, Log, Place, Store } from '../../ports.js';
import { degreesApart } from '../distance.js';
import { AnswerRefusedError } from '../open-meteo/errors.js';
import type { MetNorwayClient } from './client.js';
import { keepCopy, keptCopy, type KeptCopy } from './kept-copy.js';
import { completeRequest } from './request.js';
import { metNorwayHours, type MetNorwayHours } from './to-hours.js';
import { readMetNorwayAnswer, type MetNorwayAnswer } from './wire.js';

/** Asks the second service for the weather of one place. */
export type AskSecond = (place: Place) => Promise<MetNorwayHours & { readonly issuedAtS: number }>;

export interface MetNorwayService {
  readonly client: Pick<MetNorwayClient, 'ask'>;
  /** Of the product "complete". */
  readonly address: string;
  readonly store: Pick<Store, 'saveWeather' | 'lastWeather'>;
  readonly clock: Clock;
  readonly log: Log;
}

// The service answers for the point itself; half a degree away it is other weather.
const FARTHEST_DEGREES = 0.5;

/** The kept answer until it expires, then a new one, or the kept one again when the service says that it still stands. Throws ServiceCallError or AnswerRefusedError. */
export function askMetNorway(service: MetNorwayService): AskSecond {
  const { clock } = service;
  return async (place) => {
    const nowS = clock.nowS();
    const kept = await keptCopy(service, place, nowS);
    const copy = kept !== null && nowS < kept.expiresAtS ? kept : await renewed(service, place, kept);
    return { ...metNorwayHours(answerOf(copy, place), { place, nowS: clock.nowS() }), issuedAtS: copy.confirmedAtS };
  };
}

async function renewed(service: MetNorwayService, place: Place, kept: KeptCopy | null): Promise<KeptCopy> {
  const good = kept !== null && isUsable(kept, place) ? kept : null;
  const exchange = await service.client.ask(completeRequest(service.address, place), good?.lastModified ?? null);
  const times = { expiresAtS: exchange.expiresAtS, confirmedAtS: service.clock.nowS() };
  const copy: KeptCopy = exchange.kind === 'new' ? { ...times, lastModified: exchange.lastModified, body: exchange.body } : { ...times, lastModified: good?.lastModified ?? null, body: good?.body };
  // An answer that cannot be used is kept too: before it expires the service must not be asked again.
  await keepCopy(service, place, copy);
  return copy;
}

function answerOf(copy: KeptCopy, place: Place): MetNorwayAnswer {
  const answer = readMetNorwayAnswer(copy.body);
  if (degreesApart(answer, place) <= FARTHEST_DEGREES) return answer;
  throw new AnswerRefusedError('Second weather answer, place', {
    expected: `within ${FARTHEST_DEGREES} degrees of ${place.latitude}, ${place.longitude}`,
    got: `${answer.latitude}, ${answer.longitude}`,
    todo: 'Something between changes the request.',
  });
}

function isUsable(copy: KeptCopy, place: Place): boolean {
  try {
    return answerOf(copy, place).steps.length > 0;
  } catch (error) {
    if (error instanceof AnswerRefusedError) return false;
    throw error;
  }
}
