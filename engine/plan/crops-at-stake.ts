import { classCrop, findCrop, type CropMatch } from '../crops/catalogue.js';
import { organCurves, type DamageCurve } from '../crops/damage.js';
import { hardeningAfter, type HardeningState } from '../crops/hardening.js';
import { judgedAt, type CropNode } from '../crops/judged-at.js';
import { shiftedThresholds } from '../crops/learned-thresholds.js';
import { thresholdsAt, type CropThresholds } from '../crops/thresholds.js';
import { windowMinFor } from '../crops/exposure-window.js';
import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { EveningState } from '../night/evening-state.js';
import { cropWorths } from './bed-stakes.js';

/** One crop in one bed tonight: what it stands, where it is judged, what it is worth. */
export interface CropAtStake {
  readonly asked: string;
  readonly match: CropMatch;
  readonly bed: string;
  readonly column: number;
  readonly hardening: HardeningState;
  readonly thresholds: CropThresholds;
  readonly curves: { readonly damage: DamageCurve; readonly kill: DamageCurve };
  readonly damageNode: CropNode;
  readonly killNode: CropNode;
  readonly windowMin: number;
  readonly worth: number;
  readonly harvestEarly: boolean;
}

/**
 * All crops of a greenhouse with their thresholds after the past fortnight.
 * Units: K, money.
 * Valid: beds of the same greenhouse that the evening was run for.
 * Outside: a crop that is not in the tables falls to its class (half-hardy when the grower names none), and its match says so.
 * Source: crop tables and hardening of engine/crops, moved by what this grower's plants have shown.
 */
export function cropsAtStake(greenhouse: Greenhouse, evening: EveningState, shiftsK: ReadonlyMap<string, number> = new Map()): readonly CropAtStake[] {
  return greenhouse.beds.flatMap((bed, column) => {
    const worths = cropWorths(bed, evening.runner.model.house.columns[column]!.areaM2);
    return bed.crops.map((entry, k): CropAtStake => {
      const asked = typeof entry === 'string' ? entry : entry.crop;
      const match = findCrop(asked) ?? classCrop((typeof entry === 'string' ? undefined : entry.hardiness) ?? 'half-hardy');
      const { row } = match;
      const hardening = hardeningAfter({ plantTempK: evening.plantAirTempK[column]!, set: row.hardening });
      const thresholds = shiftedThresholds(thresholdsAt({ row, effectiveFraction: hardening.effectiveFraction }), shiftsK.get(row.id) ?? 0);
      const nodes = judgedAt(row);
      return {
        asked,
        match,
        bed: bed.name,
        column,
        hardening,
        thresholds,
        curves: organCurves(thresholds),
        damageNode: nodes.damage,
        killNode: nodes.kill,
        windowMin: windowMinFor(row, hardening.effectiveFraction),
        worth: worths[k]!,
        harvestEarly: row.harvestEarly,
      };
    });
  });
}
