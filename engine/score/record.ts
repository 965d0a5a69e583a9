import type { Verdict } from '../plan/outlook.js';
import { crpsMixtureK } from './crps-mixture.js';
import { coverageOf, type Coverage } from './coverage.js';
import type { Mixture } from '../chance/mixture.js';

/** What was said of one night before it, beside what came of it. */
export interface IssuedNight {
  readonly low: Mixture;
  readonly meanK: number;
  readonly q10K: number;
  readonly q90K: number;
  readonly readingK: number;
  /** Whether the grower was sent out, and whether the low would have done harm without it; null where nobody knows. */
  readonly called: boolean;
  readonly needed: boolean | null;
  readonly verdicts: readonly { readonly verdict: Verdict; readonly damageProbability: number; readonly damaged: boolean }[];
}

/** How right the advisories were. */
export interface AdvisoryRecord {
  readonly nights: number;
  readonly biasK: number;
  readonly meanAbsoluteErrorK: number;
  readonly crpsK: number;
  readonly coverage: Coverage;
  readonly calls: { readonly needed: number; readonly notNeeded: number; readonly missed: number };
  /** How often each verdict came true, beside the chance that was said. */
  readonly reliability: readonly { readonly verdict: Verdict; readonly said: number; readonly meanChance: number; readonly cameTrue: number }[];
}

const CLAIMED_SHARE = 0.8;
const CONFIDENCE = 0.9;
const VERDICTS: readonly Verdict[] = ['safe', 'watch', 'at-risk', 'likely-lost'];

/**
 * The record of issued advisories; null before the first night that can be judged.
 * Units: K, shares 0-1.
 * Valid: readings that were judged and accepted.
 * Outside: not checked.
 * Source: definition of each score; coverage with Wilson1927; CRPS as Gneiting2005.
 */
export function advisoryRecord(issued: readonly IssuedNight[]): AdvisoryRecord | null {
  if (issued.length === 0) return null;
  const mean = (of: (night: IssuedNight) => number): number => issued.reduce((sum, night) => sum + of(night), 0) / issued.length;
  const verdicts = issued.flatMap((night) => night.verdicts);
  return {
    nights: issued.length,
    biasK: mean(({ meanK, readingK }) => meanK - readingK),
    meanAbsoluteErrorK: mean(({ meanK, readingK }) => Math.abs(meanK - readingK)),
    crpsK: mean(({ low, readingK }) => crpsMixtureK(low, readingK)),
    coverage: coverageOf(issued.map(({ q10K, q90K, readingK }) => ({ lowK: q10K, highK: q90K, readingK })), CLAIMED_SHARE, CONFIDENCE),
    calls: {
      needed: issued.filter(({ called, needed }) => called && needed === true).length,
      notNeeded: issued.filter(({ called, needed }) => called && needed === false).length,
      missed: issued.filter(({ called, needed }) => !called && needed === true).length,
    },
    reliability: VERDICTS.flatMap((verdict) => {
      const said = verdicts.filter((one) => one.verdict === verdict);
      if (said.length === 0) return [];
      return [{ verdict, said: said.length, meanChance: said.reduce((sum, { damageProbability }) => sum + damageProbability, 0) / said.length, cameTrue: said.filter(({ damaged }) => damaged).length }];
    }),
  };
}
