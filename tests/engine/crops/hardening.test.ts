import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cropById } from '../../../engine/crops/catalogue.js';
import { damageFractionAt } from '../../../engine/crops/damage.js';
import { hardeningAfter } from '../../../engine/crops/hardening.js';
import { thresholdsAt } from '../../../engine/crops/thresholds.js';
import { OutOfRangeError } from '../../../engine/errors.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import { days, hoursK } from './histories.js';

const SUNNY_WINTER_DAY = hoursK([14, -2], [5, 8], [5, 24]);

// Four histories worked out apart from this code: h, cap, effective; curly kale damage and kill, p at -5 and -8; spinach; leaf lettuce. °C.
const VECTORS = [
  { name: '14 d constant 3', plantTempK: hoursK([336, 3]), h: 0.9999, cap: 0.5, eff: 0.5, kale: [-4.45, -10.3], p: [0.144, 0.615], spinach: [-7.65, -10.75], lettuce: [-3.0, -6.7] },
  { name: '14 d of 14 h -2, 5 h 8, 5 h 24', plantTempK: days(14, SUNNY_WINTER_DAY), h: 0.5203, cap: 0.9, eff: 0.5203, kale: [-4.54, -10.49], p: [0.135, 0.588], spinach: [-7.83, -10.94], lettuce: [-3.04, -6.81] },
  { name: 'same, then 10 h 28 and 14 h 5', plantTempK: [...days(14, SUNNY_WINTER_DAY), ...hoursK([10, 28], [14, 5])], h: 0.4396, cap: 0.8, eff: 0.4396, kale: [-4.18, -9.73], p: [0.176, 0.696], spinach: [-7.12, -10.18], lettuce: [-2.88, -6.37] },
  { name: '14 d of 12 h 8, 12 h 18', plantTempK: days(14, hoursK([12, 8], [12, 18])), h: 0.092, cap: 0.5, eff: 0.092, kale: [-2.61, -6.46], p: [0.628, 0.981], spinach: [-4.1, -6.87], lettuce: [-2.18, -4.5] },
] as const;

describe.each(VECTORS)('fast set, $name', ({ plantTempK, h, cap, eff, kale, p, spinach, lettuce }) => {
  const state = hardeningAfter({ plantTempK, set: 'fast' });
  const at = (id: string) => thresholdsAt({ row: cropById(id)!, effectiveFraction: state.effectiveFraction });

  it('hardens to the printed fraction under the printed cap', () => {
    expect(state.hardeningFraction).toBeCloseTo(h, 4);
    expect(state.capFraction).toBeCloseTo(cap, 4);
    expect(state.effectiveFraction).toBeCloseTo(eff, 4);
  });

  it('moves the thresholds of kale, spinach and lettuce to the printed ones', () => {
    for (const [id, [damageC, killC]] of [['kale_curly', kale], ['spinach', spinach], ['lettuce_leaf', lettuce]] as const) {
      const { damageBeginsK, killedK } = at(id);
      expect(Math.abs(kelvinToCelsius(damageBeginsK) - damageC), id).toBeLessThanOrEqual(0.00501);
      expect(Math.abs(kelvinToCelsius(killedK!) - killC), id).toBeLessThanOrEqual(0.00501);
    }
  });

  it('damages kale by the printed fractions at -5 and -8', () => {
    const [at5, at8] = [-5, -8].map((tempC) => damageFractionAt({ ...at('kale_curly'), tempK: celsiusToKelvin(tempC) }));
    expect(at5).toBeCloseTo(p[0], 3);
    expect(at8).toBeCloseTo(p[1], 3);
  });
});

describe('fast set, hot spells', () => {
  it.each([
    ['4 h at 20', hoursK([4, 20]), 0.76],
    ['6 h at 20', hoursK([6, 20]), 0.66],
    ['6 h at 30', hoursK([6, 30]), 0.66],
    ['8 h at 20', hoursK([8, 20]), 0.58],
  ])('one hot spell from fully hardened, %s', (_name, plantTempK, h) => {
    expect(hardeningAfter({ plantTempK, set: 'fast', startFraction: 1 }).hardeningFraction).toBeCloseTo(h, 2);
  });
});

