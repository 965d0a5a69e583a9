import { assertInRange } from '../errors.js';
import { celsiusToKelvin, HOURS_PER_DAY, ZERO_CELSIUS_K } from '../units.js';

/** Leafy greens change in days, alliums and perennials in weeks, tender crops not at all. */
export type HardeningSet = 'fast' | 'slow' | 'none';

// The form is FROSTOL's (Bergjord2008: first-order towards a ceiling below 10 degrees, cubic loss above), run by the hour.
// Slow set: FROSTOL's own rates, fitted to winter wheat. Fast set: derived in this project, about ten times the hardening and four
// times the softening rate, checked against published spinach, canola and oilseed rape results; each uncertain by a factor 2.
const RATES = {
  fast: { hardeningPerKDay: 0.095, softeningPerK3Day: 1.2e-4 },
  slow: { hardeningPerKDay: 0.0093, softeningPerK3Day: 2.7e-5 },
} as const satisfies Readonly<Record<Exclude<HardeningSet, 'none'>, unknown>>;

/** Bergjord2008: below this a plant hardens, above it softens. */
const TURNING_K = celsiusToKelvin(10);
/** Bergjord2008: frost below 0 degrees hardens no faster. */
const FASTEST_HARDENING_K = ZERO_CELSIUS_K;
/** Bergjord2008: the cubic softening law counts from -4 degrees. */
const SOFTENING_ORIGIN_K = celsiusToKelvin(-4);
/** Project rule: the cubic is not trusted beyond 20 degrees, the warmest regime in the published checks. */
const FASTEST_SOFTENING_K = celsiusToKelvin(20);

// The second stage needs frost at night. Tamura2002: tolerance hardly moves above a 7-day mean minimum of +2 degrees. Half of the gain
// without it: cabbage and canola hardened above freezing reached 25 to 60 % of theirs. Full at -3 degrees: KohnLevitt1965, last step.
const SHARE_WITHOUT_FROST = 0.5;
const SECOND_STAGE_STARTS_K = celsiusToKelvin(2);
const SECOND_STAGE_COMPLETE_K = celsiusToKelvin(-3);
const DAYS_OF_MINIMA = 7;

/** Project rule: two weeks are ample for leafy greens, whose last 3 days dominate. */
export const HARDENING_HISTORY_H = 14 * HOURS_PER_DAY;
/** Project estimate: a plant of unknown history. */
export const UNKNOWN_START_FRACTION = 0.3;

export interface HardeningState {
  /** First stage, 0 warm-grown to 1 fully cold-grown. */
  readonly hardeningFraction: number;
  /** The most that nights so far allow. */
  readonly capFraction: number;
  /** What the thresholds are read at: the smaller of the two; 0 for crops that do not harden. */
  readonly effectiveFraction: number;
  /** Mean of the last 7 daily minima at the plant; null without any history. */
  readonly tmin7K: number | null;
  /** Hours of history behind this; fewer than 336 means that the start fraction still matters. */
  readonly hoursUsed: number;
}

function afterOneHour(fraction: number, plantTempK: number, set: Exclude<HardeningSet, 'none'>): number {
  const { hardeningPerKDay, softeningPerK3Day } = RATES[set];
  if (plantTempK <= TURNING_K) {
    const ratePerDay = hardeningPerKDay * (TURNING_K - Math.max(FASTEST_HARDENING_K, plantTempK));
    return 1 + (fraction - 1) * Math.exp(-ratePerDay / HOURS_PER_DAY);
  }
  const ratePerDay = softeningPerK3Day * (Math.min(plantTempK, FASTEST_SOFTENING_K) - SOFTENING_ORIGIN_K) ** 3;
  return fraction * Math.exp(-ratePerDay / HOURS_PER_DAY);
}

/** Days end with the newest hour. A part day at the old end may have missed its night, so it counts only when it is all there is. */
function meanOfDailyMinimaK(plantTempK: readonly number[]): number | null {
  if (plantTempK.length === 0) return null;
  const days = Math.min(DAYS_OF_MINIMA, Math.floor(plantTempK.length / HOURS_PER_DAY));
  if (days === 0) return Math.min(...plantTempK);
  let sumK = 0;
  for (let day = 0; day < days; day += 1) {
    const end = plantTempK.length - day * HOURS_PER_DAY;
    sumK += Math.min(...plantTempK.slice(end - HOURS_PER_DAY, end));
  }
  return sumK / days;
}

function capFor(tmin7K: number | null): number {
  if (tmin7K === null) return SHARE_WITHOUT_FROST;
  const stage = (SECOND_STAGE_STARTS_K - tmin7K) / (SECOND_STAGE_STARTS_K - SECOND_STAGE_COMPLETE_K);
  return SHARE_WITHOUT_FROST + (1 - SHARE_WITHOUT_FROST) * Math.min(1, Math.max(0, stage));
}

/**
 * How far a plant has hardened against frost, from the temperatures that it has lived through.
 * Units: plantTempK in K, hourly, oldest first; fractions 0-1; tmin7K in K; hoursUsed in h.
 * Valid: 193.15 to 353.15 K; startFraction 0 to 1; any length, of which the last 336 hours are used.
 * Outside: throws OutOfRangeError. No history at all gives back the start, capped as if there had been no frost.
 * Source: Bergjord2008 for form and slow set; fast set and cap derived in this project (Tamura2002, KohnLevitt1965, see above).
 * Assumes: no term for light, water or feeding.
 */
export function hardeningAfter(history: {
  readonly plantTempK: readonly number[];
  readonly set: HardeningSet;
  readonly startFraction?: number;
}): HardeningState {
  const { set, startFraction = UNKNOWN_START_FRACTION } = history;
  assertInRange('startFraction', startFraction, { lowest: 0, highest: 1, unit: '' });
  const plantTempK = history.plantTempK.slice(-HARDENING_HISTORY_H);
  for (const tempK of plantTempK) assertInRange('plantTempK', tempK, { lowest: 193.15, highest: 353.15, unit: 'K' });

  const tmin7K = meanOfDailyMinimaK(plantTempK);
  const capFraction = capFor(tmin7K);
  const hardeningFraction = set === 'none' ? 0 : plantTempK.reduce((fraction, tempK) => afterOneHour(fraction, tempK, set), startFraction);
  return { hardeningFraction, capFraction, effectiveFraction: Math.min(hardeningFraction, capFraction), tmin7K, hoursUsed: plantTempK.length };
}
