import { effortOf } from './expected-loss.js';
import type { CropOutlook } from './outlook.js';
import type { Tolerance } from './tolerance.js';

/** A crop picked early keeps this share of its worth (project estimate: small heads, less time to store). */
const WORTH_KEPT = 0.7;
const HARVEST_MINUTES = 5;
const HARVEST_MINUTES_PER_WORTH = 0.3;
const LONGEST_HARVEST_MINUTES = 90;
/** Nobody is sent to pick for a small chance. */
const LEAST_DAMAGE_PROBABILITY = 0.2;

export interface HarvestOffer {
  readonly cropIndex: number;
  readonly minutes: number;
  readonly sideCost: number;
}

/**
 * Crops that are worth picking before the night under a plan: those that freezing ruins, where what is saved beats the work.
 * Units: money, minutes, chances.
 * Valid: outlooks of one plan.
 * Outside: not applicable.
 * Source: decision rule of this project; which crops to pick early: extension pages named in the crop tables.
 */
export function harvestOffers(crops: readonly CropOutlook[], stakes: Tolerance): readonly HarvestOffer[] {
  return crops.flatMap(({ crop, damageProbability, expectedDamage }, cropIndex): HarvestOffer[] => {
    if (!crop.harvestEarly || damageProbability < LEAST_DAMAGE_PROBABILITY) return [];
    const minutes = Math.min(LONGEST_HARVEST_MINUTES, HARVEST_MINUTES + HARVEST_MINUTES_PER_WORTH * crop.worth);
    const sideCost = (1 - WORTH_KEPT) * crop.worth;
    const cost = effortOf({ minutes, hassle: stakes.hassle }, stakes.hourWorth) + sideCost;
    return stakes.lossWeight * crop.worth * expectedDamage > cost ? [{ cropIndex, minutes, sideCost }] : [];
  });
}
