import { PROTECTING_ACTIONS } from '../../../engine/index.js';
import type { Advisory } from '../evening/advisory.js';

/** What an advisory asked for, and what it feared without that. */
export interface NightCall {
  /** It asked for work that protects. */
  readonly called: boolean;
  /** Chance that something is marked when nothing is done. */
  readonly chance: number;
  readonly crops: readonly { readonly lowC: number; readonly marksFromC: number }[];
}

/** What an advisory asked for; null where it had no crop in mind. Soil is left out: no low of the air tells its miss. */
export function callOf({ plan, alternatives }: Pick<Advisory, 'plan' | 'alternatives'>): NightCall | null {
  const idle = alternatives.find(({ actions }) => actions.length === 0);
  const crops = idle?.crops.filter(({ judgedAt }) => judgedAt !== 'soil') ?? [];
  if (crops.length === 0) return null;
  return {
    called: plan.actions.some(({ action }) => PROTECTING_ACTIONS.has(action)),
    chance: Math.max(...crops.map(({ damageProbability }) => damageProbability)),
    crops: crops.map(({ judgedLowC, damageBeginsC }) => ({ lowC: judgedLowC, marksFromC: damageBeginsC })),
  };
}
