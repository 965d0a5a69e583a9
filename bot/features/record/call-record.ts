import type { Advisory, AdvisoryAction } from '../evening/advisory.js';
import type { PastNight } from './past-nights.js';

/** What an advisory asked for, and what it feared without that. */
export interface NightCall {
  /** It asked for work that protects. */
  readonly called: boolean;
  /** Chance that something is marked when nothing is done. */
  readonly chance: number;
  readonly crops: readonly { readonly lowC: number; readonly marksFromC: number }[];
}

/** Nights of one kind: how many, on how many something would have been marked with nothing done, and on how many by the chances that were given. */
export interface NeedCount {
  readonly nights: number;
  readonly needed: number;
  readonly expected: number;
}

export interface CallRecord {
  readonly called: NeedCount;
  readonly quiet: NeedCount;
}

const PROTECTS: readonly AdvisoryAction['action'][] = ['cover', 'curtain', 'heater', 'harvest'];

/** What an advisory asked for; null where it had no crop in mind. Soil is left out: no low of the air tells its miss. */
export function callOf({ plan, alternatives }: Pick<Advisory, 'plan' | 'alternatives'>): NightCall | null {
  const idle = alternatives.find(({ actions }) => actions.length === 0);
  const crops = idle?.crops.filter(({ judgedAt }) => judgedAt !== 'soil') ?? [];
  if (crops.length === 0) return null;
  return {
    called: plan.actions.some(({ action }) => PROTECTS.includes(action)),
    chance: Math.max(...crops.map(({ damageProbability }) => damageProbability)),
    crops: crops.map(({ judgedLowC, damageBeginsC }) => ({ lowC: judgedLowC, marksFromC: damageBeginsC })),
  };
}

/** Whether calls were needed, by the low inside that was read: what it was off by, the plants would have been off by too. */
export function callRecord(nights: readonly PastNight[]): CallRecord {
  const judged = nights.flatMap(({ call, reads }) => {
    const read = reads.find(({ place, judged, compares }) => place === 'inside' && judged === 'good' && compares);
    if (call === null || read === undefined || read.said === null) return [];
    const offC = read.tempC - read.said.q50;
    return [{ ...call, needed: call.crops.some(({ lowC, marksFromC }) => lowC + offC < marksFromC) }];
  });
  const countOf = (called: boolean): NeedCount => {
    const some = judged.filter((night) => night.called === called);
    return { nights: some.length, needed: some.filter(({ needed }) => needed).length, expected: some.reduce((sum, { chance }) => sum + chance, 0) };
  };
  return { called: countOf(true), quiet: countOf(false) };
}
