import { describe, expect, it } from 'vitest';
import type { ForecastError } from '../../../engine/learn/forecast-error.js';
import { nightSpan } from '../../../engine/night/night-span.js';
import { forecastDoubt, weatherScenarios, type ForecastDoubt } from '../../../engine/night/scenarios.js';
import type { WeatherHours } from '../../../engine/night/weather.js';

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

describe('doubt from the members of an ensemble', () => {
  const PLACE = { latitude: 45, longitude: -72 };
  const nowS = Date.parse('2026-01-14T21:00:00Z') / 1000;
  const night = nightSpan(nowS, PLACE);
  const timeS = Array.from({ length: 30 }, (_, hour) => nowS + 3600 * hour);
  const each = <T>(value: T): readonly T[] => timeS.map(() => value);
  const weather = (changes: Partial<WeatherHours>): WeatherHours => ({
    timeS, airTempK: each(270), vapourPressurePa: each(300), windSpeed10mMPerS: each(2), cloudFraction: each(0.5), globalShortwaveWPerM2: each(0), diffuseShortwaveWPerM2: each(0),
    surfacePressurePa: each(1e5), snowfallM: each(0), airTempSpreadK: each(null), cloudSpread: each(null), airTempCloudCorrelation: each(null), modelDifferenceK: each(null), ...changes,
  });
  const found = (changes: Partial<WeatherHours>, learned: ForecastError | null = null): ForecastDoubt => forecastDoubt(weather(changes), night, { nowS, weatherAgeS: 0 }, learned);
  const LEARNED: ForecastError = { shiftK: 0, airTempSdK: 1.5, cloudSd: 0.2, correlation: 0.3, meanSpreadK: 0.6, nights: 30 };

  it('takes their correlation as it is, at the end of the night, but never all of it', () => {
    expect(found({ airTempCloudCorrelation: each(0.7) }).correlation).toBe(0.7);
    expect(found({ airTempCloudCorrelation: each(-0.2) }, LEARNED).correlation).toBe(-0.2);
    const rising = timeS.map((time) => (time <= night.sunriseS - 3600 ? 0.1 : time <= night.sunriseS ? 0.5 : 0.8));
    expect(found({ airTempCloudCorrelation: rising }).correlation).toBe(0.5);
    expect(Math.abs(found({ airTempCloudCorrelation: each(-0.99) }).correlation)).toBeLessThan(0.95);
  });

  it('is that of past errors, or none, where members say nothing', () => {
    expect(found({}).correlation).toBe(0);
    expect(found({}, LEARNED).correlation).toBe(0.3);
    expect(found({}, LEARNED).cloudSd).toBe(0.2);
  });

  it('goes with their spread of cloud by little before any reading: half and double of it lie on either side, nobody is believed to be sure', () => {
    const usual = found({}).cloudSd;
    const [agreed, little, much, most] = [0, 0.08, 0.3, 3].map((spread) => found({ cloudSpread: each(spread) }).cloudSd) as [number, number, number, number];
    expect(agreed).toBeLessThan(little);
    expect(little).toBeLessThan(usual);
    expect(usual).toBeLessThan(much);
    // Raw spread is three to four times too small: it may not make the width so.
    expect(agreed).toBeGreaterThan(0.75 * usual);
    expect(most).toBeLessThan(1.6 * usual);
    expect(found({ cloudSpread: each(0.3) }).airTempSdK).toBe(found({}).airTempSdK);
  });

  it.each([0.05, 0.3])('is what past misses had, once there are some, where members stray each night by the %f that is usual there', (cloudSpread) => {
    const steady = found({ cloudSpread: each(cloudSpread), airTempSpreadK: each(LEARNED.meanSpreadK) }, LEARNED);
    expect(steady.cloudSd).toBe(LEARNED.cloudSd);
    expect(steady.airTempSdK).toBeCloseTo(LEARNED.airTempSdK, 12);
  });
});
