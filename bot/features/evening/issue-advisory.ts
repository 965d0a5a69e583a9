import { nightSpan, type Greenhouse } from '../../../engine/index.js';
import { PAST_S, type Clock, type Place, type Records, type WeatherSource } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import type { Advisory } from './advisory.js';
import { toleranceNights } from './tolerance-nights.js';
import type { Supposing } from './supposed-night.js';
import type { EveningQuestion, WorkedOutEvening, WorkOut } from './work-out-evening.js';

export interface EveningPorts {
  readonly clock: Clock;
  readonly weather: WeatherSource;
  /** Null for a single advisory that is not remembered. */
  readonly store: Records | null;
  /** Works the evening out, perhaps in a thread of its own. */
  readonly workOut: WorkOut;
}

export interface EveningSubject {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
}

const placeOf = (greenhouse: Greenhouse): Place => ({ latitude: greenhouse.place.latitude, longitude: greenhouse.place.longitude, elevationM: greenhouse.place.elevation ?? null });

/** The evening's work, kept as issued. */
export async function issueAdvisory(subject: EveningSubject, ports: EveningPorts): Promise<WorkedOutEvening> {
  const evening = await composeAdvisory(subject, ports);
  if (ports.store) await keepAdvisory(subject.greenhouseId, evening, ports.store);
  return evening;
}

/** The advisory, written once and never changed, and what its evening has learned. */
export async function keepAdvisory(greenhouseId: string, { advisory, learned }: Pick<WorkedOutEvening, 'advisory' | 'learned'>, store: Records): Promise<void> {
  const issuedAtS = Math.floor(Date.parse(advisory.issuedAt) / 1000);
  await store.addAdvisory({ greenhouseId, night: advisory.night, issuedAtS, body: JSON.stringify(advisory) });
  if (learned !== undefined) await store.saveLearning({ greenhouseId, learnedAtS: issuedAtS, body: learned });
}

/** The evening's work: weather, what was done already, the plan of least expected loss, its words. Nothing is written. */
export const composeAdvisory = async (subject: EveningSubject, ports: EveningPorts, supposing?: Supposing): Promise<WorkedOutEvening> => ports.workOut({ ...(await eveningQuestion(subject, ports)), ...(supposing ? { supposing } : {}) });

/** Everything that the evening is worked out from. */
export async function eveningQuestion(subject: EveningSubject, ports: Omit<EveningPorts, 'workOut'>): Promise<EveningQuestion> {
  const { greenhouse, greenhouseId, zone } = subject;
  const { store } = ports;
  const nowS = Math.floor(ports.clock.nowS());
  const answer = await ports.weather.weatherAt(placeOf(greenhouse));
  const night = localTime(zone).date(nightSpan(nowS, greenhouse.place).sunsetS);
  return {
    greenhouse,
    zone,
    nowS,
    answer,
    actions: store === null ? [] : await store.actions(greenhouseId, nowS - PAST_S),
    issuedPlanId: store === null ? null : await planIssuedBefore(store, greenhouseId, night),
    ...(store === null ? {} : { ...(await store.learnedFrom(greenhouseId)), toleranceNights: await toleranceNights(store, subject) }),
  };
}

/** The plan that went out for the same night, if one did: nobody is sent out twice for a hair's breadth. */
async function planIssuedBefore(store: Records, greenhouseId: string, night: string): Promise<string | null> {
  const last = await store.advisoryFor(greenhouseId, night);
  return last === null ? null : (JSON.parse(last.body) as Advisory).plan.id;
}
