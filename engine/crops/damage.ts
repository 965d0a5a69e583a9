import { assertInRange, OutOfRangeError } from '../errors.js';
import type { Grade } from './crop-row.js';

// Damage begins at one plant in ten and nine in ten are lost at kill (WSU-EB0913 gives buds in just these two). A logistic curve
// through both has slope (begins - killed) / (2 ln 9).
const DAMAGE_BEGINS_FRACTION = 0.1;
const LOGIT_AT_TENTH = Math.log((1 - DAMAGE_BEGINS_FRACTION) / DAMAGE_BEGINS_FRACTION);

/** No steeper than buds at bloom, where 10 and 90 % lie 1.7 K apart (WSU-EB0913: 0.38 K, rounded). */
export const STEEPEST_SLOPE_K = 0.4;
/** Project estimate for one organ alone, where damage and kill are numbers of different organs. */
const ONE_ORGAN_SLOPE_K = 0.6;

/** Project estimate: how far a threshold may be off, one standard deviation, by the grade of its number. */
const THRESHOLD_SD_K = { published: 1.0, secondary: 1.5, 'from memory': 2.0 } as const satisfies Readonly<Record<Grade, number>>;

/** Critical temperatures of one organ: a tenth, half and nine tenths damaged. */
export interface DamageCurve {
  readonly t10K: number;
  readonly t50K: number;
  readonly t90K: number;
  readonly slopeK: number;
}

export interface DamagePair {
  readonly damageBeginsK: number;
  readonly killedK: number | null;
}

const curveAround = (t50K: number, slopeK: number): DamageCurve => ({
  t10K: t50K + LOGIT_AT_TENTH * slopeK,
  t50K,
  t90K: t50K - LOGIT_AT_TENTH * slopeK,
  slopeK,
});

/**
 * The damage curve through the temperatures where damage begins and where the plant is killed.
 * Units: K.
 * Valid: 193.15 to 353.15 K, killedK not above damageBeginsK. Without killedK the steepest slope is taken, which errs to more damage.
 * Outside: throws OutOfRangeError.
 * Source: WSU-EB0913 for 10 and 90 %; Snyder2005 ch. 5 for logistic loss curves; slope floor a project rule.
 */
export function damageCurve(pair: DamagePair): DamageCurve {
  const { damageBeginsK, killedK } = pair;
  assertInRange('damageBeginsK', damageBeginsK, { lowest: 193.15, highest: 353.15, unit: 'K' });
  if (killedK === null) return curveAround(damageBeginsK - LOGIT_AT_TENTH * STEEPEST_SLOPE_K, STEEPEST_SLOPE_K);
  assertInRange('killedK', killedK, { lowest: 193.15, highest: 353.15, unit: 'K' });
  if (killedK > damageBeginsK) throw new OutOfRangeError('killedK', killedK, 'K', `at most damageBeginsK = ${damageBeginsK} K`);
  return curveAround((damageBeginsK + killedK) / 2, Math.max(STEEPEST_SLOPE_K, (damageBeginsK - killedK) / (2 * LOGIT_AT_TENTH)));
}

/**
 * The curves to read damage and kill from: one and the same for most crops, two where the numbers belong to different organs.
 * Units: K.
 * Valid: as damageCurve.
 * Outside: throws OutOfRangeError.
 * Source: project rule (slope 0.6 K for each organ by itself).
 */
export function organCurves(thresholds: DamagePair & { readonly differentOrgans: boolean }): { readonly damage: DamageCurve; readonly kill: DamageCurve } {
  const { damageBeginsK, killedK, differentOrgans } = thresholds;
  const whole = damageCurve(thresholds);
  if (!differentOrgans || killedK === null) return { damage: whole, kill: whole };
  return {
    damage: curveAround(damageBeginsK - LOGIT_AT_TENTH * ONE_ORGAN_SLOPE_K, ONE_ORGAN_SLOPE_K),
    kill: curveAround(killedK + LOGIT_AT_TENTH * ONE_ORGAN_SLOPE_K, ONE_ORGAN_SLOPE_K),
  };
}

/**
 * The fraction of one organ damaged at a temperature, by its curve.
 * Units: tempK in K; result 0-1.
 * Valid: any finite temperature.
 * Outside: throws OutOfRangeError.
 * Source: WSU-EB0913 and Snyder2005 ch. 5, as damageCurve.
 */
export function damageFractionOn(curve: DamageCurve, tempK: number): number {
  assertInRange('tempK', tempK, { lowest: -Number.MAX_VALUE, highest: Number.MAX_VALUE, unit: 'K' });
  return 1 / (1 + Math.exp((tempK - curve.t50K) / curve.slopeK));
}

/**
 * The fraction damaged at a temperature: 0.1 where damage begins and 0.9 where the plant is killed, unless the slope floor binds.
 * Units: K; result 0-1.
 * Valid: as damageCurve.
 * Outside: throws OutOfRangeError.
 * Source: WSU-EB0913 and Snyder2005 ch. 5, as damageCurve.
 */
export const damageFractionAt = (state: DamagePair & { readonly tempK: number }): number => damageFractionOn(damageCurve(state), state.tempK);

/**
 * How uncertain a threshold is, by the grade of its number.
 * Units: result in K, one standard deviation.
 * Valid: every grade.
 * Outside: does not compile.
 * Source: project estimate (judgement).
 */
export const thresholdSdK = (grade: Grade): number => THRESHOLD_SD_K[grade];
