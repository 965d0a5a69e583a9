import { describe, expect, it } from 'vitest';
import type { AdvisoryAction, AdvisoryReason } from '../../../bot/features/evening/advisory.js';
import type { Item } from '../../../bot/language/intent.js';
import { planFollowed } from '../../../bot/features/record/plan-followed.js';

const ISSUED = '2026-01-14T16:00:00-05:00';
const BY = '2026-01-14T17:00:00-05:00';
const cover = (target: string): AdvisoryAction => ({ action: 'cover', target, by: BY });
const COUNTED: AdvisoryReason = { code: 'counts-on', coveredBeds: ['north'], heaterSetC: null, heaterOn: false, curtainDrawn: false, fans: ['tubes'] };

type Told = readonly [items: readonly Item[], done: boolean, beds?: readonly string[] | undefined, minutes?: number];

const followed = (actions: readonly AdvisoryAction[], told: readonly Told[], reasons: readonly AdvisoryReason[] = []): string =>
  planFollowed(
    { issuedAt: ISSUED, reasons, plan: { id: '', actions, effortMinutes: 0, cost: 0, heater: null } },
    told.map(([items, done, beds = null, minutes = 30], id) => ({ id, greenhouseId: 'h', night: '2026-01-14', receivedAtS: Date.parse(ISSUED) / 1000 + minutes * 60, body: JSON.stringify({ items, beds, setC: null }), done, text: '' })),
  );

describe('a plan', () => {
  it.each([
    ['nothing planned, nothing told', followed([], [])],
    ['all planned beds covered', followed([cover('north'), cover('south')], [[['cover'], true]])],
    ['each bed told by itself', followed([cover('north'), cover('south')], [[['cover'], true, ['north']], [['cover'], true, ['south']]])],
    ['a fan left off that should be off', followed([{ action: 'fan', target: 'air', run: false }], [[['fan'], false]])],
    ['the tube fan run', followed([{ action: 'tube-fan', run: true }], [[['tube'], true]])],
    ['vents told, which are shut anyway', followed([], [[['vents'], true]])],
    ['picked or not: the same temperatures', followed([{ action: 'harvest', target: 'north', crop: 'kale', by: BY }], [])],
    ['a cover told that was counted on', followed([], [[['cover'], true]], [COUNTED])],
    ['a heater told before the forecast', followed([], [[['heater'], true, undefined, -60]])],
    ['what was never on left off', followed([], [[['heater'], false]])],
  ])('as planned: %s', (_name, found) => {
    expect(found).toBe('as-planned');
  });

  it.each([
    ['a planned cover left off', followed([cover('north')], [[['cover'], false]])],
    ['one of two beds left open', followed([cover('north'), cover('south')], [[['cover'], true], [['cover'], false, ['south']]])],
    ['a heater that nobody planned', followed([], [[['heater'], true]])],
    ['a cover taken off that was counted on', followed([], [[['cover'], false]], [COUNTED])],
    ['a fan switched off that was counted on', followed([], [[['tube'], false]], [COUNTED])],
  ])('otherwise: %s', (_name, found) => {
    expect(found).toBe('otherwise');
  });

  it.each([
    ['nothing told of a plan', followed([cover('north')], [])],
    ['one of two beds told', followed([cover('north'), cover('south')], [[['cover'], true, ['north']]])],
  ])('not told: %s', (_name, found) => {
    expect(found).toBe('not-told');
  });
});
