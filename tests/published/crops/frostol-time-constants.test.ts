import { describe, expect, it } from 'vitest';
import { hardeningAfter } from '../../../engine/crops/hardening.js';
import { hoursK } from '../../engine/crops/histories.js';

/**
 * Bergjord2008 gives daily rates for winter wheat; these time constants were worked out from them apart from this code, and the slow
 * set, run by the hour, must show them. Tolerance: half of the last digit.
 */
export const source = 'Bergjord2008';

const HOURS = 24;
const timeConstantDays = (leftAfterOneDay: number): number => -1 / Math.log(leftAfterOneDay);

describe('Bergjord2008 rates: slow set', () => {
  it.each([[0, 10.8, 0.05], [2, 13, 0.5], [5, 22, 0.5]])('hardens at %f degrees with a time constant of %f days', (tempC, dayCount, tolerance) => {
    const left = 1 - hardeningAfter({ plantTempK: hoursK([HOURS, tempC]), set: 'slow', startFraction: 0 }).hardeningFraction;
    expect(Math.abs(timeConstantDays(left) - dayCount)).toBeLessThan(tolerance);
  });

  it.each([[11, 11, 0.5], [13, 7.5, 0.05], [15, 5.4, 0.05], [20, 2.7, 0.05]])('softens at %f degrees with a time constant of %f days', (tempC, dayCount, tolerance) => {
    const left = hardeningAfter({ plantTempK: hoursK([HOURS, tempC]), set: 'slow', startFraction: 1 }).hardeningFraction;
    expect(Math.abs(timeConstantDays(left) - dayCount)).toBeLessThan(tolerance);
  });
});
