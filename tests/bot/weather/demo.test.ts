import { describe, expect, it } from 'vitest';
import { DEMO_PLACE, demoAnswerBody, demoSource } from '../../../bot/weather/demo.js';

const at = (text: string): { nowS(): number } => ({ nowS: () => Date.parse(text) / 1000 });
const HOUR_S = 3600;

describe('the demo weather', () => {
  it('says that it is invented, in its data, its note and its source', async () => {
    const clock = at('2026-11-25T20:30:00Z');
    expect(demoAnswerBody(DEMO_PLACE, clock.nowS())).toMatchObject({ note: expect.stringMatching(/INVENTED/) as string });
    const { notes, source } = await demoSource(clock).weatherAt(DEMO_PLACE);
    expect(notes).toEqual([{ code: 'invented-demo' }]);
    expect(source).toBe('demo');
  });

  it.each(['2026-11-25T20:30:00Z', '2026-11-26T07:10:00Z', '2027-02-28T23:00:00Z', '2026-07-01T14:05:00Z', '2028-12-31T23:59:59Z'])('tonight is a clear calm night of about -9 °C, asked at %s', async (now) => {
    const clock = at(now);
    const { hours } = await demoSource(clock).weatherAt(DEMO_PLACE);
    const coldest = hours.timeS.reduce((best, t, i) => (Math.abs(t - clock.nowS()) < 36 * HOUR_S && (hours.airTempK[i] ?? 0) < (hours.airTempK[best] ?? 0) ? i : best), 360);
    expect((hours.airTempK[coldest] ?? 0) - 273.15).toBeCloseTo(-9, 0);
    expect((hours.timeS[coldest] ?? 0) - clock.nowS()).toBeGreaterThan(0);
    expect((hours.timeS[coldest] ?? 0) - clock.nowS()).toBeLessThan(24 * HOUR_S);
    for (const i of [coldest - 6, coldest - 4]) {
      expect(hours.cloudFraction[i]).toBeLessThan(0.05);
      expect(hours.windSpeed10mMPerS[i]).toBeLessThan(1);
    }
  });

  it('had two frosts in the fortnight before, and no colder night around', async () => {
    const clock = at('2026-11-25T20:30:00Z');
    const { hours } = await demoSource(clock).weatherAt(DEMO_PLACE);
    const lowsC = new Map<string, number>();
    hours.timeS.forEach((t, i) => {
      const night = new Date((t - 17 * HOUR_S) * 1000).toISOString().slice(0, 10);
      lowsC.set(night, Math.min(lowsC.get(night) ?? 99, (hours.airTempK[i] ?? 0) - 273.15));
    });
    const before = [...lowsC].filter(([night]) => night < '2026-11-25').map(([, low]) => low);
    expect(before.filter((low) => low < -1)).toHaveLength(2);
    expect(Math.min(...lowsC.values())).toBe(lowsC.get('2026-11-25'));
  });

  it('is smooth and possible in every hour', async () => {
    const { hours } = await demoSource(at('2026-11-25T20:30:00Z')).weatherAt(DEMO_PLACE);
    hours.airTempK.forEach((tempK, i) => i > 0 && expect(Math.abs(tempK - (hours.airTempK[i - 1] ?? 0))).toBeLessThan(2.5));
    hours.globalShortwaveWPerM2.forEach((global, i) => expect(hours.diffuseShortwaveWPerM2[i]).toBeLessThanOrEqual(global));
    expect(Math.max(...hours.globalShortwaveWPerM2)).toBeGreaterThan(300);
    expect(Math.max(...hours.globalShortwaveWPerM2)).toBeLessThan(450);
    expect(hours.snowfallM.reduce((sum, m) => sum + m, 0)).toBeCloseTo(0.05, 2);
  });

  it('gives the same bytes for the same hour', () => {
    const nowS = at('2026-11-25T20:30:00Z').nowS();
    expect(JSON.stringify(demoAnswerBody(DEMO_PLACE, nowS))).toBe(JSON.stringify(demoAnswerBody(DEMO_PLACE, nowS)));
  });
});
