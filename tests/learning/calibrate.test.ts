import { describe, expect, it } from 'vitest';
import { calibrate, RESIDUAL_PRIOR, type CalibrationRow } from '../../engine/learn/calibrate.js';
import { forecastError } from '../../engine/learn/forecast-error.js';
import { FITTED, HOUSE_PARAMETERS } from '../../engine/learn/parameters.js';

const slopesOn = (id: string, slope: number): number[] => FITTED.map((parameter) => (parameter.id === id ? slope : 0));
const row = (index: number, missK: number, changes: Partial<CalibrationRow> = {}): CalibrationRow => ({ key: `inside ${index}`, timeS: index * 86_400, thermometer: 'inside', readingK: 270 + missK, atPriorK: 270, slopes: slopesOn('envelope', -1), isOutside: false, censored: false, ...changes });
const rows = (count: number, missK: number): CalibrationRow[] => Array.from({ length: count }, (_, i) => row(i, missK));
const envelope = FITTED.findIndex(({ id }) => id === 'envelope');

describe('most probable parameters', () => {
  it('without a reading are the prior', () => {
    const { z, covariance, residual } = calibrate([], 0);
    expect(z).toEqual(FITTED.map(() => 0));
    covariance.forEach((line, k) => line.forEach((value, j) => expect(value).toBe(k === j ? 1 : 0)));
    expect(residual).toEqual({ scaleK: RESIDUAL_PRIOR.scaleK, degreesOfFreedom: RESIDUAL_PRIOR.readings });
  });

  it('what no reading can tell keeps its prior, in mean and in spread', () => {
    const { z, covariance } = calibrate(rows(20, -1), 20 * 86_400);
    z.forEach((at, k) => {
      if (k === envelope) return;
      expect(at).toBeCloseTo(0, 10);
      expect(covariance[k]![k]).toBeCloseTo(1, 10);
    });
    expect(HOUSE_PARAMETERS.filter(({ toldBy }) => toldBy === null).map(({ id }) => id)).toEqual(['leakage', 'heat-capacity']);
  });

  it('come nearer to what the readings say with every reading, and surer', () => {
    const after = (count: number) => calibrate(rows(count, -1), count * 86_400);
    const spread = (count: number): number => after(count).covariance[envelope]![envelope]!;
    expect(after(30).z[envelope]!).toBeGreaterThan(after(3).z[envelope]!);
    expect(after(3).z[envelope]!).toBeGreaterThan(0);
    expect(spread(30)).toBeLessThan(spread(3));
    expect(spread(3)).toBeLessThan(1);
  });

  it('one slip of the pen moves them less than an honest reading a twentieth as far off', () => {
    const honest = rows(14, 0);
    const moved = (missK: number): number => Math.abs(calibrate([...honest, row(14, missK)], 15 * 86_400).z[envelope]!);
    expect(moved(30)).toBeLessThan(moved(1.5));
  });

  it('a low that was not reset says nothing when it is colder than the night, and counts when it is warmer', () => {
    const at = (missK: number): number => calibrate([row(0, missK, { censored: true })], 86_400).z[envelope]!;
    expect(at(-6)).toBe(0);
    expect(at(2)).not.toBe(0);
  });

  it('a thermometer that reads apart takes its difference on itself', () => {
    const both = Array.from({ length: 20 }, (_, i) => [row(i, 0), row(i, 0.5, { thermometer: 'second' })]).flat();
    const { thermometerK } = calibrate(both, 20 * 86_400);
    expect(thermometerK['second']! - thermometerK['inside']!).toBeGreaterThan(0.3);
  });
});

describe('how readings stray', () => {
  const DAY_S = 86_400;
  const outside = (index: number, missK: number): CalibrationRow => row(index, missK, { key: `outside ${index}`, thermometer: 'outside', isOutside: true });

  it('a thermometer outside that strays widely makes nobody less sure of the house', () => {
    const house = Array.from({ length: 20 }, (_, i) => row(i, i % 2 === 0 ? 0.3 : -0.3));
    const { residual } = calibrate([...house, ...Array.from({ length: 20 }, (_, i) => outside(i, i % 2 === 0 ? 3 : -3))], 20 * DAY_S);
    expect(residual.scaleK).toBeLessThan(RESIDUAL_PRIOR.scaleK);
    expect(residual.degreesOfFreedom).toBe(RESIDUAL_PRIOR.readings + house.length);
  });

  // Ten half-lives on, a reading moves nothing, so that its miss is what it read: (6 x 0.8^2 + 10 x 1^2) / 16.
  it('a reading that weighs next to nothing has taken next to nothing for itself', () => {
    const { residual } = calibrate(Array.from({ length: 10 }, (_, i) => row(i, i % 2 === 0 ? 1 : -1)), 1200 * DAY_S);
    expect(residual.scaleK).toBeCloseTo(Math.sqrt((RESIDUAL_PRIOR.readings * RESIDUAL_PRIOR.scaleK ** 2 + 10) / (RESIDUAL_PRIOR.readings + 10)), 3);
  });
});

describe('error of the forecasts of a place', () => {
  const misses = (count: number, airTempK: number) => Array.from({ length: count }, (_, i) => ({ nightS: i * 86_400, airTempK: i % 2 === 0 ? airTempK : -airTempK, cloudFraction: 0, spreadK: null }));

  it('goes from the prior to what was seen', () => {
    const prior = forecastError([]).airTempSdK;
    expect(prior).toBeGreaterThan(0.5);
    expect(forecastError(misses(10, 0.5)).airTempSdK).toBeLessThan(prior);
    expect(forecastError(misses(2000, 0.5)).airTempSdK).toBeCloseTo(0.5, 1);
    expect(forecastError(misses(2000, 3)).airTempSdK).toBeCloseTo(3, 1);
  });
});
