import { describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../../engine/greenhouse/greenhouse.js';
import { isThreatened } from '../../../engine/plan/cold-spell.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import { inventedEvening, inventedWeek } from '../../fixtures/invented-evening.js';
import { CLEAR_COLD_NIGHT, type InventedWeather } from '../../fixtures/houses.js';

const TENDER: GreenhouseFile['beds'] = [{ name: 'north', area: 10, crops: ['lettuce'], worth: 200 }];
const insideLowC = ({ outlook }: { outlook: { places: readonly { key: { place: string }; q50K: number }[] } }): number => kelvinToCelsius(outlook.places.find(({ key }) => key.place === 'inside')!.q50K);

describe('a curtain', () => {
  const { chosen, nothing, morning } = inventedEvening({ beds: TENDER, curtain: { kind: 'foil' } });

  it('is drawn when it warms the plants, and opened in the morning', () => {
    expect(chosen.actions.map(({ action }) => action)).toContain('curtain');
    expect(insideLowC(chosen)).toBeGreaterThan(insideLowC(nothing) + 1);
    expect(nothing.actions).toEqual([]);
    expect(morning.map(({ action }) => action)).toContain('curtain');
  });

  it('that is drawn already is counted on and not asked for', () => {
    const drawn = inventedEvening({ beds: TENDER, curtain: { kind: 'foil', drawn: true } });
    expect(drawn.chosen.actions.map(({ action }) => action)).not.toContain('curtain');
    expect(insideLowC(drawn.nothing)).toBeGreaterThan(insideLowC(nothing) + 1);
  });
});

describe('a power cut', () => {
  const heated: Partial<GreenhouseFile> = { beds: TENDER, heater: { kind: 'electric', power: 2500, price: 0.05 } };

  it('is told for the plan that leans on the mains: what stops, and how low it gets', () => {
    const plan = inventedEvening(heated);
    expect(plan.chosen.actions.map(({ action }) => action)).toContain('heater');
    expect(plan.ifPowerFails!.stops).toEqual(['heater']);
    expect(insideLowC(plan.ifPowerFails!)).toBeLessThan(insideLowC(plan.chosen) - 1);
    // Without heat the plan is that of doing nothing, give or take the vents.
    expect(Math.abs(insideLowC(plan.ifPowerFails!) - insideLowC(plan.nothing))).toBeLessThan(0.3);
  });

  it('that has come leaves the electric heater out of the plan', () => {
    const dark = inventedEvening({ ...heated, now: { powerOut: true } });
    expect(dark.plans.flatMap(({ actions }) => actions.map(({ action }) => action))).not.toContain('heater');
    expect(dark.ifPowerFails).toBeNull();
  });

  it('does not stop a wood stove, and an empty shed does', () => {
    const stove: Partial<GreenhouseFile> = { beds: TENDER, heater: { kind: 'wood-stove', power: 1500, safetyRead: true, price: 0.05 } };
    const lit = inventedEvening({ ...stove, now: { powerOut: true } });
    const heats = lit.plans.flatMap(({ choices }) => (choices.heater ? [choices.heater] : []));
    expect(heats.length).toBeGreaterThan(0);
    // A filling burns 5 h from bedtime at the latest, not all night.
    for (const heat of heats) expect(heat.untilS - heat.fromS).toBeLessThanOrEqual(5 * 3600);
    expect(inventedEvening({ ...stove, now: { fuelOut: true } }).plans.every(({ choices }) => choices.heater === null)).toBe(true);
  });
});

describe('what is wrong this evening', () => {
  it.each([
    ['an open door', { doorOpen: true }],
    ['a hole in the film', { tornFilm: 1 }],
  ] as const)('%s cools the night', (_name, now) => {
    expect(insideLowC(inventedEvening({ beds: TENDER, now }).nothing)).toBeLessThan(insideLowC(inventedEvening({ beds: TENDER }).nothing) - 0.5);
  });

  it('a blower that stopped cools the night a little', () => {
    const withBlower = { beds: TENDER, blower: true };
    expect(insideLowC(inventedEvening({ ...withBlower, now: { blowerOff: true } }).nothing)).toBeLessThan(insideLowC(inventedEvening(withBlower).nothing));
  });

  it('snow on the roof is to be cleared in the morning', () => {
    expect(inventedEvening({ beds: TENDER, now: { snowOnRoof: 0.15 } }).morning.map(({ action }) => action)).toContain('clear-snow');
  });
});

describe('the nights ahead', () => {
  const WEEK: InventedWeather = { ...CLEAR_COLD_NIGHT, sunnyDays: 6, dayHighK: celsiusToKelvin(-2), nightLowK: celsiusToKelvin(-11), lastLowK: celsiusToKelvin(-14), peakSunWPerM2: 150 };
  const beds: GreenhouseFile['beds'] = [{ name: 'north', area: 10, crops: ['lettuce'], cover: { kind: 'fabric', weight: 50 } }, { name: 'south', area: 10, crops: ['lettuce'] }];
  const week = inventedWeek({ beds, drums: [{ litres: 208, count: 6 }], heater: { kind: 'vented-propane', power: 4000, safetyRead: true } }, WEEK);

  it('come one after the other, doubt growing, stores running down in dull cold', () => {
    expect(week.usual.length).toBeGreaterThanOrEqual(4);
    week.usual.slice(1).forEach((night, n) => {
      expect(night.span.sunsetS - week.usual[n]!.span.sunsetS).toBeGreaterThan(23.9 * 3600);
      expect(night.doubt.airTempSdK).toBeGreaterThan(week.usual[n]!.doubt.airTempSdK);
    });
    const at = (place: string): number[] => week.usual.map(({ storesAtSunset }) => storesAtSunset.find(({ key }) => key.place === place)!.tempK);
    expect(at('soil').at(-1)!).toBeLessThan(at('soil')[0]! - 0.3);
    // The drums stand at 0 degrees C while they freeze: they give heat without getting colder.
    expect(at('water').at(-1)!).toBeLessThan(at('water')[0]!);
  });

  it('make a cold spell, with what to prepare: covers, fuel, picking', () => {
    expect(week.spell).not.toBeNull();
    expect(week.spell!.nights.every(isThreatened)).toBe(true);
    expect(week.spell!.nights.length).toBeGreaterThanOrEqual(2);
    const fuel = week.prepare.find(({ what }) => what === 'fuel');
    expect(fuel).toMatchObject({ nights: week.spell!.nights.length });
    expect(week.prepare.map(({ what }) => what).some((what) => what === 'cover-each-night' || what === 'get-cover' || what === 'pick')).toBe(true);
  });

  it('covered nights keep the covered bed warmer, night for night', () => {
    week.usual.forEach((night, n) => expect(week.covered[n]!.outlook.crops[0]!.expectedDamage).toBeLessThanOrEqual(night.outlook.crops[0]!.expectedDamage));
  });

  it('the first night agrees with the evening that is planned for it', () => {
    const plan = inventedEvening({ beds: TENDER });
    const ahead = inventedWeek({ beds: TENDER }, { ...CLEAR_COLD_NIGHT, sunnyDays: 2 });
    const alone = inventedEvening({ beds: TENDER }, { ...CLEAR_COLD_NIGHT, sunnyDays: 2 });
    expect(Number.isFinite(insideLowC(plan.nothing))).toBe(true);
    // The evening knows its scenarios from now on, the week from six hours before sunset on: nearly the same.
    expect(Math.abs(insideLowC(ahead.usual[0]!) - insideLowC(alone.nothing))).toBeLessThan(0.3);
  });

  it('a mild week has no spell and nothing to prepare', () => {
    const mild = inventedWeek({ beds }, { ...WEEK, dayHighK: celsiusToKelvin(14), nightLowK: celsiusToKelvin(8), lastLowK: celsiusToKelvin(8) });
    expect(mild.spell).toBeNull();
    expect(mild.prepare).toEqual([]);
  });
});
