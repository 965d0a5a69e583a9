import type { PlaceKey } from '../night/places.js';
import type { CropOutlook } from './outlook.js';
import type { NightAhead } from './nights-ahead.js';

/** Several nights in a row that threaten a crop as the house is usually kept. */
export interface ColdSpell {
  readonly nights: readonly NightAhead[];
  readonly worst: NightAhead;
  /** Stores at the first sunset and at the last one. */
  readonly stores: readonly { readonly key: PlaceKey; readonly firstK: number; readonly lastK: number }[];
}

const LEAST_NIGHTS = 2;

/** A night threatens when a crop is at risk or likely lost. Units: none. Valid: any outlook. Outside: not applicable. Source: verdicts of engine/plan/outlook. */
export const isThreatened = ({ outlook }: NightAhead): boolean => outlook.crops.some(({ verdict }) => verdict === 'at-risk' || verdict === 'likely-lost');

/**
 * The first run of threatened nights; null when no two follow each other.
 * Units: K.
 * Valid: nights in order.
 * Outside: not applicable.
 * Source: decision rule of this project: one bad night is tonight's advisory, two in a row want preparing.
 */
export function coldSpell(nights: readonly NightAhead[]): ColdSpell | null {
  const first = nights.findIndex((night, n) => isThreatened(night) && nights[n + 1] !== undefined && isThreatened(nights[n + 1]!));
  if (first < 0) return null;
  const after = nights.findIndex((night, n) => n > first && !isThreatened(night));
  const spell = nights.slice(first, after < 0 ? nights.length : after);
  if (spell.length < LEAST_NIGHTS) return null;
  const worst = spell.reduce((a, b) => (threat(b) > threat(a) ? b : a));
  const last = spell.at(-1)!;
  const stores = spell[0]!.storesAtSunset.map(({ key, tempK }) => ({ key, firstK: tempK, lastK: last.storesAtSunset.find((store) => store.key.place === key.place && store.key.bed === key.bed)!.tempK }));
  return { nights: spell, worst, stores };
}

/** Worth that a night is expected to take. Units: money. Valid: any outlook. Outside: not applicable. Source: decision rule of this project, sum of worth x expected damage. */
export const threat = ({ outlook }: NightAhead): number => outlook.crops.reduce((sum, { crop, expectedDamage }) => sum + crop.worth * expectedDamage, 0);

/** What a grower should see to before the spell. */
export type Preparation =
  | { readonly what: 'cover-each-night'; readonly beds: readonly string[] }
  | { readonly what: 'get-cover'; readonly beds: readonly string[] }
  | { readonly what: 'fuel'; readonly units: number; readonly energyJ: number; readonly nights: number }
  | { readonly what: 'pick'; readonly crop: string; readonly asked: string; readonly bed: string; readonly beforeS: number };

/** Chances of damage that a preparation must take off to be worth a word. */
const HELPS_FROM = 0.15;

/** Beds whose crops fare better on the worst night with one way of keeping the house than with another. Units: 0-1. Valid: the same crops in the same order. Outside: not applicable. Source: decision rule of this project. */
export const bedsHelped = (without: readonly CropOutlook[], withIt: readonly CropOutlook[]): readonly string[] => [
  ...new Set(without.filter((before, k) => before.damageProbability - withIt[k]!.damageProbability >= HELPS_FROM).map(({ crop }) => crop.bed)),
];

/** Crops that no cover saves, each with the sunset before which it should be picked. Units: epoch s. Valid: nights under the best routine, in order. Outside: not applicable. Source: decision rule of this project. */
export function cropsToPick(nights: readonly NightAhead[]): readonly Preparation[] {
  const crops = nights[0]?.outlook.crops ?? [];
  return crops.flatMap((_, k): Preparation[] => {
    const night = nights.find(({ outlook }) => outlook.crops[k]!.verdict === 'likely-lost');
    if (!night) return [];
    const { crop } = night.outlook.crops[k]!;
    return [{ what: 'pick', crop: crop.match.row.id, asked: crop.asked, bed: crop.bed, beforeS: night.span.sunsetS }];
  });
}
