import { cropById, nightSpan, planEvening, type EveningPlan, type Greenhouse } from '../../../engine/index.js';
import type { Clock, Place, Records, WeatherSource } from '../../ports.js';
import { advisoryText } from '../../text/advisory-text.js';
import { localTime, type LocalTime } from '../../text/local-time.js';
import { deedsTonight } from './deeds-tonight.js';
import type { Advisory } from './advisory.js';
import { buildAdvisory } from './build-advisory.js';
import { pastControls } from './past-controls.js';

export interface EveningPorts {
  readonly clock: Clock;
  readonly weather: WeatherSource;
  /** Null for a single advisory that is not remembered. */
  readonly store: Records | null;
}

export interface EveningSubject {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
}

export interface IssuedEvening {
  readonly advisory: Advisory;
  readonly plan: EveningPlan;
}

/** The crop's plain name; the id where the tables do not know it. */
export const cropName = (id: string): string => cropById(id)?.commonName.split(' (')[0] ?? id;

const placeOf = (greenhouse: Greenhouse): Place => ({ latitude: greenhouse.place.latitude, longitude: greenhouse.place.longitude, elevationM: greenhouse.place.elevation ?? null });

/** The evening's work, kept as issued. */
export async function issueAdvisory(subject: EveningSubject, ports: EveningPorts): Promise<IssuedEvening> {
  const evening = await composeAdvisory(subject, ports);
  if (ports.store) await keepAdvisory(subject.greenhouseId, evening.advisory, ports.store);
  return evening;
}

/** Written once, and never changed. */
export async function keepAdvisory(greenhouseId: string, advisory: Advisory, store: Records): Promise<void> {
  await store.addAdvisory({ greenhouseId, night: advisory.night, issuedAtS: Math.floor(Date.parse(advisory.issuedAt) / 1000), body: JSON.stringify(advisory) });
}

/** The evening's work: weather, what was done already, the plan of least expected loss, its words. Nothing is written. */
export async function composeAdvisory(subject: EveningSubject, ports: EveningPorts): Promise<IssuedEvening> {
  const { greenhouse, greenhouseId } = subject;
  const nowS = Math.floor(ports.clock.nowS());
  const answer = await ports.weather.weatherAt(placeOf(greenhouse));
  const time = localTime(subject.zone);
  const done = ports.store === null ? null : await deedsTonight(ports.store, greenhouseId, { greenhouse, nowS });
  const issuedPlanId = ports.store === null ? null : await planIssuedBefore(ports.store, greenhouseId, time.date(nightSpan(nowS, greenhouse.place).sunsetS));
  const past = ports.store === null ? null : await pastControls(ports.store, greenhouseId, { greenhouse, nowS });
  const plan = planEvening({
    greenhouse,
    weather: answer.hours,
    ground: answer.ground,
    nowS,
    bedtimeS: bedtime(greenhouse, time, nowS),
    weatherAgeS: Math.max(0, nowS - answer.issuedAtS),
    ...(past ? { pastControls: past } : {}),
    ...(done ? { doneTonight: done } : {}),
    ...(issuedPlanId === null ? {} : { issuedPlanId }),
  });
  const facts = buildAdvisory(plan, { greenhouse, answer, nowS, time });
  const advisory: Advisory = { ...facts, text: advisoryText(facts, { units: greenhouse.grower.units, dayName: time.day(plan.night.sunsetS), cropName }) };
  return { advisory, plan };
}

/** The plan that went out for the same night, if one did: nobody is sent out twice for a hair's breadth. */
async function planIssuedBefore(store: Records, greenhouseId: string, night: string): Promise<string | null> {
  const last = await store.lastAdvisory(greenhouseId);
  return last?.night === night ? (JSON.parse(last.body) as Advisory).plan.id : null;
}

/** Bedtime of the evening that comes, or of the one that is running: before five in the morning it was yesterday's. */
const SMALL_HOURS_S = 5 * 3600;
function bedtime(greenhouse: Greenhouse, time: LocalTime, nowS: number): number {
  return time.atClock(nowS - SMALL_HOURS_S, greenhouse.grower.bedtime);
}
