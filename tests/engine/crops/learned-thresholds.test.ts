import { describe, expect, it } from 'vitest';
import { normalCdf, normalDensity } from '../../../engine/chance/normal.js';
import { cropRows } from '../../../engine/crops/catalogue.js';
import { thresholdSdK } from '../../../engine/crops/damage.js';
import { shiftedThresholds, thresholdShiftsK, type PlantsSeen, type PlantState } from '../../../engine/crops/learned-thresholds.js';
import { thresholdsAt } from '../../../engine/crops/thresholds.js';

const ordered = cropRows.map((row) => ({ row, thresholds: thresholdsAt({ row, effectiveFraction: 0 }) })).filter(({ thresholds }) => thresholds.killedK !== null && !thresholds.differentOrgans);
const ofGrade = (grade: string) => ordered.find(({ thresholds }) => thresholds.weakestGrade === grade)!;
const { row, thresholds } = ofGrade('from memory');
const beginsK = thresholds.damageBeginsK;
const killedK = thresholds.killedK!;
const sdK = thresholdSdK(thresholds.weakestGrade);

const seen = (lowK: number, state: PlantState, more: Partial<PlantsSeen> = {}): PlantsSeen => ({ cropId: row.id, effectiveFraction: 0, lowK, lowSdK: 0.8, state, ...more });
const shift = (...nights: readonly PlantsSeen[]): number => thresholdShiftsK(nights).get(nights[0]!.cropId)!;

describe('where harm begins for the plants of one grower', () => {
  it('is as the table has it while nothing was seen, and after nights that say nothing', () => {
    expect(thresholdShiftsK([]).size).toBe(0);
    expect(shift(seen(beginsK + 15, 'fine'))).toBeCloseTo(0, 3);
  });

  // Posterior mean of a normal prior after one normal threshold event, in closed form; one word in ten is of something else and says nothing.
  it.each([-2, 0, 1.5])('after one crop that came through a night %d K from where harm begins is as the closed form has it', (overK) => {
    const wholeK = Math.hypot(0.8, 0.7, sdK);
    const fine = normalCdf(overK / wholeK);
    const meanWhenFine = (-(sdK ** 2) * normalDensity(overK / wholeK)) / (wholeK * fine);
    const expected = (0.9 * fine * meanWhenFine) / (0.9 * fine + 0.1 / 3);
    // The prior is cut at three standard deviations.
    expect(shift(seen(beginsK + overK, 'fine'))).toBeCloseTo(expected, 1);
  });

  it('goes colder with plants that came through, warmer with plants that did not, farther with every night', () => {
    const once = shift(seen(beginsK - 1, 'fine'));
    const twice = shift(seen(beginsK - 1, 'fine'), seen(beginsK - 1.5, 'fine'));
    expect(once).toBeLessThan(-0.2);
    expect(twice).toBeLessThan(once);
    expect(shift(seen(beginsK + 1, 'marked'))).toBeGreaterThan(0.2);
    expect(shift(seen(killedK + 2, 'dead'))).toBeGreaterThan(shift(seen(killedK + 2, 'marked')));
  });

  it('moves less where the numbers are published than where they are recalled, and never beyond what their grade leaves open', () => {
    const published = ofGrade('published');
    const nights = (of: typeof published, count: number): readonly PlantsSeen[] => Array.from({ length: count }, () => seen(of.thresholds.damageBeginsK - 3, 'fine', { cropId: of.row.id }));
    expect(Math.abs(shift(...nights(published, 1)))).toBeLessThan(Math.abs(shift(...nights({ row, thresholds }, 1))));
    expect(Math.abs(shift(...nights({ row, thresholds }, 40)))).toBeLessThan(3 * sdK);
  });

  it('is each crop by itself, and moves harm and kill alike', () => {
    const other = ofGrade('published');
    const shifts = thresholdShiftsK([seen(beginsK - 1, 'fine'), seen(other.thresholds.damageBeginsK + 20, 'fine', { cropId: other.row.id })]);
    expect(shifts.get(other.row.id)).toBeCloseTo(0, 3);
    expect(shiftedThresholds(thresholds, -1)).toMatchObject({ damageBeginsK: beginsK - 1, killedK: killedK - 1 });
  });
});
