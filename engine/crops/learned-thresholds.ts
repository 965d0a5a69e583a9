import { normalCdf } from '../chance/normal.js';
import { cropById } from './catalogue.js';
import { thresholdSdK } from './damage.js';
import { thresholdsAt, type CropThresholds } from './thresholds.js';

export type PlantState = 'fine' | 'marked' | 'dead';

/** How a crop came through one night, and what its plants had. */
export interface PlantsSeen {
  /** Row of the crop table. */
  readonly cropId: string;
  /** Hardening of that night, 0-1. */
  readonly effectiveFraction: number;
  readonly lowK: number;
  readonly lowSdK: number;
  readonly state: PlantState;
}

/** Plants of a bed differ, and so does what one calls marked (project estimate). */
const PLANTS_SD_K = 0.7;
/** So often a word is of something else than frost: rot, snails, another night (project estimate). */
const OTHER_CAUSE = 0.1;
const STATES = 3;
/** Points on which the shift is looked for, and how far out in spreads of its prior. */
const GRID = 61;
const WIDEST = 3;

/**
 * By how much the temperatures that harm a crop lie lower or higher than its row says, for one grower's plants.
 * Units: K, warmer positive.
 * Valid: rows of the crop table; a row that is not there is left out.
 * Outside: nothing seen gives no shift; never beyond three standard deviations of the row's own grade.
 * Source: posterior mean of a shift of damage and kill together, prior by the grade of the numbers (thresholdSdK), chances of what was seen from the normal distribution of plants and their low (Bayes' rule).
 */
export function thresholdShiftsK(seen: readonly PlantsSeen[]): ReadonlyMap<string, number> {
  const shifts = new Map<string, number>();
  for (const cropId of new Set(seen.map((one) => one.cropId))) {
    const row = cropById(cropId);
    if (row === null) continue;
    const nights = seen.filter((one) => one.cropId === cropId).map((one) => ({ ...one, thresholds: thresholdsAt({ row, effectiveFraction: one.effectiveFraction }) }));
    shifts.set(cropId, shiftK(nights));
  }
  return shifts;
}

type SeenAgainst = PlantsSeen & { readonly thresholds: CropThresholds };

function shiftK(nights: readonly SeenAgainst[]): number {
  const sdK = Math.max(...nights.map(({ thresholds }) => thresholdSdK(thresholds.weakestGrade)));
  const points = Array.from({ length: GRID }, (_, i) => WIDEST * sdK * ((2 * i) / (GRID - 1) - 1));
  const weights = points.map((atK) => nights.reduce((chance, night) => chance * likelihood(night, atK), Math.exp(-((atK / sdK) ** 2) / 2)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return points.reduce((sum, atK, i) => sum + atK * weights[i]!, 0) / total;
}

/** Chance of what was seen where both thresholds lie so much warmer. */
function likelihood({ lowK, lowSdK, state, thresholds }: SeenAgainst, shiftedK: number): number {
  const spreadK = Math.hypot(lowSdK, PLANTS_SD_K);
  const fine = normalCdf((lowK - thresholds.damageBeginsK - shiftedK) / spreadK);
  // Organs that differ have no order: a top that is marked tells nothing of its crown.
  const hasKill = thresholds.killedK !== null && !thresholds.differentOrgans;
  const dead = hasKill ? normalCdf((thresholds.killedK + shiftedK - lowK) / spreadK) : null;
  const seen = state === 'fine' ? fine : dead === null ? 1 - fine : state === 'dead' ? dead : Math.max(0, 1 - fine - dead);
  return (1 - OTHER_CAUSE) * seen + OTHER_CAUSE / STATES;
}

/** Thresholds of a crop, moved. Units: K. Valid: any shift. Outside: not applicable. Source: definition. */
export const shiftedThresholds = (thresholds: CropThresholds, byK: number): CropThresholds => ({ ...thresholds, damageBeginsK: thresholds.damageBeginsK + byK, killedK: thresholds.killedK === null ? null : thresholds.killedK + byK });
