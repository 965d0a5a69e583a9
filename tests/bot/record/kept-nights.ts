import type { Advisory, AdvisoryAction, AdvisoryCrop, AdvisoryPlace, AdvisoryReason } from '../../../bot/features/evening/advisory.js';
import type { Deed } from '../../../bot/features/evening/deeds-tonight.js';
import type { RecordSubject } from '../../../bot/features/record/past-nights.js';
import type { NewReading, Store, StoredOutcome } from '../../../bot/ports.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import { HOUSE } from '../reading/reading-rig.js';

const at = (iso: string): number => Date.parse(`${iso}:00-05:00`) / 1000;
const dayAfter = (night: string): string => new Date(Date.parse(`${night}T12:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
const GREENHOUSE_ID = 'h';

/** What was said of places: the middle, two degrees C either way. */
type Said = Readonly<Record<string, number>>;
const HALF_C = 2;
const placesOf = (said: Said): readonly Omit<AdvisoryPlace, 'lowAt'>[] =>
  Object.entries(said).map(([place, lowC]) => ({ place: place as AdvisoryPlace['place'], lowC: { mean: lowC, q10: lowC - HALF_C, q50: lowC, q90: lowC + HALF_C } }));

interface SaidMore {
  readonly clock?: string;
  readonly plan?: readonly AdvisoryAction[];
  readonly idle?: Said;
  readonly reasons?: readonly AdvisoryReason[];
  /** What was feared with nothing done. */
  readonly crops?: readonly Pick<AdvisoryCrop, 'damageProbability' | 'damageBeginsC' | 'judgedLowC' | 'judgedAt'>[];
  /** The verdicts under the plan; the same with nothing done where no other is given. */
  readonly verdicts?: readonly SaidCrop[];
  /** Under whose cover the place "cover" is. */
  readonly coveredBed?: string;
}

export type SaidCrop = Pick<AdvisoryCrop, 'crop' | 'asked' | 'bed' | 'verdict' | 'damageProbability' | 'damageBeginsC' | 'judgedLowC' | 'judgedAt' | 'pickedBefore'>;

/** A store with nights as they were said, read and told. */
export interface KeptNights {
  readonly store: Store;
  readonly subject: RecordSubject;
  said(night: string, said: Said, more?: SaidMore): Promise<void>;
  read(night: string, tempC: number, more?: Partial<NewReading>): Promise<number>;
  came(night: string, crop: string, state: StoredOutcome['state'], bed?: string): Promise<void>;
  told(night: string, deed: Partial<Deed>, done: boolean, clock?: string): Promise<void>;
}

export async function keptNights(file: GreenhouseFile = { ...HOUSE, grower: { units: 'C' } }, zone = 'America/Toronto'): Promise<KeptNights> {
  const checked = checkGreenhouse(file);
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults));
  const store = await openSqliteStore({ path: ':memory:' });
  return {
    store,
    subject: { greenhouseId: GREENHOUSE_ID, greenhouse: checked.greenhouse, zone },
    said: async (night, said, { clock = `${night}T16:00`, plan = [], idle = said, reasons = [], verdicts = [], crops = verdicts, coveredBed } = {}) => {
      const places = placesOf(said).map((one) => (one.place === 'cover' && coveredBed !== undefined ? { ...one, bed: coveredBed } : one));
      const advisory = { night, crops: verdicts, issuedAt: `${clock}:00-05:00`, weather: { source: 'demo', issuedAt: `${clock}:00-05:00`, stale: false }, places, plan: { actions: plan }, alternatives: [{ actions: [], places: placesOf(idle), crops }], reasons };
      await store.addAdvisory({ greenhouseId: GREENHOUSE_ID, night, issuedAtS: at(clock), body: JSON.stringify(advisory satisfies Readonly<Record<keyof Pick<Advisory, 'night' | 'issuedAt' | 'weather' | 'places' | 'crops' | 'plan' | 'alternatives' | 'reasons'>, unknown>>) });
    },
    read: async (night, tempC, more = {}) => {
      const readAtS = at(`${dayAfter(night)}T08:00`);
      return (await store.addReading({ greenhouseId: GREENHOUSE_ID, receivedAtS: readAtS, validAtS: readAtS, place: 'inside', statistic: 'low', tempC, text: String(tempC), ...more })).id;
    },
    came: async (night, crop, state, bed) => {
      await store.addOutcome({ greenhouseId: GREENHOUSE_ID, receivedAtS: at(`${dayAfter(night)}T09:00`), night, crop, bed: bed ?? null, state, text: 'told' });
    },
    told: async (night, deed, done, clock = `${night}T17:00`) => {
      await store.addAction({ greenhouseId: GREENHOUSE_ID, receivedAtS: at(clock), night, body: JSON.stringify({ items: [], beds: null, setC: null, ...deed } satisfies Deed), done, text: 'told' });
    },
  };
}

/** So many nights that follow each other, from the first of December. */
export const december = (count: number): readonly string[] => Array.from({ length: count }, (_, n) => new Date(Date.UTC(2025, 11, 1 + n)).toISOString().slice(0, 10));
