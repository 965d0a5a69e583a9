import { describe, expect, it } from 'vitest';
import { checkGreenhouse } from '../../../engine/greenhouse/check.js';
import { checked, faultsOf, fileWith, LEAST_FILE } from './files.js';

describe('the least file', () => {
  it('says place, size and layers, and the rest is filled in', () => {
    expect(checked()).toEqual({
      version: 1,
      name: 'the greenhouse',
      place: { latitude: 45.1, longitude: -72.2, surroundings: 'wooded', openSky: 0.75 },
      size: { width: 4, length: 8, height: 2.4 },
      layers: [{ film: 'standard' }],
      blower: false,
      shape: 'half-round',
      sideHeight: 1.5,
      ridgeRuns: 'east-west',
      leakage: 'ordinary',
      soil: expect.objectContaining({ kind: 'loam', moisture: 'moist' }) as unknown,
      beds: [],
      drums: [],
      stones: [],
      thermometers: [],
      now: { snowOnRoof: 0, powerOut: false, blowerOff: false, tornFilm: 0, doorOpen: false, fuelOut: false, fansDead: false },
      grower: { hourWorth: 15, trip: 'easy', careful: 'normal', bedtime: '21:30', morningAt: '08:00', quiet: { from: '21:30', until: '06:30' }, units: 'C' },
    });
  });

  it.each(['place', 'size', 'layers'])('lacks %s: refused by name', (field) => {
    const file = Object.fromEntries(Object.entries(LEAST_FILE).filter(([name]) => name !== field));
    const faults = faultsOf(file);
    expect(faults.map((fault) => fault.field)).toEqual([field]);
    expect(faults[0]!.message).toContain('example');
  });

  it('is checked without being changed', () => {
    const file = structuredClone(fileWith({ beds: [{ name: 'north', crops: ['kale'] }] }));
    const before = JSON.stringify(file);
    checkGreenhouse(file);
    expect(JSON.stringify(file)).toBe(before);
  });

  it('filled in and checked again stays the same', () => {
    const once = checked({ beds: [{ name: 'north', area: '65 sq ft', crops: ['kale', { crop: 'minutina', hardiness: 'hardy' }], cover: { kind: 'fabric' } }], heater: { kind: 'electric', power: '5000 BTU/h' }, vents: { area: 2 }, drums: [{ litres: '55 gal', count: 2 }] });
    expect(checkGreenhouse(once)).toMatchObject({ ok: true, greenhouse: once });
  });
});

describe('defaults inside optional parts', () => {
  it('of a cover, a heater, vents, drums and a bed', () => {
    expect(checked({ beds: [{ name: 'north', cover: { kind: 'fabric' } }] }).beds[0]).toEqual({ name: 'north', crops: [], cover: { kind: 'fabric', weight: 30, on: false } });
    expect(checked({ heater: { kind: 'electric', power: 1500 } }).heater).toEqual({ kind: 'electric', power: 1500, thermostat: true, on: false, safetyRead: false });
    expect(checked({ vents: { area: 2 } }).vents).toEqual({ area: 2, openAbove: 24, opener: false });
    expect(checked({ drums: [{ litres: 208, count: 4 }] }).drums).toEqual([{ litres: 208, count: 4, touching: false, sunny: true }]);
    expect(checked({ layers: [{}] }).layers).toEqual([{ film: 'standard' }]);
  });
});

describe('unknown crops', () => {
  const unknownIn = (crops: readonly (string | { crop: string; hardiness?: 'hardy' })[]): readonly string[] => {
    const check = checkGreenhouse(fileWith({ beds: [{ name: 'north', crops }, { name: 'south', crops }] }));
    if (!check.ok) throw new Error('expected a right file');
    return check.unknownCrops;
  };

  it('are listed once, however often they grow', () => {
    expect(unknownIn(['kale', 'moonwort beet', { crop: 'sky radicle', hardiness: 'hardy' }, 'moonwort beet'])).toEqual(['moonwort beet', 'sky radicle']);
  });

  it('do not include known ones in another spelling', () => {
    expect(unknownIn(['Kale', 'LETTUCE', 'spinach', 'tomatoes'])).toEqual([]);
  });
});
