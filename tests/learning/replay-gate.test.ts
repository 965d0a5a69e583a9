import { describe, expect, it } from 'vitest';
import { replayGate } from '../../bot/commands/replay-gate.js';
import { celsiusToKelvin, type PlaceLow } from '../../engine/index.js';
import { checkedGreenhouse, REFERENCE_FILE } from '../fixtures/houses.js';

const MORNING_S = Date.parse('2026-01-14T12:30:00Z') / 1000;
const DAY_S = 86_400;
const said = (lowC: number): readonly PlaceLow[] => [{ key: { place: 'inside' }, low: { valuesK: [celsiusToKelvin(lowC)], weights: [1], scaleK: 1.2, degreesOfFreedom: 6 } }];
const cells = (value: number, day = 0, unit = 'C') => ({ unix: String(MORNING_S + day * DAY_S), place: 'inside', statistic: 'low', value: String(value), unit });
const gate = () => replayGate(checkedGreenhouse(REFERENCE_FILE));

describe('readings of a season', () => {
  it('that fit are learned from as typed', () => {
    expect(gate()(cells(-3.4), said(-3)).accepted).toMatchObject({ place: 'inside', statistic: 'low', timeS: MORNING_S, valueK: celsiusToKelvin(-3.4) });
    expect(gate()(cells(23, 0, 'F'), said(-5)).accepted!.valueK).toBeCloseTo(celsiusToKelvin(-5), 9);
  });

  it.each([['without its minus', 9, -9], ['in the other unit', 23, -5], ['that slipped', 70, -3]])('%s are questioned and left out', (_, typed, meantC) => {
    expect(gate()(cells(typed), said(meantC))).toMatchObject({ verdict: { outcome: 'ask' }, accepted: null });
  });

  it('that show the low of the night before are a bound', () => {
    const judge = gate();
    judge(cells(-9), said(-9));
    expect(judge(cells(-9, 1), said(-2))).toMatchObject({ verdict: { outcome: 'bound' }, accepted: { notReset: true } });
  });

  it('without anything that was said before are judged by what can be alone', () => {
    expect(gate()(cells(12), []).verdict.outcome).toBe('accept');
    expect(gate()(cells(250), []).verdict.outcome).toBe('ask');
  });
});
