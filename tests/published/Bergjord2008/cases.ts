import { hardeningAfter } from '../../../engine/crops/hardening.js';
import { days, hoursK } from '../../engine/crops/histories.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/**
 * Bergjord, Bonesmo and Skjelvag 2008 (FROSTOL): daily rates for winter wheat. The time constants were worked out from them apart from this code, and
 * the slow set, run by the hour, must show them. The fast set has the same form with rates of this project; three steady winters of it
 * were worked out apart from this code too.
 */
export const source = 'Bergjord2008';

const HOURS = 24;
const timeConstantDays = (leftAfterOneDay: number): number => -1 / Math.log(leftAfterOneDay);
const hardens = (tempC: number, expected: number, tolerance: number): PublishedRow => ({
  name: `hardens at ${tempC} °C`, expected, tolerance, model: () => timeConstantDays(1 - hardeningAfter({ plantTempK: hoursK([HOURS, tempC]), set: 'slow', startFraction: 0 }).hardeningFraction),
});
const softens = (tempC: number, expected: number, tolerance: number): PublishedRow => ({
  name: `softens at ${tempC} °C`, expected, tolerance, model: () => timeConstantDays(hardeningAfter({ plantTempK: hoursK([HOURS, tempC]), set: 'slow', startFraction: 1 }).hardeningFraction),
});
/** Two weeks of nights at -2 °C, 5 h at 8 and a peak of 5 h. */
const middayPeak = (peakC: number): number => hardeningAfter({ plantTempK: days(14, hoursK([14, -2], [5, 8], [5, peakC])), set: 'fast' }).hardeningFraction;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'rates: time constants of the slow set', unit: 'd', tolerance: 0.5, toleranceReason: 'half of the last digit', origin: 'closed form',
    rows: [hardens(0, 10.8, 0.05), hardens(2, 13, 0.5), hardens(5, 22, 0.5), softens(11, 11, 0.5), softens(13, 7.5, 0.05), softens(15, 5.4, 0.05), softens(20, 2.7, 0.05)],
  },
  {
    source, title: 'fast set: nights of -2 °C with a midday peak of 5 h', unit: 'share hardened', tolerance: 0.0051, toleranceReason: 'half of the last digit', origin: 'worked example of this project',
    rows: ([[12, 0.81], [15, 0.71], [24, 0.52], [30, 0.52]] as const).map(([peakC, expected]) => ({ name: `peak ${peakC} °C`, expected, model: () => middayPeak(peakC) })),
  },
];
