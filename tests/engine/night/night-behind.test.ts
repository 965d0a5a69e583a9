import { describe, expect, it } from 'vitest';
import { nightBehind, nightSpan } from '../../../engine/index.js';

const HOUR_S = 3600;
const at = (iso: string): number => Date.parse(iso) / 1000;
const HILL = { latitude: 45.1, longitude: -72.2 };
const FJORD = { latitude: 69.6, longitude: 18.9 };

describe('the night behind', () => {
  it.each(['2026-01-15T02:00:00-05:00', '2026-01-15T08:00:00-05:00', '2026-01-15T15:00:00-05:00'])('at %s began the evening before', (iso) => {
    const night = nightBehind(at(iso), HILL);
    // Sunset there is about half past four in the middle of January.
    expect(Math.abs(night.sunsetS - at('2026-01-14T16:30:00-05:00'))).toBeLessThan(HOUR_S / 2);
    expect(night.sunriseS).toBeGreaterThan(night.sunsetS);
  });

  it('is the one that is running, once the sun is down', () => {
    const evening = at('2026-01-15T20:00:00-05:00');
    expect(nightBehind(evening, HILL)).toEqual(nightSpan(evening, HILL));
  });

  it('is the short one of midsummer also late in the day', () => {
    expect(Math.abs(nightBehind(at('2026-06-21T20:00:00-04:00'), HILL).sunsetS - at('2026-06-20T20:30:00-04:00'))).toBeLessThan(HOUR_S / 2);
  });

  it('is there where the sun stays below: it holds the time, or ended before it', () => {
    for (let hour = 0; hour < 24; hour += 1) {
      const timeS = at('2026-12-21T00:00:00Z') + hour * HOUR_S;
      const { sunsetS, sunriseS } = nightBehind(timeS, FJORD);
      expect(sunsetS).toBeLessThanOrEqual(timeS);
      expect(timeS - sunriseS).toBeLessThan(24 * HOUR_S);
    }
  });
});
