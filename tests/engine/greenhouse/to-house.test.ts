import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FILMS } from '../../../engine/data/films.js';
import { fabricCover, FILM_TUNNEL } from '../../../engine/data/row-covers.js';
import { checkGreenhouse } from '../../../engine/greenhouse/check.js';
import { toHouse } from '../../../engine/greenhouse/to-house.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import { fileWith, houseWith } from './files.js';

const areasM2 = (house: ReturnType<typeof houseWith>): readonly (readonly [string, string, number])[] => house.columns.map(({ name, kind, areaM2 }) => [name, kind, Math.round(areaM2 * 100) / 100]);
const sumM2 = (house: ReturnType<typeof houseWith>): number => house.columns.reduce((sum, { areaM2 }) => sum + areaM2, 0);

describe('floor', () => {
  it('without beds is edge and path: a strip of 0.4 m along walls of 4 and 8 m', () => {
    expect(areasM2(houseWith())).toEqual([['edge', 'edge', 8.96], ['path', 'path', 23.04]]);
  });

  it('with beds keeps their order and areas, then edge and path', () => {
    expect(areasM2(houseWith({ beds: [{ name: 'north', area: 6 }, { name: 'south', area: '65 sq ft' }] }))).toEqual([['north', 'bed', 6], ['south', 'bed', 6.04], ['edge', 'edge', 8.96], ['path', 'path', 11]]);
  });

  it('gives beds without an area equal shares of what is left of seven tenths inside the edge', () => {
    expect(areasM2(houseWith({ beds: [{ name: 'north' }, { name: 'south', area: 6 }, { name: 'west' }] })).slice(0, 3)).toEqual([['north', 'bed', 5.06], ['south', 'bed', 6], ['west', 'bed', 5.06]]);
  });

  it('is all bed when one bed fills it', () => {
    expect(areasM2(houseWith({ beds: [{ name: 'all', area: 32 }] }))).toEqual([['all', 'bed', 32]]);
  });

  it('adds up, and a strip of less than 0.1 m2 is the most that is dropped', () => {
    const side = fc.double({ min: 1, max: 60, noNaN: true });
    const beds = fc.array(fc.option(fc.double({ min: 0.1, max: 40, noNaN: true }), { nil: undefined }), { maxLength: 12 });
    fc.assert(fc.property(side, side, beds, (width, length, areas) => {
      const check = checkGreenhouse(fileWith({ size: { width, length, height: 2.4 }, beds: areas.map((area, i) => ({ name: `bed ${i}`, ...(area === undefined ? {} : { area }) })) }));
      fc.pre(check.ok);
      if (!check.ok) return;
      const house = toHouse(check.greenhouse);
      expect(sumM2(house)).toBeLessThanOrEqual(house.geometry.floorAreaM2 + 0.01);
      expect(sumM2(house)).toBeGreaterThanOrEqual(house.geometry.floorAreaM2 - 0.1);
      for (const { areaM2 } of house.columns) expect(areaM2).toBeGreaterThan(0);
    }));
  });
});

describe('house in SI', () => {
  it('has films from inside to outside, though the file names the outer one first', () => {
    expect(houseWith({ layers: [{ film: 'thermal' }, { film: 'standard' }] }).films).toEqual([FILMS.standard, FILMS.thermal]);
  });

  it('has the covers that the beds have, laid or not', () => {
    const house = houseWith({ beds: [{ name: 'a', cover: { kind: 'fabric', weight: '1 oz' } }, { name: 'b', cover: { kind: 'film-tunnel' } }, { name: 'c' }] });
    expect(house.columns.slice(0, 3).map(({ rowCover }) => rowCover)).toEqual([fabricCover(33.9057475), FILM_TUNNEL, null]);
  });

  it('has leaves only where crops grow', () => {
    const house = houseWith({ beds: [{ name: 'a', crops: ['kale'] }, { name: 'b' }] });
    expect(house.columns[0]!.foliageKgPerM2).toBeGreaterThan(0);
    expect(house.columns[1]!.foliageKgPerM2).toBe(0);
  });

  it('has vents, heater and drums only when the file has', () => {
    const bare = houseWith();
    expect([bare.vents, bare.heater, bare.drums]).toEqual([null, null, []]);
    const full = houseWith({ vents: { area: '20 sq ft', openAbove: '75 F' }, heater: { kind: 'vented-propane', power: '10000 BTU/h' }, drums: [{ litres: '55 gal', count: 4 }] });
    expect(full.vents!.openAreaM2).toBeCloseTo(1.8580608, 7);
    expect(full.vents!.openAboveK).toBeCloseTo(celsiusToKelvin(215 / 9), 9);
    expect(full.heater!.deliveredW).toBeCloseTo(0.8 * 2930.7107, 3);
    expect(full.drums[0]!.litresEach).toBeCloseTo(208.19764812, 8);
  });

  it('in feet is the same as in metres', () => {
    const [feet, metres] = [houseWith({ size: { width: '13 ft', length: '26 ft', height: '8 ft' } }), houseWith({ size: { width: 3.9624, length: 7.9248, height: 2.4384 } })];
    expect(feet.geometry.volumeM3).toBeCloseTo(metres.geometry.volumeM3, 9);
    expect(feet.geometry.coverAreaM2).toBeCloseTo(metres.geometry.coverAreaM2, 9);
  });

  it('lies at sea level until somebody knows better', () => {
    expect(houseWith().place).toEqual({ latitude: 45.1, longitude: -72.2, elevationM: 0 });
    expect(houseWith({ place: { latitude: 45.1, longitude: -72.2, elevation: '590 ft' } }).place.elevationM).toBeCloseTo(179.832, 9);
  });
});

describe('geometry', () => {
  it('of a half-round of 4 x 8 x 2 m is half a cylinder', () => {
    const { geometry } = houseWith({ size: { width: 4, length: 8, height: 2 } });
    expect(geometry.floorAreaM2).toBe(32);
    expect(geometry.perimeterM).toBe(24);
    expect(geometry.volumeM3).toBeCloseTo(16 * Math.PI, 9);
    expect(geometry.coverAreaM2 / (20 * Math.PI)).toBeCloseTo(1, 4);
  });

  it('of a gable of 4 x 8 m, 1.5 m at the side and 3 m at the ridge: slopes of 2.5 m', () => {
    const { geometry } = houseWith({ shape: 'gable', size: { width: 4, length: 8, height: 3 }, sideHeight: 1.5 });
    expect(geometry.volumeM3).toBeCloseTo(72, 9);
    expect(geometry.coverAreaM2).toBeCloseTo(2 * 2.5 * 8 + 2 * 1.5 * 8 + 2 * 9, 9);
  });
});
