import { describe, expect, it } from 'vitest';
import { inTen } from '../../../bot/text/chance.js';
import { choose, revise, type Choice } from '../../../engine/plan/choose.js';
import { damageUnder, type Candidate, type Stakes } from '../../../engine/plan/expected-loss.js';
import { AFTERNOON_S, ALL_PLANS, clockS, PLANS, stakesFor, TOMATO, type PlanId } from './worked-night.js';

/**
 * Worked cases D7-D14 of the decision rule. Expected losses were worked out apart from this code, by quadrature over a normal low;
 * tolerance 0.05 money: they are printed to 0.01 and some sums are of rounded terms.
 */
const TOLERANCE = 0.05;
type Losses = Partial<Record<PlanId, number>>;

function expectLosses(choice: Choice, losses: Losses): void {
  for (const [id, loss] of Object.entries(losses)) expect(Math.abs(choice.losses.get(id)! - loss), `${id}: ${choice.losses.get(id)} against ${loss}`).toBeLessThan(TOLERANCE);
}

const tonight = (stakes: Stakes, candidates: readonly Candidate[] = ALL_PLANS, nowS = AFTERNOON_S): Choice => choose({ candidates, nothingId: 'none', stakes, nowS });

describe('which plan', () => {
  it.each<[string, number, number, number, Losses, PlanId, Choice['reason']]>([
    ['D7', -0.5, 1.2, 1, { none: 63.13, covers: 57.34, heater: 11.46, both: 16.3 }, 'heater', 'gain-worth-it'],
    ['D9', 1, 1.2, 1, { none: 13.24, covers: 17.16, heater: 7.95, both: 13.37 }, 'heater', 'gain-worth-it'],
    ['D10', 2, 1.2, 3, { none: 8.43, heater: 7.68 }, 'none', 'gain-too-small'],
    ['D11, sure', 2, 1.2, 1, { none: 2.81, heater: 7.39 }, 'none', 'best-is-nothing'],
    ['D11, unsure', 2, 2.2, 1, { none: 17.29, heater: 8.91 }, 'heater', 'gain-worth-it'],
  ])('%s: low %f C, sd %f K, losses weighted %f', (_name, meanC, sdK, lossWeight, losses, chosen, reason) => {
    const choice = tonight(stakesFor(meanC, sdK, lossWeight));
    expectLosses(choice, losses);
    expect([choice.chosen.id, choice.reason]).toEqual([chosen, reason]);
  });

  it('D7: damage of each crop without a plan', () => {
    const damages = damageUnder(PLANS.none, stakesFor(-0.5, 1.2));
    [0.0006, 0.1494, 0.4261].forEach((expected, k) => expect(Math.abs(damages[k]! - expected)).toBeLessThan(0.0001));
  });

  it('D8: without a heater the covers, and the tomatoes still 4 in 10', () => {
    const stakes = stakesFor(-0.5, 1.2);
    const choice = tonight(stakes, [PLANS.none, PLANS.covers]);
    expectLosses(choice, { none: 63.13, covers: 57.34 });
    expect(choice.chosen.id).toBe('covers');
    expect(inTen(damageUnder(choice.chosen, stakes)[TOMATO]!)).toBe('4 in 10');
  });

  it('D13: at 18:20 it is too late for covers by 18:40, not for the heater', () => {
    const choice = tonight(stakesFor(-0.5, 1.2), ALL_PLANS, clockS(18, 20));
    expect(choice.infeasible).toEqual(['covers', 'both']);
    expect(choice.chosen.id).toBe('heater');
  });
});

describe('D12: covers that lie already stay', () => {
  const covered = { ...PLANS.covers, done: true };

  it.each([[-0.5, 52.34, 63.13], [3.5, 0.62, 0.13]])('low %f C: %f on, %f off', (meanC, on, off) => {
    const choice = revise({ candidates: [PLANS.none, covered], nothingId: 'none', issuedId: 'covers', stakes: stakesFor(meanC, 1.2), nowS: clockS(20) });
    expectLosses(choice, { covers: on, none: off });
    expect(choice.chosen.id).toBe('covers');
  });
});

describe('D14: the heater was advised at 1 C, and the forecast turns milder', () => {
  it.each<[number, number, number, PlanId, Choice['reason']]>([
    [1.4, 7.492, 7.638, 'heater', 'kept-as-issued'],
    [1.6, 5.495, 7.533, 'heater', 'kept-as-issued'],
    [1.8, 3.963, 7.453, 'heater', 'kept-as-issued'],
    [2, 2.811, 7.393, 'none', 'stand-down'],
  ])('%f C: nothing %f, heater %f', (meanC, none, heater, chosen, reason) => {
    const choice = revise({ candidates: [PLANS.none, PLANS.heater], nothingId: 'none', issuedId: 'heater', stakes: stakesFor(meanC, 1.2), nowS: AFTERNOON_S });
    expect(choice.losses.get('none')).toBeCloseTo(none, 2);
    expect(choice.losses.get('heater')).toBeCloseTo(heater, 2);
    expect([choice.chosen.id, choice.reason]).toEqual([chosen, reason]);
  });
});
