import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choose, type Choice } from '../../../engine/plan/choose.js';
import { expectedLoss, type Candidate, type Stakes } from '../../../engine/plan/expected-loss.js';
import { AFTERNOON_S, candidate } from './worked-night.js';

const money = fc.double({ min: 0, max: 50, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const damages = fc.array(share, { minLength: 2, maxLength: 2 });

interface Option { readonly candidate: Candidate; readonly damage: readonly number[] }

const option = (id: string): fc.Arbitrary<Option> =>
  fc.record({
    parts: fc.record({ cashCost: money, minutes: fc.integer({ min: 0, max: 90 }), hassle: fc.constantFrom(1, 1.5, 2.5), sideCost: money, reliability: share, fallbackId: fc.constantFrom('none', id), deadlineS: fc.constantFrom(null, AFTERNOON_S + 3600, AFTERNOON_S + 9000), combustion: fc.boolean(), reversible: fc.boolean() }),
    damage: damages,
  }).map(({ parts, damage }) => ({ candidate: candidate(id, parts), damage }));

/** Often next to nothing worse, so that ties are met. */
const worse = fc.record({ cash: fc.oneof(fc.constant(0.01), fc.double({ min: 1e-6, max: 20, noNaN: true })), minutes: fc.oneof(fc.constant(0), fc.nat(20)), side: fc.oneof(fc.constant(0), money), damage: fc.oneof(fc.constant(0), share) });

interface Evening { readonly options: readonly Option[]; readonly worth: readonly number[]; readonly hourWorth: number; readonly lossWeight: number }

const evening: fc.Arbitrary<Evening> = fc.record({
  options: fc.tuple(damages.map((damage) => ({ candidate: candidate('none'), damage })), option('a'), option('m'), option('z')),
  worth: fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 2, maxLength: 2 }),
  hourWorth: fc.double({ min: 0, max: 60, noNaN: true }),
  lossWeight: fc.double({ min: 0.5, max: 4, noNaN: true }),
});

const stakesOf = ({ options, worth, hourWorth, lossWeight }: Evening): Stakes => ({ worth, hourWorth, lossWeight, meanDamage: new Map(options.map((one) => [one.candidate.id, one.damage])) });
const decide = (night: Evening, nowS = AFTERNOON_S): Choice => choose({ candidates: night.options.map((one) => one.candidate), nothingId: 'none', stakes: stakesOf(night), nowS });

describe('any evening', () => {
  it('expected loss never falls as a crop gets more valuable', () => {
    fc.assert(fc.property(evening, fc.nat(1), money, (night, k, more) => {
      const dearer = { ...night, worth: night.worth.map((worth, i) => (i === k ? worth + more : worth)) };
      for (const one of night.options) expect(expectedLoss(one.candidate, stakesOf(dearer))).toBeGreaterThanOrEqual(expectedLoss(one.candidate, stakesOf(night)) - 1e-9);
    }));
  });

  it('without any weight on losses, nothing is done', () => {
    fc.assert(fc.property(evening, fc.constantFrom(0, 1e-9), (night, lossWeight) => {
      expect(decide({ ...night, lossWeight }).chosen.id).toBe('none');
    }));
  });

  it('an action that cannot be done in time changes nothing', () => {
    fc.assert(fc.property(evening, option('late'), (night, late) => {
      const added = { ...late, candidate: { ...late.candidate, minutes: 60, deadlineS: AFTERNOON_S + 60 * 60 } };
      const [without, withIt] = [decide(night), decide({ ...night, options: [...night.options, added] })];
      expect(withIt.infeasible).toContain('late');
      expect([withIt.chosen.id, withIt.reason]).toEqual([without.chosen.id, without.reason]);
    }));
  });

  it('an action that costs more and warms no better is never chosen, whatever its name', () => {
    fc.assert(fc.property(evening, fc.constantFrom('0', 'zz'), worse, (night, id, by) => {
      const model = night.options[1]!;
      const { candidate: of, damage } = model;
      const fallbackId = of.fallbackId === of.id ? id : of.fallbackId;
      const dominated: Option = {
        candidate: { ...of, id, fallbackId, cashCost: of.cashCost + by.cash, minutes: of.minutes + by.minutes, sideCost: of.sideCost + by.side },
        damage: damage.map((q) => Math.min(1, q + by.damage * (1 - q))),
      };
      expect(decide({ ...night, options: [...night.options, dominated] }).chosen.id).not.toBe(id);
    }), { numRuns: 1000 });
  });

  it('the same evening gives the same answer, in whatever order the actions are listed', () => {
    fc.assert(fc.property(evening, (night) => {
      const first = decide(night);
      expect(decide(structuredClone(night))).toEqual(first);
      const turned = decide({ ...night, options: [...night.options].reverse() });
      expect([turned.chosen.id, turned.reason]).toEqual([first.chosen.id, first.reason]);
    }));
  });

  it('only sends somebody out for a gain of at least 1', () => {
    fc.assert(fc.property(evening, (night) => {
      const { chosen, losses } = decide(night);
      if (chosen.id !== 'none') expect(losses.get('none')! - losses.get(chosen.id)!).toBeGreaterThanOrEqual(1);
    }));
  });
});
