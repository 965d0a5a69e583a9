import type { Greenhouse, ToleranceNights } from '../../../engine/index.js';
import type { Item } from '../../language/intent.js';
import { MOST_OUTCOMES_LEARNED, type Records, type StoredAction } from '../../ports.js';
import type { Advisory, AdvisoryAction } from './advisory.js';
import type { Deed } from './deeds-tonight.js';

type Rows = Pick<Records, 'actions' | 'outcomes' | 'advisoryBy' | 'advisoriesAfter'>;

const DAY_S = 86_400;
const PAGE = 20;

/** Nights since the grower last said how careful to be: those on which a call was left, and those after which a crop was harmed without a call. Each counts once. */
export async function toleranceNights(store: Rows, { greenhouseId, greenhouse }: { readonly greenhouseId: string; readonly greenhouse: Greenhouse }): Promise<ToleranceNights> {
  const { carefulSince } = greenhouse.grower;
  // What was told in the same second is what that word answered.
  const sinceS = carefulSince === undefined ? 0 : Date.parse(carefulSince) / 1000 + 1;
  const deeds = nightsOf(await store.actions(greenhouseId, sinceS));
  const harmed = new Set((await store.outcomes(greenhouseId, MOST_OUTCOMES_LEARNED)).filter(({ receivedAtS, state }) => receivedAtS >= sinceS && state !== 'fine').map(({ night }) => night));
  const left = await Promise.all([...deeds].map(([night, told]) => isCallLeft(night, told, { greenhouseId, store })));
  const lost = await Promise.all([...harmed].map((night) => wasWithoutCall(night, { greenhouseId, store })));
  return { left: left.filter(Boolean).length, lost: lost.filter(Boolean).length };
}

function nightsOf(rows: readonly StoredAction[]): ReadonlyMap<string, readonly StoredAction[]> {
  const nights = new Map<string, StoredAction[]>();
  for (const row of rows) nights.set(row.night, [...(nights.get(row.night) ?? []), row]);
  return nights;
}

interface Place {
  readonly greenhouseId: string;
  readonly store: Rows;
}

/** Who forgot it did not weigh it. */
const FORGOTTEN = /\b(?:forg[eo]t|forgotten|overslept|fell asleep|slept)\b/iu;

/** Work was called for, and the last word on it is that none of it was done. */
async function isCallLeft(night: string, told: readonly StoredAction[], { greenhouseId, store }: Place): Promise<boolean> {
  const last = new Map(told.flatMap((row) => (JSON.parse(row.body) as Deed).items.map((item) => [item, row] as const)));
  const refused = [...last].filter(([, { done, text }]) => !done && !FORGOTTEN.test(text));
  if (refused.length === 0) return false;
  const advisory = await store.advisoryBy(greenhouseId, night, Math.max(...refused.map(([, { receivedAtS }]) => receivedAtS)));
  const called = new Set(advisory === null ? [] : callsOf(advisory.body));
  return refused.some(([item]) => called.has(item)) && ![...last].some(([item, { done }]) => done && called.has(item));
}

/** Something was said of the night, and at no time any work. */
async function wasWithoutCall(night: string, place: Place): Promise<boolean> {
  const bodies = await advisoriesOf(night, place);
  return bodies.length > 0 && bodies.every((body) => callsOf(body).length === 0 && !wasTooLate(body));
}

/** The work would have been called for, had it been asked about in time. */
const wasTooLate = (body: string): boolean => (JSON.parse(body) as Pick<Advisory, 'reasons'>).reasons.some(({ code }) => code === 'too-late');

/** Work that an advisory calls for, in the words of deeds; a fan that is to stand still is no work. */
const callsOf = (body: string): readonly Item[] => (JSON.parse(body) as Pick<Advisory, 'plan'>).plan.actions.filter(({ run }) => run !== false).map(itemOf);

const itemOf = ({ action }: AdvisoryAction): Item => (action === 'tube-fan' ? 'tube' : action);

/** A night is spoken of from the day before it to the day after. */
async function advisoriesOf(night: string, { greenhouseId, store }: Place): Promise<readonly string[]> {
  const dayS = Date.parse(`${night}T00:00:00Z`) / 1000;
  const bodies: string[] = [];
  let after = { issuedAtS: dayS - DAY_S, id: 0 };
  for (;;) {
    const page = await store.advisoriesAfter(greenhouseId, after, PAGE);
    bodies.push(...page.filter((one) => one.night === night).map(({ body }) => body));
    const last = page.at(-1);
    if (last === undefined || page.length < PAGE || last.issuedAtS > dayS + 2 * DAY_S) return bodies;
    after = last;
  }
}
