import { describe, expect, it } from 'vitest';
import { weatherScenarios, type ForecastDoubt } from '../../../engine/night/scenarios.js';

const doubt = (changes: Partial<ForecastDoubt> = {}): ForecastDoubt => ({ shiftK: 0, airTempSdK: 1, cloudSd: 1, correlation: 0, clearCalm: 0.5, spreadK: null, leadHours: 12, ...changes });
const mean = (of: ForecastDoubt, value: (airTempK: number, cloud: number) => number): number =>
  weatherScenarios(of, 0).reduce((sum, { departure, weight }) => sum + weight * value(departure.airTempK, departure.cloudFraction), 0);
/** Moments of a standard normal error: 1, 0, 1, 0, 3, 0 (closed form). */
const NORMAL_MOMENT = [1, 0, 1, 0, 3, 0];

describe('weather scenarios', () => {
  const powers = [0, 1, 2, 3, 4, 5].flatMap((a) => [0, 1, 2, 3, 4, 5].map((b) => [a, b] as const)).filter(([a, b]) => a + b <= 5);
  it.each(powers)('have the moment of two independent normal errors: temperature^%i cloud^%i', (a, b) => {
    expect(mean(doubt(), (airTempK, cloud) => airTempK ** a * cloud ** b)).toBeCloseTo(NORMAL_MOMENT[a]! * NORMAL_MOMENT[b]!, 12);
  });

  it('begin with the forecast as it is, but for what it is known to be off by', () => {
    expect(weatherScenarios(doubt({ shiftK: -1 }), 0)[0]!.departure).toMatchObject({ airTempK: -1, cloudFraction: 0 });
  });

  it.each([-0.6, 0, 0.8])('carry shift, spread and a correlation of %f', (correlation) => {
    const of = doubt({ shiftK: -0.7, airTempSdK: 2.2, cloudSd: 0.25, correlation });
    expect(mean(of, (airTempK) => airTempK)).toBeCloseTo(-0.7, 12);
    expect(mean(of, (airTempK) => (airTempK + 0.7) ** 2)).toBeCloseTo(2.2 ** 2, 12);
    expect(mean(of, (airTempK, cloud) => (airTempK + 0.7) * cloud)).toBeCloseTo(correlation * 2.2 * 0.25, 12);
  });
});
