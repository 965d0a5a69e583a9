import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceClass, inTen } from '../../../bot/text/chance.js';

/** The check rows of the wording table of this project: counts round half up, the class goes by the chance itself. */
describe('chance in words', () => {
  it.each([
    [0.03, 'fewer than 1 in 20', 'very unlikely'],
    [0.12, '1 in 10', 'unlikely'],
    [0.26, '3 in 10', 'possible'],
    [0.33, '3 in 10', 'possible'],
    [0.45, '5 in 10', 'even odds'],
    [0.55, '6 in 10', 'even odds'],
    [0.74, '7 in 10', 'likely'],
    [0.85, '9 in 10', 'likely'],
    [0.93, '9+ in 10', 'almost sure'],
  ])('%f: %s, %s', (chance, words, named) => {
    expect([inTen(chance), chanceClass(chance)]).toEqual([words, named]);
  });

  it('0.004 is as good as safe', () => {
    expect(chanceClass(0.004)).toBe('safe');
    expect(inTen(0.004)).not.toMatch(/\d/u);
  });

  it.each([
    [0.01, 'very unlikely'], [0.05, 'unlikely'], [0.15, 'possible'], [0.35, 'even odds'], [0.65, 'likely'], [0.9, 'likely'], [0.9001, 'almost sure'], [0, 'safe'], [1, 'almost sure'],
  ])('class begins at its lower edge: %f is %s', (chance, named) => {
    expect(chanceClass(chance)).toBe(named);
  });

  it('never says 0 in 10, 10 in 10 or a percentage', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (chance) => {
      expect(inTen(chance)).not.toMatch(/^0 in|^10 in|%|percent/u);
    }));
  });

  it('never sounds less as the chance grows', () => {
    const count = (chance: number): number => (chance < 0.01 ? 0 : chance < 0.05 ? 0.5 : Number.parseInt(inTen(chance), 10) + (inTen(chance).includes('+') ? 0.5 : 0));
    const chances = Array.from({ length: 1001 }, (_, i) => i / 1000);
    for (let i = 1; i < chances.length; i += 1) expect(count(chances[i]!)).toBeGreaterThanOrEqual(count(chances[i - 1]!));
  });
});
