import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cropById, cropRows } from '../../../engine/crops/catalogue.js';
import { thresholdsAt, weakestGrade } from '../../../engine/crops/thresholds.js';
import { OutOfRangeError } from '../../../engine/errors.js';
import { celsiusToKelvin } from '../../../engine/units.js';

const at = (id: string, effectiveFraction: number) => thresholdsAt({ row: cropById(id)!, effectiveFraction });
const fraction = fc.double({ min: 0, max: 1, noNaN: true });

describe('thresholds', () => {
  it('are the soft pair at 0 and the hardened pair at 1', () => {
    expect(at('kale_curly', 0)).toMatchObject({ damageBeginsK: celsiusToKelvin(-2.2), killedK: celsiusToKelvin(-5.6) });
    expect(at('kale_curly', 1)).toMatchObject({ damageBeginsK: celsiusToKelvin(-6.7), killedK: celsiusToKelvin(-15) });
  });

  it('use the only pair for both states', () => {
    expect(at('apple_full_bloom', 0)).toEqual(at('apple_full_bloom', 1));
    expect(at('cucumber', 0.7)).toEqual(at('cucumber', 0));
  });

  it('keep tender crops soft even where a hardened pair is printed', () => {
    expect(at('tomato', 1)).toMatchObject({ damageBeginsK: celsiusToKelvin(0), killedK: celsiusToKelvin(-1.1) });
    expect(at('lemon', 1).damageBeginsK).toBe(celsiusToKelvin(-1.1));
  });

  it('say the weakest grade of the numbers that have weight', () => {
    expect(at('kale_curly', 0)).toMatchObject({ damageGrade: 'published', killGrade: 'secondary', weakestGrade: 'secondary' });
    expect(at('kale_curly', 0.5)).toMatchObject({ damageGrade: 'published', killGrade: 'from memory', weakestGrade: 'from memory' });
    expect(weakestGrade(['published', 'from memory', 'secondary'])).toBe('from memory');
    expect(weakestGrade([])).toBe('published');
  });

  it('leave out a kill temperature that no source gives', () => {
    expect(at('fava_pods', 1)).toMatchObject({ killedK: null, killGrade: null, weakestGrade: 'published' });
  });

  it('give a chill threshold of growing plants alone', () => {
    expect(at('basil', 0).chillK).toBe(celsiusToKelvin(10));
    expect(at('lemon', 0).chillK).toBeNull();
    expect(at('kale_curly', 0).chillK).toBeNull();
  });

  it('flag numbers of different organs', () => {
    expect(at('thyme', 0.5).differentOrgans).toBe(true);
    expect(at('leek_winter', 0.5).differentOrgans).toBe(false);
  });

  it('refuse a fraction outside 0 to 1', () => {
    expect(() => at('kale_curly', 1.1)).toThrow(OutOfRangeError);
  });

  it('never rise as a plant hardens, and kill stays below damage', () => {
    fc.assert(fc.property(fc.constantFrom(...cropRows), fraction, fraction, (row, one, other) => {
      const softer = thresholdsAt({ row, effectiveFraction: Math.min(one, other) });
      const harder = thresholdsAt({ row, effectiveFraction: Math.max(one, other) });
      expect(harder.damageBeginsK).toBeLessThanOrEqual(softer.damageBeginsK + 1e-9);
      if (harder.killedK === null || softer.killedK === null) return;
      expect(harder.killedK).toBeLessThanOrEqual(softer.killedK + 1e-9);
      expect(harder.killedK).toBeLessThan(harder.damageBeginsK);
    }));
  });
});
