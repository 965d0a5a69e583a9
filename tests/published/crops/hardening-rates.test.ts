import { describe, expect, it } from 'vitest';
import { hardeningAfter, type HardeningSet } from '../../../engine/crops/hardening.js';
import { days, hoursK } from '../../engine/crops/histories.js';

/**
 * Growth-chamber results on gaining and losing hardiness, as known from abstracts and one thesis. They give regimes and days; the
 * share of the gain is the model's, and the test holds it inside what the authors report. Day/night regimes are taken as 12 h each.
 */
export const source = [
  'SpinachAcclimation-JASHS (spinach, 5/2 and 20/17 degrees)',
  'NDSU-10365-33445 (canola, 13 degrees)',
  'RifeZeinali2003 (oilseed rape, 5 degrees)',
  'LoliumDehardening (perennial ryegrass, 15/2 degrees)',
] as const;

const after = (plantTempK: readonly number[], startFraction: number, set: HardeningSet = 'fast'): number =>
  hardeningAfter({ plantTempK, set, startFraction }).hardeningFraction;
const cycle = (count: number, dayC: number, nightC: number, dayHours = 12): number[] => days(count, hoursK([dayHours, dayC], [24 - dayHours, nightC]));

describe('SpinachAcclimation-JASHS: spinach at 5/2 degrees', () => {
  // Reported: 2-4 K of the whole gain after 1 day, most of it in 3, flat after 14.
  it.each([[1, 0.46], [3, 0.84], [14, 1.0]])('day %i: %f of the gain', (count, share) => {
    expect(after(cycle(count, 5, 2), 0)).toBeCloseTo(share, 2);
  });
});

describe('SpinachAcclimation-JASHS: spinach at 20/17 degrees after hardening', () => {
  // Reported: 3-5 K lost in 1 day, none after day 3.
  it.each([[1, 0.75], [3, 0.98]])('day %i: %f lost', (count, share) => {
    expect(1 - after(cycle(count, 20, 17), 1)).toBeCloseTo(share, 2);
  });
});

describe('NDSU-10365-33445: canola at 13 degrees', () => {
  // Reported: nearly complete after 2 days or more. The model is slower: 69 %.
  it('day 2: 0.69 lost', () => {
    expect(1 - after(hoursK([48, 13]), 1)).toBeCloseTo(0.69, 2);
  });
});

describe('RifeZeinali2003: winter oilseed rape at 5 degrees', () => {
  // Reported: the most after 6-9 days.
  it.each([[6, 0.94], [9, 0.99]])('day %i: %f of the gain', (count, share) => {
    expect(after(hoursK([24 * count, 5]), 0)).toBeCloseTo(share, 2);
  });
});

describe('LoliumDehardening: ryegrass in 7 days at 15 degrees for part of the day and 2 for the rest (slow set)', () => {
  // Reported: gains with 8 warm hours, holds with 16, loses fast when always warm. 0.21 for "held" is the model's deviation.
  it.each([[8, 0.37], [16, 0.21], [24, 0.07]])('%i warm hours: from 0.26 to %f', (warmHours, fraction) => {
    expect(after(cycle(7, 15, 2, warmHours), 0.26, 'slow')).toBeCloseTo(fraction, 2);
  });
});
