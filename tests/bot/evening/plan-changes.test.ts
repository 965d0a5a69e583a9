import { describe, expect, it } from 'vitest';
import type { Advisory } from '../../../bot/features/evening/advisory.js';
import { issueAdvisory } from '../../../bot/features/evening/issue-advisory.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import { DEMO_PLACE, demoSource } from '../../../bot/weather/demo.js';
import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import { BARE_TUNNEL, DOUBLE_WITH_HEAT } from '../../fixtures/greenhouse-files.js';

// The demo's invented clear cold night: what the plan does when one thing about the house changes.
const clock = { nowS: (): number => Date.parse('2026-11-25T20:00:00Z') / 1000 };
const place = { latitude: DEMO_PLACE.latitude, longitude: DEMO_PLACE.longitude, elevation: 180 };

async function advise(file: Omit<GreenhouseFile, 'place'>): Promise<Advisory> {
  const check = checkGreenhouse({ ...file, place });
  if (!check.ok) throw new Error(JSON.stringify(check.faults));
  return (await issueAdvisory({ greenhouseId: 'test', greenhouse: check.greenhouse, zone: 'America/Toronto' }, { clock, weather: demoSource(clock), store: null, workOut: workOutHere })).advisory;
}

const actionsOf = (advisory: Advisory): string[] => advisory.plan.actions.map(({ action }) => action);
const BED = DOUBLE_WITH_HEAT.beds[0]!;
const withCrop = (crop: string): Omit<GreenhouseFile, 'place'> => ({ ...DOUBLE_WITH_HEAT, beds: [{ ...BED, crops: [crop] }] });

describe('the plan follows what is at stake', () => {
  it('asks for work for a crop whose limit the night crosses, and for none when the crop stands it', async () => {
    const tender = await advise(withCrop('pak choi'));
    const hardy = await advise(withCrop('sweet william'));
    expect(actionsOf(tender).some((action) => action === 'cover' || action === 'heater')).toBe(true);
    expect(actionsOf(hardy)).toEqual([]);
    expect(hardy.crops[0]).toMatchObject({ verdict: 'safe' });
  });

  it('heats for a crop that no cover can save, and does not without a heater', async () => {
    const heated = await advise(withCrop('tomato'));
    const unheated = await advise({ ...withCrop('tomato'), heater: undefined });
    expect(actionsOf(heated)).toContain('heater');
    expect(actionsOf(unheated)).not.toContain('heater');
    expect(unheated.crops[0]!.damageProbability).toBeGreaterThan(heated.crops[0]!.damageProbability);
  });

  it('gives the heater up when its fuel costs more than the crop', async () => {
    const cheap = await advise(withCrop('tomato'));
    const dear = await advise({ ...withCrop('tomato'), heater: { ...DOUBLE_WITH_HEAT.heater, price: 10 * DOUBLE_WITH_HEAT.heater.price * 3 } });
    const tenfold = await advise({ ...withCrop('pak choi'), heater: { ...DOUBLE_WITH_HEAT.heater, price: 10 * DOUBLE_WITH_HEAT.heater.price } });
    expect(actionsOf(cheap)).toContain('heater');
    expect(actionsOf(dear)).not.toContain('heater');
    expect(actionsOf(tenfold)).not.toContain('heater');
  });

  it('tells size, hours, energy and cost of heat, with the cautions', async () => {
    const advisory = await advise(withCrop('tomato'));
    expect(advisory.plan.heater).toMatchObject({ kind: 'electric', powerW: 2000, fuelUnit: 'kWh', priceIsPlaceholder: false });
    const { energyKwh, fullPowerHours, cost } = advisory.plan.heater!;
    expect(energyKwh).toBeCloseTo(2 * fullPowerHours, 0);
    expect(cost).toBeCloseTo(energyKwh * 0.1, 1);
    expect(advisory.cautions.map(({ code }) => code)).toContain('heater-electric');
  });

  it('never advises a flame before its safety words are read', async () => {
    const propane = { kind: 'vented-propane', power: 3000 } as const;
    const unread = await advise({ ...withCrop('tomato'), heater: propane });
    const read = await advise({ ...withCrop('tomato'), heater: { ...propane, safetyRead: true } });
    expect(unread.alternatives.flatMap(({ actions }) => actions.map(({ action }) => action))).not.toContain('heater');
    expect(unread.cautions.map(({ code }) => code)).toContain('flame-not-advised');
    expect(actionsOf(read)).toContain('heater');
    expect(read.cautions.map(({ code }) => code)).toContain('flame-vented');
  });

  it('never advises a flame without a flue, whatever was read, and counts one that burns all the same', async () => {
    const heater = { kind: 'unvented-propane', power: 3000, safetyRead: true } as const;
    const left = await advise({ ...withCrop('tomato'), heater });
    expect([left.plan, ...left.alternatives].flatMap(({ actions }) => actions.map(({ action }) => action))).not.toContain('heater');
    expect(left.cautions.map(({ code }) => code)).toContain('unvented-left-out');
    const burning = await advise({ ...withCrop('tomato'), heater: { ...heater, on: true } });
    const low = ({ places }: typeof left): number => places.find(({ place }) => place === 'inside')!.lowC.mean;
    expect(low(burning)).toBeGreaterThan(low(left) + 1);
    expect(burning.cautions.map(({ code }) => code)).toContain('flame-unvented');
  });

  it('judges one crop by the air at its place and another by its leaf on the same night', async () => {
    const advisory = await advise(BARE_TUNNEL);
    const [lettuce, spinach] = [advisory.crops.find(({ asked }) => asked === 'lettuce')!, advisory.crops.find(({ asked }) => asked === 'spinach')!];
    expect(lettuce.judgedAt).toBe(actionsOf(advisory).includes('cover') ? 'cover' : 'inside');
    expect(spinach.judgedAt).toBe('leaf');
  });

  it('counts a cover that lies on the bed already and asks for nothing twice', async () => {
    const covered = await advise({ ...withCrop('pak choi'), beds: [{ ...BED, cover: { kind: 'fabric', weight: 30, on: true } }], heater: undefined });
    expect(actionsOf(covered)).not.toContain('cover');
    expect(covered.crops[0]!.judgedAt).toBe('cover');
    expect(covered.morning.some(({ action }) => action === 'uncover')).toBe(true);
  });
});
