import { describe, expect, it } from 'vitest';
import { temperature, temperatureDifference, withRange } from '../../../bot/text/temperature.js';

describe('temperature in words', () => {
  it.each([
    [-3, '-3C', '27F'], [-2.54, '-2.5C', '27F'], [0, '0C', '32F'], [2, '2C', '36F'], [-40, '-40C', '-40F'], [21.07, '21.1C', '70F'], [-17.8, '-17.8C', '0F'],
  ])('%f C: %s or %s', (tempC, inC, inF) => {
    expect([temperature(tempC, 'C'), temperature(tempC, 'F')]).toEqual([inC, inF]);
  });

  it.each([-0, -0.04, -0.049, 0.049])('%f C has no minus before its zero', (tempC) => {
    expect(temperature(tempC, 'C')).toBe('0C');
  });

  it.each([-17.777, -17.8, -18.05])('%f C is 0F, without a minus', (tempC) => {
    expect(temperature(tempC, 'F')).toBe('0F');
  });

  it.each([[2, '2C', '4F'], [0.25, '0.3C', '0F'], [-1, '-1C', '-2F'], [-0.04, '0C', '0F'], [0, '0C', '0F']])('a difference of %f K: %s or %s', (differenceK, inC, inF) => {
    expect([temperatureDifference(differenceK, 'C'), temperatureDifference(differenceK, 'F')]).toEqual([inC, inF]);
  });

  it('a low comes with the range that 8 nights in 10 fall in', () => {
    expect(withRange({ q10: -4.52, q50: -3, q90: -0.02 }, 'C')).toBe('-3C (-4.5 to 0)');
    expect(withRange({ q10: -4.5, q50: -3, q90: -1.5 }, 'F')).toBe('27F (24 to 29)');
  });
});
