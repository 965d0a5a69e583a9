import { describe, expect, it } from 'vitest';
import { choose } from '../../../engine/plan/choose.js';
import { lossWeightFor } from '../../../engine/plan/tolerance.js';
import { worthOfWaiting } from '../../../engine/plan/wait-or-decide.js';
import { inTen } from '../../../bot/text/chance.js';
import { AFTERNOON_S, candidate, damageAt, oneAction, PLANS } from './worked-night.js';

/** Worked cases D1-D6 and D15-D17 of the decision rule: the arithmetic is simple enough to be checked by hand. Tolerance 0.05 money. */
const CENT_DIGITS = 6;

describe('one action against one loss', () => {
  it.each([
    ['D1', 0.05, {}, 5, 10, 'none', 'best-is-nothing'],
    ['D2', 0.15, {}, 15, 10, 'act', 'gain-worth-it'],
    ['D3', 0.15, { efficacy: 0.7 }, 15, 14.5, 'none', 'gain-too-small'],
    ['D4', 0.16, { efficacy: 0.7 }, 16, 14.8, 'act', 'gain-worth-it'],
    ['D5, careful', 0.08, { lossWeight: 2 }, 16, 10, 'act', 'gain-worth-it'],
    ['D5, normal', 0.08, {}, 8, 10, 'none', 'best-is-nothing'],
    ['D6', 0.15, { lossWeight: 0.5 }, 7.5, 10, 'none', 'best-is-nothing'],
  ] as const)('%s: chance %f', (_name, chance, parts, lossOfNone, lossOfAct, chosen, reason) => {
    const choice = choose(oneAction(chance, parts));
    expect(choice.losses.get('none')).toBeCloseTo(lossOfNone, CENT_DIGITS);
    expect(choice.losses.get('act')).toBeCloseTo(lossOfAct, CENT_DIGITS);
    expect([choice.chosen.id, choice.reason]).toEqual([chosen, reason]);
  });

  it('D3 and D4 turn at (10 + 1)/70', () => {
    const at = (chance: number): string => choose(oneAction(chance, { efficacy: 0.7 })).chosen.id;
    expect([at(11 / 70 - 1e-6), at(11 / 70 + 1e-6)]).toEqual(['none', 'act']);
  });
});

describe('weight of losses', () => {
  it.each([['relaxed', 4 / 6], ['normal', 1], ['careful', 11 / 6], ['never-lose-it', 21 / 6]] as const)('%s: %f', (careful, weight) => {
    expect(lossWeightFor(careful)).toBeCloseTo(weight, 12);
  });
});

describe('D15: nearly the same loss', () => {
  it('a cover goes before a flame', () => {
    const stakes = { worth: [100], meanDamage: new Map([['none', [0.2]], ['covers', [0]], ['flame', [0]]]), hourWorth: 15, lossWeight: 1 };
    const candidates = [candidate('none'), candidate('flame', { cashCost: 9.8, combustion: true }), candidate('covers', { cashCost: 9.95 })];
    const choice = choose({ candidates, nothingId: 'none', stakes, nowS: AFTERNOON_S });
    expect([...choice.losses.entries()]).toEqual([['none', 20], ['flame', 9.8], ['covers', 9.95]]);
    expect(choice.chosen.id).toBe('covers');
  });
});

describe('D16: wait or decide', () => {
  it('waiting is worth more than an interruption', () => {
    expect(Math.abs(worthOfWaiting({ meanK: 1.92, thresholdK: 0, sdNowK: 1.5, sdLaterK: 1, cost: 10, loss: 100 }).worth - 5.59)).toBeLessThan(0.01);
  });
});

describe('D17: ten members, no residual', () => {
  const MEMBERS_C = [-3.2, -2.4, -1.8, -1.1, -0.6, -0.2, 0.3, 0.9, 1.6, 2.4];
  const COVER_LIFT_K = 2;
  const mean = (liftK: number): number => MEMBERS_C.reduce((sum, tempC) => sum + damageAt(-1, -3)(tempC + liftK), 0) / MEMBERS_C.length;
  const stakes = { worth: [80], meanDamage: new Map([['none', [mean(0)]], ['covers', [mean(COVER_LIFT_K)]]]), hourWorth: 15, lossWeight: 1 };
  const choice = choose({ candidates: [PLANS.none, PLANS.covers], nothingId: 'none', stakes, nowS: AFTERNOON_S });

  it('mean damage 0.222462 bare and 0.018645 covered', () => {
    expect(mean(0)).toBeCloseTo(0.222462, 6);
    expect(mean(COVER_LIFT_K)).toBeCloseTo(0.018645, 6);
  });

  it('17.80 against 6.99: covers, and 2 in 10 said for the bare bed', () => {
    expect(Math.abs(choice.losses.get('none')! - 17.8)).toBeLessThan(0.05);
    expect(Math.abs(choice.losses.get('covers')! - 6.99)).toBeLessThan(0.05);
    expect(choice.chosen.id).toBe('covers');
    expect(inTen(mean(0))).toBe('2 in 10');
  });
});
