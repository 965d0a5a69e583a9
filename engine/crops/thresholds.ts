import { assertInRange } from '../errors.js';
import { celsiusToKelvin } from '../units.js';
import { chillThreshold } from './chill.js';
import type { CropNumber, CropPair, CropRow, Grade } from './crop-row.js';
import { hasDifferentOrgans } from './judged-at.js';

export interface CropThresholds {
  /** Marking begins, about 1 plant in 10. */
  readonly damageBeginsK: number;
  /** The plant or the named organ is lost, about 9 in 10; null where no source gives it. */
  readonly killedK: number | null;
  readonly damageGrade: Grade;
  readonly killGrade: Grade | null;
  /** The weakest grade of the numbers that went in. */
  readonly weakestGrade: Grade;
  /** Damage is of the top, kill of the crown or root: two curves, never one between them. */
  readonly differentOrgans: boolean;
  /** For growing plants; null where there is no such figure. */
  readonly chillK: number | null;
}

const STRENGTH = { published: 2, secondary: 1, 'from memory': 0 } as const satisfies Readonly<Record<Grade, number>>;

/**
 * The weakest of several grades.
 * Units: none.
 * Valid: any number of grades.
 * Outside: no grades at all count as published, there being nothing to doubt.
 * Source: project rule (a result is as good as the worst number in it).
 */
export const weakestGrade = (grades: readonly Grade[]): Grade =>
  grades.reduce<Grade>((weakest, grade) => (STRENGTH[grade] < STRENGTH[weakest] ? grade : weakest), 'published');

interface Graded {
  readonly tempK: number;
  readonly grade: Grade;
}

const asGraded = (value: CropNumber): Graded => ({ tempK: celsiusToKelvin(value.valueC), grade: value.grade });

function between(soft: CropNumber, hardened: CropNumber, fraction: number): Graded {
  // A number with no weight is not in the result, and does not weaken its grade.
  if (fraction === 0) return asGraded(soft);
  if (fraction === 1) return asGraded(hardened);
  const softC = soft.valueC;
  return {
    tempK: celsiusToKelvin(softC + fraction * (hardened.valueC - softC)),
    grade: weakestGrade([soft.grade, hardened.grade]),
  };
}

/** The pairs to read between; a crop that does not harden has its soft pair, or the only one that there is, at both ends. */
function ends(row: CropRow): { readonly soft: CropPair; readonly hardened: CropPair } {
  const hardened = row.hardening === 'none' ? (row.soft ?? row.hardened) : (row.hardened ?? row.soft);
  const soft = row.soft ?? row.hardened;
  if (soft === null || hardened === null) throw new Error(`Crop ${row.id} has no temperatures: expected a hardened or a soft pair`);
  return { soft, hardened };
}

/**
 * Where damage begins and where a crop is killed at a state of hardening: soft + fraction (hardened - soft).
 * Units: effectiveFraction 0-1; results in K.
 * Valid: effectiveFraction 0 to 1; ignored for crops that do not harden.
 * Outside: throws OutOfRangeError.
 * Source: project rule (linear between the two published or recalled states); numbers with their own source in each row.
 */
export function thresholdsAt(crop: { readonly row: CropRow; readonly effectiveFraction: number }): CropThresholds {
  const { row, effectiveFraction } = crop;
  assertInRange('effectiveFraction', effectiveFraction, { lowest: 0, highest: 1, unit: '' });
  const { soft, hardened } = ends(row);
  const damage = between(soft.damage, hardened.damage, effectiveFraction);
  const kill = soft.kill === null || hardened.kill === null ? null : between(soft.kill, hardened.kill, effectiveFraction);
  return {
    damageBeginsK: damage.tempK,
    killedK: kill === null ? null : kill.tempK,
    damageGrade: damage.grade,
    killGrade: kill === null ? null : kill.grade,
    weakestGrade: weakestGrade(kill === null ? [damage.grade] : [damage.grade, kill.grade]),
    differentOrgans: hasDifferentOrgans(row),
    chillK: chillThreshold(row)?.thresholdK ?? null,
  };
}
