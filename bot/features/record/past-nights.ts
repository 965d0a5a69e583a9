import { nightBehind, type Greenhouse, type NightSpan } from '../../../engine/index.js';
import type { Records, StoredAction, StoredOutcome, StoredReading } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import type { Advisory, AdvisoryCrop, AdvisoryPlace } from '../evening/advisory.js';
import { callOf, type NightCall } from './night-call.js';
import { planFollowed, type Followed } from './plan-followed.js';

export interface RecordSubject {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
}

/** The range that was said of a place before its night, degrees C. */
export interface SaidLow {
  readonly q10: number;
  readonly q50: number;
  readonly q90: number;
}

/** The low that one thermometer showed after a night, beside what was said of its place. */
export interface ReadLow {
  readonly place: string;
  /** The thermometer's own name; null for the only one of its place. */
  readonly name: string | null;
  /** Bed of the thermometer; null where it has none. */
  readonly bed: string | null;
  readonly tempC: number;
  readonly judged: 'good' | 'not-reset' | 'open';
  readonly said: SaidLow | null;
  /** What was said is about the night as it was: the plan was followed, or changes nothing there. */
  readonly compares: boolean;
}

export interface PastNight {
  /** Local date on which it began. */
  readonly date: string;
  /** Who gave the weather; null where nothing was said before the night. */
  readonly source: string | null;
  readonly places: readonly AdvisoryPlace[];
  /** As they were judged under the plan, and with nothing done. */
  readonly crops: readonly AdvisoryCrop[];
  readonly idleCrops: readonly AdvisoryCrop[];
  /** What was asked for and feared; null where nothing was said, or of no crop. */
  readonly call: NightCall | null;
  readonly followed: Followed;
  readonly reads: readonly ReadLow[];
  readonly told: readonly StoredAction[];
  /** How crops came through, as it was told; newest first. */
  readonly outcomes: readonly StoredOutcome[];
}

/** Less than this between the night with its plan and without shows on no thermometer (project estimate). */
export const SAME_C = 0.2;
/** Of more than some winters' words on how crops came through the newest count. */
export const MOST_OUTCOMES = 1000;
const DAY_S = 86_400;

export type Thermometer = Pick<ReadLow, 'place' | 'name'>;
export const keyOf = ({ place, name }: Thermometer): string => name ?? place;

/** Nights with the lows that stand: those of which one is left out, because the sun was on the thermometer, are not among them. */
export function nightsRead(rows: readonly StoredReading[], { greenhouse, zone }: RecordSubject): ReadonlyMap<string, { readonly span: NightSpan; readonly lows: readonly StoredReading[] }> {
  const time = localTime(zone);
  const nights = new Map<string, { span: NightSpan; lows: StoredReading[] }>();
  for (const row of rows) {
    if (row.statistic !== 'low' || row.judged === 'sunlit' || row.replacedBy !== null || row.withdrawnAtS !== null) continue;
    const span = nightBehind(row.validAtS, greenhouse.place);
    const night = nights.get(time.date(span.sunsetS)) ?? { span, lows: [] };
    // Of two lows of one thermometer the newer counts.
    night.lows = [...night.lows.filter((low) => low.place !== row.place || low.thermometer !== row.thermometer), row];
    nights.set(time.date(span.sunsetS), night);
  }
  return nights;
}

/** Each night with what was said before it, what was read after it and what was told of it, in the order given. */
export async function pastNights(spans: readonly NightSpan[], rows: readonly StoredReading[], subject: RecordSubject, store: Records): Promise<readonly PastNight[]> {
  const time = localTime(subject.zone);
  const read = nightsRead(rows, subject);
  const firstS = Math.min(...spans.map(({ sunsetS }) => sunsetS));
  const actions = spans.length === 0 ? [] : await store.actions(subject.greenhouseId, Math.floor(firstS - DAY_S));
  const outcomes = spans.length === 0 ? [] : await store.outcomes(subject.greenhouseId, MOST_OUTCOMES);
  const nights: PastNight[] = [];
  for (const { sunsetS, sunriseS } of spans) {
    const date = time.date(sunsetS);
    // Later the night is as good as known.
    const issued = await store.advisoryBy(subject.greenhouseId, date, Math.floor((sunsetS + sunriseS) / 2));
    const advisory = issued === null ? null : (JSON.parse(issued.body) as Advisory);
    const told = actions.filter(({ night }) => night === date);
    const followed = advisory === null ? 'as-planned' : planFollowed(advisory, told);
    nights.push({
      date,
      source: advisory?.weather.source ?? null,
      places: advisory?.places ?? [],
      crops: advisory?.crops ?? [],
      idleCrops: advisory?.alternatives.find(isIdle)?.crops ?? [],
      call: advisory === null ? null : callOf(advisory),
      followed,
      told,
      outcomes: outcomes.filter(({ night }) => night === date),
      reads: (read.get(date)?.lows ?? []).map((row) => readLow(row, { advisory, followed, subject })),
    });
  }
  return nights;
}

const isIdle = ({ actions }: Advisory['alternatives'][number]): boolean => actions.length === 0;

function readLow(row: StoredReading, { advisory, followed, subject }: { advisory: Advisory | null; followed: Followed; subject: RecordSubject }): ReadLow {
  const bed = subject.greenhouse.thermometers.find(({ name }) => name === row.thermometer)?.bed;
  const said = advisory === null ? null : saidOf(advisory.places, row.place, bed);
  const idle = advisory?.alternatives.find(isIdle);
  const left = idle === undefined ? said : saidOf(idle.places, row.place, bed);
  const isSame = said !== null && left !== null && Math.abs(said.q50 - left.q50) <= SAME_C;
  return {
    place: row.place,
    name: row.thermometer,
    bed: bed ?? null,
    tempC: row.tempC,
    judged: row.judged === 'sunlit' ? 'open' : row.judged,
    said,
    compares: said !== null && (row.place === 'outside' || followed === 'as-planned' || (followed === 'not-told' && isSame)),
  };
}

/** The range of a place; of several beds the middle of all. */
export function saidOf(places: readonly AdvisoryPlace[], place: string, bed?: string): SaidLow | null {
  const found = places.filter((one) => one.place === place && (bed === undefined || one.bed === bed));
  if (found.length === 0) return null;
  const mean = (of: (lowC: AdvisoryPlace['lowC']) => number): number => found.reduce((sum, { lowC }) => sum + of(lowC), 0) / found.length;
  return { q10: mean(({ q10 }) => q10), q50: mean(({ q50 }) => q50), q90: mean(({ q90 }) => q90) };
}
