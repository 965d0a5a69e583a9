import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeReading, NEW_THERMOMETER, widenedBeyondChecked, type GateVerdict, type ThermometerPast } from '../../../engine/learn/reading-gate.js';
import { explanationsOf, notResetLogLikelihood, type ExplanationKind, type TypedReading } from '../../../engine/learn/reading-gate-explanations.js';
import { typingSlips } from '../../../engine/learn/reading-gate-slips.js';
import { celsiusToKelvin } from '../../../engine/units.js';

const expectedC = (meanC: number, scaleK: number) => ({ meanK: celsiusToKelvin(meanC), scaleK });
const low = (value: number, more: Partial<TypedReading> = {}): TypedReading => ({ value, unit: 'C', statistic: 'low', sunIsUp: false, ...more });
const after = (...lowsC: number[]): ThermometerPast => ({ ...NEW_THERMOMETER, lowsK: lowsC.map(celsiusToKelvin), coldestK: celsiusToKelvin(Math.min(...lowsC)) });
const judged = (reading: TypedReading, meanC: number, scaleK: number, past = NEW_THERMOMETER): GateVerdict => judgeReading(reading, expectedC(meanC, scaleK), past);

/** Worked out apart from this code over six explanations: typed, expected, its scale, last low, and the shares of each. Fahrenheit typed where Celsius is used. */
const ROWS = [
  { typedC: 3, meanC: -3.2, scaleK: 1.1, lastC: -1, shares: { 'as-typed': 0.2028, 'wrong-sign': 0.7582, 'other-unit': 0.0001, 'lost-point': 0.0011, unusual: 0.0378 } },
  { typedC: 27, meanC: -2.5, scaleK: 1.2, lastC: -1, shares: { 'as-typed': 0.0004, 'other-unit': 0.9087, 'lost-point': 0.0007, unusual: 0.0902 } },
  { typedC: -6.5, meanC: -1, scaleK: 1.2, lastC: -6.5, shares: { 'as-typed': 0.1798, 'wrong-sign': 0.0007, 'not-reset': 0.7956, unusual: 0.015 } },
  { typedC: -25, meanC: -2.2, scaleK: 1.2, lastC: 0.5, shares: { 'as-typed': 0.0091, 'wrong-sign': 0.0001, 'lost-point': 0.372, unusual: 0.6188 } },
  { typedC: -4.5, meanC: -1.5, scaleK: 1.2, lastC: 0.5, shares: { 'as-typed': 0.9864, 'wrong-sign': 0.0012, unusual: 0.0088 } },
  { typedC: -2, meanC: -1.5, scaleK: 1.2, lastC: 0.5, shares: { 'as-typed': 0.9977, 'wrong-sign': 0.001, unusual: 0.0009 } },
] as const;