describe('history', () => {
  it('says how many hours it stands on, and no more than 14 days', () => {
    expect(hardeningAfter({ plantTempK: [], set: 'fast' })).toEqual({ hardeningFraction: 0.3, capFraction: 0.5, effectiveFraction: 0.3, tmin7K: null, hoursUsed: 0 });
    expect(hardeningAfter({ plantTempK: hoursK([50, 3]), set: 'fast' }).hoursUsed).toBe(50);
    const long = [...hoursK([500, 30]), ...hoursK([336, 3])];
    expect(hardeningAfter({ plantTempK: long, set: 'slow' })).toEqual(hardeningAfter({ plantTempK: hoursK([336, 3]), set: 'slow' }));
  });

  it('counts days back from the newest hour and leaves out a part day at the old end', () => {
    expect(kelvinToCelsius(hardeningAfter({ plantTempK: [...hoursK([5, 20]), ...days(2, SUNNY_WINTER_DAY)], set: 'fast' }).tmin7K!)).toBeCloseTo(-2);
    expect(kelvinToCelsius(hardeningAfter({ plantTempK: hoursK([3, 6], [2, 4]), set: 'fast' }).tmin7K!)).toBeCloseTo(4);
  });

  it('leaves tender crops unhardened', () => {
    const state = hardeningAfter({ plantTempK: hoursK([336, -3]), set: 'none' });
    expect(state).toMatchObject({ hardeningFraction: 0, effectiveFraction: 0 });
    expect(state.capFraction).toBeCloseTo(1, 12);
  });

  it('refuses what cannot be a plant temperature or a fraction', () => {
    expect(() => hardeningAfter({ plantTempK: [3], set: 'fast' })).toThrow(OutOfRangeError);
    expect(() => hardeningAfter({ plantTempK: [Number.NaN], set: 'none' })).toThrow(OutOfRangeError);
    expect(() => hardeningAfter({ plantTempK: [], set: 'fast', startFraction: 1.2 })).toThrow(OutOfRangeError);
  });
});

const set = fc.constantFrom('fast' as const, 'slow' as const);
const startFraction = fc.double({ min: 0, max: 1, noNaN: true });
const tempK = (lowestC: number, highestC: number) => fc.double({ min: celsiusToKelvin(lowestC), max: celsiusToKelvin(highestC), noNaN: true });

describe('direction', () => {
  it('stays between 0 and 1 whatever happens', () => {
    fc.assert(fc.property(fc.array(tempK(-40, 50), { maxLength: 400 }), set, startFraction, (plantTempK, rates, start) => {
      const state = hardeningAfter({ plantTempK, set: rates, startFraction: start });
      for (const fraction of [state.hardeningFraction, state.capFraction, state.effectiveFraction]) {
        expect(fraction).toBeGreaterThanOrEqual(0);
        expect(fraction).toBeLessThanOrEqual(1);
      }
    }));
  });

  it('never leaves a plant less hardy for a colder history, below 10 degrees', () => {
    const pairs = fc.array(fc.tuple(tempK(-20, 10), fc.double({ min: 0, max: 15, noNaN: true })), { minLength: 1, maxLength: 200 });
    fc.assert(fc.property(pairs, set, startFraction, (hours, rates, start) => {
      const warmer = hardeningAfter({ plantTempK: hours.map(([k]) => k), set: rates, startFraction: start });
      const colder = hardeningAfter({ plantTempK: hours.map(([k, byK]) => k - byK), set: rates, startFraction: start });
      expect(colder.effectiveFraction).toBeGreaterThanOrEqual(warmer.effectiveFraction - 1e-12);
    }));
  });

  it('never gains above 10 degrees and never loses below', () => {
    fc.assert(fc.property(tempK(-20, 40), set, startFraction, (oneK, rates, start) => {
      const gained = hardeningAfter({ plantTempK: [oneK], set: rates, startFraction: start }).hardeningFraction - start;
      if (oneK > celsiusToKelvin(10)) expect(gained).toBeLessThanOrEqual(0);
      else expect(gained).toBeGreaterThanOrEqual(-1e-15);
    }));
  });

  it('forgets where it started: two starts never move apart', () => {
    fc.assert(fc.property(fc.array(tempK(-20, 40), { maxLength: 200 }), set, startFraction, startFraction, (plantTempK, rates, one, other) => {
      const gap = (a: number, b: number): number => Math.abs(a - b);
      const [h1, h2] = [one, other].map((start) => hardeningAfter({ plantTempK, set: rates, startFraction: start }).hardeningFraction);
      expect(gap(h1!, h2!)).toBeLessThanOrEqual(gap(one, other) + 1e-12);
    }));
  });
});
