import { PROTECTING_ACTIONS, type Greenhouse, type ToleranceNights } from '../../../engine/index.js';
import { MOST_OUTCOMES_LEARNED, type Records, type StoredAction } from '../../ports.js';
import type { Advisory, AdvisoryAction } from './advisory.js';
import type { Deed } from './deeds-tonight.js';

type Rows = Pick<Records, 'actions' | 'outcomes' | 'advisoryBy' | 'advisoriesAfter'>;

const DAY_S = 86_400;
const PAGE = 20;

/** Nights on which a call was left, since the grower last said how careful to be or how bad the trip is, and those after which a crop was harmed without a call, since the first of the two. Each counts once. */
export async function toleranceNights(store: Rows, { greenhouseId, greenhouse }: { readonly greenhouseId: string; readonly greenhouse: Greenhouse }): Promise<ToleranceNights> {
  const { carefulSince, tripSince } = greenhouse.grower;
  const sinceS = countsFromS(carefulSince);
  const deeds = nightsOf(await store.actions(greenhouseId, Math.max(sinceS, countsFromS(tripSince))));
  const harmed = new Set((await store.outcomes(greenhouseId, MOST_OUTCOMES_LEARNED)).filter(({ receivedAtS, state }) => receivedAtS >= sinceS && state !== 'fine').map(({ night }) => night));
  const left = await Promise.all([...deeds].map(([night, told]) => isCallLeft(night, told, { greenhouseId, store })));
  const lost = await Promise.all([...harmed].map((night) => wasWithoutCall(night, { greenhouseId, store })));
  return { left: left.filter(Boolean).length, lost: lost.filter(Boolean).length };
}

/** What was told in the same second is what that word answered. */
const countsFromS = (said: string | undefined): number => (said === undefined ? 0 : Date.parse(said) / 1000 + 1);

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

/** In the words of deeds it has the same name. */
type ProtectingAction = AdvisoryAction & { readonly action: 'cover' | 'curtain' | 'heater' | 'harvest' };

/** Work that protects was called for, and the last word on each of it, bed by bed, is that it was not done. */
async function isCallLeft(night: string, told: readonly StoredAction[], { greenhouseId, store }: Place): Promise<boolean> {
  const refused = told.filter(({ done }) => !done);
  if (refused.length === 0) return false;
  const advisory = await store.advisoryBy(greenhouseId, night, Math.max(...refused.map(({ receivedAtS }) => receivedAtS)));
  const called = advisory === null ? [] : workOf((JSON.parse(advisory.body) as Said).plan);
  return called.length > 0 && called.every((work) => wasLeft(lastOn(work, told)));
}

const wasLeft = (word: StoredAction | undefined): boolean => word !== undefined && !word.done && !FORGOTTEN.test(word.text);

const lastOn = ({ action, target }: ProtectingAction, told: readonly StoredAction[]): StoredAction | undefined =>
  told.findLast(({ body }) => {
    const { items, beds } = JSON.parse(body) as Deed;
    return items.includes(action) && (action !== 'cover' || beds === null || target === undefined || beds.includes(target));
  });

type Said = Pick<Advisory, 'plan' | 'alternatives' | 'reasons'>;

/** Work that protects could have been called for, and at no time was. */
async function wasWithoutCall(night: string, place: Place): Promise<boolean> {
  const said = (await advisoriesOf(night, place)).map((body) => JSON.parse(body) as Said);
  return said.some(({ alternatives }) => alternatives.some(hasWork)) && !said.some((one) => hasWork(one.plan) || wasTooLate(one));
}

/** The work would have been called for, had it been asked about in time. */
const wasTooLate = ({ reasons }: Pick<Said, 'reasons'>): boolean => reasons.some(({ code }) => code === 'too-late');

const workOf = ({ actions }: Pick<Said['plan'], 'actions'>): readonly ProtectingAction[] => actions.filter((one): one is ProtectingAction => PROTECTING_ACTIONS.has(one.action));
const hasWork = (some: Pick<Said['plan'], 'actions'>): boolean => workOf(some).length > 0;

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