describe('what may be behind a typed number', () => {
  // The table knows six explanations and this code more: only ratios can be held against each other.
  it.each(ROWS)('typed $typedC where $meanC was expected', ({ typedC, meanC, scaleK, lastC, shares }) => {
    const all = explanationsOf(low(typedC), expectedC(meanC, scaleK), [celsiusToKelvin(lastC)]);
    const share = (kind: string): number => all.filter((one) => one.kind === kind).reduce((sum, { probability }) => sum + probability, 0);
    const named = Object.entries(shares);
    const sum = named.reduce((total, [kind]) => total + share(kind), 0);
    const ofTable = named.reduce((total, [, value]) => total + value, 0);
    for (const [kind, value] of named) expect(share(kind) / sum, kind).toBeCloseTo(value / ofTable, 2);
  });

  it('has shares that sum to one, likeliest first', () => {
    fc.assert(fc.property(fc.integer({ min: -40, max: 90 }), fc.constantFrom('C' as const, 'F' as const), fc.double({ min: -20, max: 12, noNaN: true }), fc.double({ min: 0.4, max: 4, noNaN: true }), fc.boolean(), (value, unit, meanC, scaleK, sunIsUp) => {
      const all = explanationsOf(low(value, { unit, sunIsUp }), expectedC(meanC, scaleK), [celsiusToKelvin(meanC - 1)]);
      expect(all.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
      expect(all.map(({ probability }) => probability)).toEqual(all.map(({ probability }) => probability).sort((a, b) => b - a));
    }));
  });

  it('does not see the sun at night, and more of it where the thermometer hangs in it', () => {
    const sun = (more: Partial<TypedReading>): number => explanationsOf(low(12, more), expectedC(-2, 1.5)).find(({ kind }) => kind === 'sunlit')!.probability;
    expect(sun({ sunIsUp: false })).toBe(0);
    expect(sun({ sunIsUp: true, hangs: 'sun' })).toBeGreaterThan(sun({ sunIsUp: true }));
    expect(sun({ sunIsUp: true, hangs: 'shade' })).toBeLessThan(sun({ sunIsUp: true }));
  });

  it('doubts a unit less that was written', () => {
    const other = (unitWritten: boolean): number => explanationsOf(low(27, { unitWritten }), expectedC(-2.5, 1.2)).find(({ kind }) => kind === 'other-unit')!.probability;
    expect(other(true)).toBeLessThan(other(false));
  });
});

describe('a low that was not reset', () => {
  // Normal censored likelihood, worked out apart.
  it.each([[-1, -0.0062], [-3.5, -0.4132], [-5, -1.5979]])('shows -4 where %d was expected', (meanC, expected) => {
    expect(notResetLogLikelihood(celsiusToKelvin(-4), expectedC(meanC, 1.2))).toBeCloseTo(expected, 4);
  });

  it('is taken as a bound, without a question', () => {
    expect(judged(low(-6.5), -1, 1.2, after(-6.5)).outcome).toBe('bound');
    expect(judged(low(-6.5), -1, 1.2, after(-2, -6.5)).outcome).toBe('bound');
  });

  it('is none where the night was expected as cold, or where nothing showed that number before', () => {
    expect(judged(low(-6.5), -6, 1.2, after(-6.5)).outcome).toBe('accept');
    expect(judged(low(-6.5), -1, 1.2, after(-2)).outcome).toBe('ask');
  });
});

describe('slips of the finger', () => {
  const meant = (typed: number): readonly number[] => typingSlips(typed).map((slip) => slip.meant);

  it.each([[91, 19], [81, 18], [13, 31], [133, 13], [8, 18], [55, 35], [-12, -21], [2.5, 5.2]])('%d may be %d', (typed, was) => {
    expect(meant(typed)).toContain(was);
  });

  it('never lead to what was typed, and are rare together', () => {
    fc.assert(fc.property(fc.integer({ min: -60, max: 200 }), (typed) => {
      expect(meant(typed)).not.toContain(typed);
      expect(typingSlips(typed).reduce((sum, { chance }) => sum + chance, 0)).toBeLessThan(0.015);
    }));
  });
});

describe('the gate', () => {
  const firstOf = (verdict: GateVerdict): ExplanationKind | undefined => verdict.suggestions[0]?.kind;

  it.each<[string, TypedReading, number, ExplanationKind, number | null]>([
    ['a lost minus', low(3), -3.2, 'wrong-sign', -3],
    ['Fahrenheit to one who uses Celsius', low(27), -2.5, 'other-unit', 27],
    ['Celsius to one who uses Fahrenheit', low(-5, { unit: 'F' }), -5, 'other-unit', -5],
    ['a lost point', low(-25), -2.2, 'lost-point', -2.5],
    ['swapped digits', low(81, { unit: 'F' }), -7.5, 'slip', 18],
    ['the sun', low(64, { unit: 'F', sunIsUp: true }), -2, 'sunlit', null],
  ])('asks about %s, and offers it first', (_what, reading, meanC, kind, meant) => {
    const verdict = judged(reading, meanC, 1.1);
    expect(verdict).toMatchObject({ outcome: 'ask', reason: 'unlikely', isSuggestionLikely: true });
    expect(firstOf(verdict)).toBe(kind);
    expect(verdict.suggestions[0]!.meant).toBe(meant);
  });

  it('accepts what fits, also at the edge, and an unusual night that nothing explains is only asked about', () => {
    expect(judged(low(-2), -1.5, 1.2).outcome).toBe('accept');
    expect(judged(low(-4.5), -1.5, 1.2).outcome).toBe('accept');
    const unusual = judged(low(-11), -1.5, 1.2);
    expect(unusual.outcome).toBe('ask');
    expect(unusual.isSuggestionLikely).toBe(false);
  });

  it('asks about a low that the same thermometer contradicts', () => {
    const past = { ...NEW_THERMOMETER, shownThatNightK: [celsiusToKelvin(-3)] };
    expect(judged(low(-2), -2.5, 1.2, past)).toMatchObject({ outcome: 'ask', reason: 'contradicts' });
    expect(judged(low(-3.5), -2.5, 1.2, past).outcome).toBe('accept');
  });

  it('without an expectation asks only about what cannot be', () => {
    expect(judgeReading(low(-20), null).outcome).toBe('accept');
    expect(judgeReading(low(-46), null)).toMatchObject({ outcome: 'ask', reason: 'impossible' });
    expect(judgeReading(low(215, { unit: 'F' }), expectedC(-6, 1.5)).suggestions[0]).toMatchObject({ kind: 'lost-point', meant: 21.5 });
  });

  it('never corrects by itself: what was typed stays', () => {
    fc.assert(fc.property(fc.integer({ min: -44, max: 59 }), fc.double({ min: -20, max: 12, noNaN: true }), (value, meanC) => {
      expect(judged(low(value), meanC, 1.5).tempK).toBe(celsiusToKelvin(value));
    }));
  });

  it('lets a record night be: far below all that was checked, an expectation counts for less', () => {
    const record = expectedC(-15, 1.5);
    expect(widenedBeyondChecked(record, celsiusToKelvin(-11)).scaleK).toBeCloseTo(1.5 * 1.3, 12);
    expect(widenedBeyondChecked(record, celsiusToKelvin(-13))).toBe(record);
    expect(widenedBeyondChecked(record, null)).toBe(record);
    const reading = low(-20.2);
    expect(judgeReading(reading, record, after(-11)).outcome).toBe('accept');
    expect(judgeReading(reading, record, after(-14)).outcome).toBe('ask');
  });

  it('needs an expectation with a width', () => {
    expect(() => judged(low(1), 0, 0)).toThrow(RangeError);
  });
});
