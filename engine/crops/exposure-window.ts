import { assertInRange } from '../errors.js';
import { SECONDS_PER_MINUTE } from '../units.js';
import type { CropRow } from './crop-row.js';
import { organKind } from './judged-at.js';

/** WSU-EB0913: the bud standard is 30 minutes; a soft canola leaf froze in 28 (PlantPhysiol2004-Canola). */
const SOFT_MIN = 30;
/** The short end of the project's 60 to 90 minutes for hardened leaves; a hardened canola leaf froze in 80 (PlantPhysiol2004-Canola). */
const HARDENED_MIN = 60;
/** "Several hours" for heads and fruit, 4 taken (LSU-Citrus: fruit freezes at 26-28 F for several hours). */
const BULKY_MIN = 240;

/**
 * How long a temperature must hold to count for a crop.
 * Units: effectiveFraction 0-1 (hardening); result in minutes.
 * Valid: effectiveFraction 0 to 1.
 * Outside: throws OutOfRangeError.
 * Source: WSU-EB0913 (buds), PlantPhysiol2004-Canola (leaves: 28, 42 and 80 min by hardening), LSU-Citrus (fruit); blend is ours.
 */
export function windowMinFor(row: CropRow, effectiveFraction: number): number {
  assertInRange('effectiveFraction', effectiveFraction, { lowest: 0, highest: 1, unit: '' });
  switch (organKind(row)) {
    case 'bud-or-flower':
    // A crown or root-ball is judged by the soil, which already lags.
    case 'buried':
      return SOFT_MIN;
    // A longer printed duration describes one night that was watched, not what it takes.
    case 'bulky':
      return Math.min(BULKY_MIN, row.durationMin ?? BULKY_MIN);
    case 'leaf-or-wood':
      return row.hardening === 'none' ? SOFT_MIN : SOFT_MIN + effectiveFraction * (HARDENED_MIN - SOFT_MIN);
  }
}

/**
 * The lowest running mean over a window: the temperature to read a damage curve at.
 * Units: tempK in K, each standing for one step of stepS seconds; windowMin in minutes; result in K.
 * Valid: at least one temperature of 193.15 to 353.15 K; stepS 1 to 86400 s; windowMin above 0 to 1440.
 * Outside: throws OutOfRangeError. A series shorter than the window gives its own mean.
 * Source: definition; the window is rounded to whole steps, at least one.
 */
export function runningMeanMinimumK(series: { readonly tempK: readonly number[]; readonly stepS: number; readonly windowMin: number }): number {
  const { tempK, stepS, windowMin } = series;
  assertInRange('stepS', stepS, { lowest: 1, highest: 86_400, unit: 's' });
  assertInRange('windowMin', windowMin, { lowest: Number.MIN_VALUE, highest: 1440, unit: 'min' });
  assertInRange('tempK.length', tempK.length, { lowest: 1, highest: Number.MAX_SAFE_INTEGER, unit: '' });
  for (const oneK of tempK) assertInRange('tempK', oneK, { lowest: 193.15, highest: 353.15, unit: 'K' });

  const steps = Math.min(tempK.length, Math.max(1, Math.round((windowMin * SECONDS_PER_MINUTE) / stepS)));
  let lowestK = Infinity;
  for (let start = 0; start + steps <= tempK.length; start += 1) {
    let sumK = 0;
    for (let i = start; i < start + steps; i += 1) sumK += tempK[i]!;
    lowestK = Math.min(lowestK, sumK / steps);
  }
  return lowestK;
}
