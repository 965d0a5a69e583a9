import { describe, expect, it } from 'vitest';
import { clearSkyWPerM2, diffuseWPerM2, throughClouds } from '../../../bot/weather/sunlight.js';

// The hour around solar noon of 2024-02-10 at 44.48 N 73.21 W: noon at 17:07:02 Z, the sun 31.16 degrees high (pvlib and suncalc agree).
const PLACE = { latitude: 44.48, longitude: -73.21 };
const HOUR_END_S = Date.parse('2024-02-10T17:37:02Z') / 1000;
const MIDNIGHT_S = Date.parse('2024-02-10T05:00:00Z') / 1000;
const NOON_SINE = Math.sin((31.16 * Math.PI) / 180);

describe('sunlight where the service has none', () => {
  it('under a clear sky follows the height of the sun', () => {
    expect(clearSkyWPerM2(PLACE, HOUR_END_S) / (1098 * NOON_SINE * Math.exp(-0.059 / NOON_SINE))).toBeCloseTo(1, 2);
    expect(clearSkyWPerM2(PLACE, MIDNIGHT_S)).toBe(0);
  });

  it('is a quarter under a closed sky', () => {
    expect([throughClouds(0), throughClouds(1)]).toEqual([1, 0.25]);
  });

  it('is all diffuse when little comes through, mostly direct when much does', () => {
    // Above the air: 1361 W/m² x 1.026 (early February) x the sine of the height.
    const aboveAir = 1361 * 1.026 * NOON_SINE;
    const share = (k: number): number => diffuseWPerM2(PLACE, HOUR_END_S, k * aboveAir) / (k * aboveAir);
    // Published points (pvlib): k 0.1424 gives 0.9872, 0.4273 gives 0.7970, 0.6409 gives 0.3520.
    expect(share(0.1424)).toBeCloseTo(0.987, 2);
    expect(share(0.4273)).toBeCloseTo(0.797, 2);
    expect(share(0.6409)).toBeCloseTo(0.352, 1);
    expect(diffuseWPerM2(PLACE, MIDNIGHT_S, 3)).toBe(3);
  });
});
