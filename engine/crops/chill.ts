import { assertInRange } from '../errors.js';
import { celsiusToKelvin, ZERO_CELSIUS_K } from '../units.js';
import type { CropSourceKey } from '../data/crops/sources.js';
import type { CropRow, Grade } from './crop-row.js';

/** Sources whose figures are for picked produce in a store. They say nothing of the growing plant. */
const STORED_PRODUCE: readonly CropSourceKey[] = ['JFoodQuality2018'];

export interface ChillThreshold {
  readonly thresholdK: number;
  readonly grade: Grade;
}

export type ChillVerdict =
  | { readonly kind: 'not-chill-sensitive' }
  | { readonly kind: 'not-known'; readonly reason: 'no-figure' | 'stored-produce-only' }
  | {
      readonly kind: 'no-chill' | 'chilled';
      readonly thresholdK: number;
      readonly grade: Grade;
      readonly timeBelowS: number;
      /** Depth times time below the threshold: chilling adds up. */
      readonly exposureKS: number;
      /** The part of timeBelowS at or below 0 degrees, which is a matter of frost and not of chill. */
      readonly timeFrozenS: number;
      readonly lowestK: number;
    };

const isStoredProduceOnly = (row: CropRow): boolean => row.chill !== null && STORED_PRODUCE.includes(row.chill.sourceKey);

/**
 * The temperature below which a growing crop is chilled without frost; null where no source gives one for the growing plant.
 * Units: result in K.
 * Valid: every row of the crop table.
 * Outside: nothing to leave.
 * Source: the row's own chill number.
 */
export function chillThreshold(row: CropRow): ChillThreshold | null {
  if (row.chill === null || isStoredProduceOnly(row)) return null;
  return { thresholdK: celsiusToKelvin(row.chill.valueC), grade: row.chill.grade };
}

/**
 * How long a crop was, or will be, below its chill threshold. How bad that is, no source gives for a night: hours and depth are told.
 * Units: plantTempK (air at the plant) in K, stepS in s; results in K, s and K s.
 * Valid: at least one temperature of 193.15 to 353.15 K; stepS 1 to 86400 s, each temperature standing for one step.
 * Outside: throws OutOfRangeError.
 * Source: Purdue-Chilling, LangeCameron1997, UtahState-Tomato, Maryland-Seedlings2023 by crop; cumulative as in JFoodQuality2018.
 */
export function chillVerdict(night: {
  readonly row: CropRow;
  readonly plantTempK: readonly number[];
  readonly stepS: number;
}): ChillVerdict {
  const { row, plantTempK, stepS } = night;
  const threshold = chillThreshold(row);
  if (threshold === null) {
    if (isStoredProduceOnly(row)) return { kind: 'not-known', reason: 'stored-produce-only' };
    return row.hardinessClass === 'tender' ? { kind: 'not-known', reason: 'no-figure' } : { kind: 'not-chill-sensitive' };
  }
  assertInRange('stepS', stepS, { lowest: 1, highest: 86_400, unit: 's' });
  assertInRange('plantTempK.length', plantTempK.length, { lowest: 1, highest: Number.MAX_SAFE_INTEGER, unit: '' });

  let timeBelowS = 0;
  let exposureKS = 0;
  let timeFrozenS = 0;
  let lowestK = Infinity;
  for (const tempK of plantTempK) {
    assertInRange('plantTempK', tempK, { lowest: 193.15, highest: 353.15, unit: 'K' });
    lowestK = Math.min(lowestK, tempK);
    if (tempK <= ZERO_CELSIUS_K) timeFrozenS += stepS;
    if (tempK >= threshold.thresholdK) continue;
    timeBelowS += stepS;
    exposureKS += (threshold.thresholdK - tempK) * stepS;
  }
  return { kind: timeBelowS > 0 ? 'chilled' : 'no-chill', ...threshold, timeBelowS, exposureKS, timeFrozenS, lowestK };
}
