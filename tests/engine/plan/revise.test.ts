import { describe, expect, it } from 'vitest';
import { choose, revise, type Choice } from '../../../engine/plan/choose.js';
import type { Candidate } from '../../../engine/plan/expected-loss.js';
import { AFTERNOON_S, candidate, clockS } from './worked-night.js';

/** Invented plans of one crop worth 100, so that a damage of 0.2 is a loss of 20. */
const COVER = candidate('cover', { cashCost: 4 });
const FLAME = candidate('flame', { cashCost: 4, combustion: true });
const FAN = candidate('fan', { cashCost: 4 });

function revised(damages: Readonly<Record<string, number>>, candidates: readonly Candidate[], issuedId: string, nowS = AFTERNOON_S): Choice {
  const stakes = { worth: [100], meanDamage: new Map(Object.entries(damages).map(([id, damage]) => [id, [damage]])), hourWorth: 15, lossWeight: 1 };
  return revise({ candidates: [candidate('none'), ...candidates], nothingId: 'none', issuedId, stakes, nowS });
}

describe('a plan that was issued', () => {
  it('is kept while another saves less than 2 or a fifth', () => {
    expect(revised({ none: 0.5, cover: 0.2, fan: 0.17 }, [COVER, FAN], 'cover')).toMatchObject({ chosen: { id: 'cover' }, reason: 'kept-as-issued' });
  });

  it('gives way to one that saves more', () => {
    expect(revised({ none: 0.5, cover: 0.2, fan: 0.1 }, [COVER, FAN], 'cover')).toMatchObject({ chosen: { id: 'fan' }, reason: 'switched' });
  });

  it('is not switched to a flame that is only a little cheaper than something without one', () => {
    expect(revised({ none: 0.8, cover: 0.5, fan: 0.1, flame: 0.099 }, [COVER, FAN, FLAME], 'cover')).toMatchObject({ chosen: { id: 'fan' }, reason: 'switched' });
  });

  it('is not switched to a plan that would not be worth a trip of its own', () => {
    expect(revised({ none: 0.05, cover: 0.05, fan: 0.005 }, [COVER, FAN], 'cover').chosen.id).not.toBe('fan');
  });

  it('gives way to a fresh choice once it can no longer be done in time', () => {
    const late = { ...COVER, minutes: 20, deadlineS: clockS(18, 40) };
    const choice = revised({ none: 0.5, cover: 0.1, fan: 0.3 }, [late, FAN], 'cover', clockS(18, 30));
    expect(choice).toMatchObject({ chosen: { id: 'fan' }, infeasible: ['cover'] });
  });

  it('is not stood down once it is done', () => {
    expect(revised({ none: 0, cover: 0 }, [{ ...COVER, sideCost: 5, done: true }], 'cover')).toMatchObject({ chosen: { id: 'cover' }, reason: 'kept-as-issued' });
  });

  it('of doing nothing is simply chosen anew', () => {
    expect(revised({ none: 0.5, cover: 0.1 }, [COVER], 'none')).toMatchObject({ chosen: { id: 'cover' }, reason: 'gain-worth-it' });
  });

  it('must be among the candidates, and so must doing nothing', () => {
    expect(() => revised({ none: 0.5, cover: 0.1 }, [COVER], 'quilt')).toThrow('no candidate called "quilt"');
    expect(() => choose({ candidates: [COVER], nothingId: 'none', stakes: { worth: [], meanDamage: new Map(), hourWorth: 15, lossWeight: 1 }, nowS: AFTERNOON_S })).toThrow('no candidate called "none"');
  });
});
