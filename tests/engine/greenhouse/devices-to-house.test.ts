import { describe, expect, it } from 'vitest';
import { BLACK_COAT, STONES } from '../../../engine/data/stones.js';
import { epochOfDateS } from '../../../engine/greenhouse/calendar-date.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import { houseWith } from './files.js';

describe('fans', () => {
  it('are in m3/s, and run as long as four fifths of their battery', () => {
    const fan = houseWith({ fan: { airflow: 360, power: 20, supply: 'battery', battery: 250 } }).stirringFan!;
    expect(fan.airflowM3PerS).toBeCloseTo(0.1, 9);
    expect(fan.batteryS).toBeCloseTo((0.8 * 250 * 3600) / 20, 9);
    expect(houseWith({ fan: { airflow: '100 cfm', power: 20 } }).stirringFan!.airflowM3PerS).toBeCloseTo(100 * 0.3048 ** 3 / 60, 6);
  });

  it('on the mains or the sun have no battery to run down', () => {
    for (const supply of ['mains', 'sun'] as const) expect(houseWith({ fan: { airflow: 360, power: 20, supply } }).stirringFan!.batteryS).toBeNull();
  });
});

describe('stones and box', () => {
  it('take up the sun by their own colour or by a black coat', () => {
    const [bare, black] = [false, true].map((blackened) => houseWith({ stones: [{ kind: 'pale gravel', volume: 1, blackened }] }).stones[0]!);
    expect(bare!.absorptance).toBe(STONES['pale gravel'].bareAbsorptance);
    expect(black!.absorptance).toBe(BLACK_COAT.absorptance);
    expect(bare!.lumps).toEqual(black!.lumps);
  });

  it('in the shade get none of it, and never more than half of what the house has', () => {
    expect(houseWith({ stones: [{ volume: 1, sunny: false }] }).stones[0]!.sunShare).toBe(0);
    expect(houseWith({ stones: [{ volume: 200 }] }).stones[0]!.sunShare).toBe(0.5);
    expect(houseWith({ stoneBox: { volume: 1, glazed: 3.2 } }).stoneBox!.sunShare).toBeCloseTo(3.2 / 32, 9);
  });

  it('of a box are reached by its fan to the last', () => {
    const { lumps } = houseWith({ stoneBox: { volume: 2, glazed: 1 } }).stoneBox!;
    expect(lumps.skinJPerK + lumps.coreJPerK).toBeCloseTo(2 * STONES.rock.volumetricHeatCapacityJPerM3K, 3);
  });
});

describe('drums', () => {
  it('that touch give 0.7 of what free ones give; their number counts', () => {
    const [free, touching] = [false, true].map((touches) => houseWith({ drums: [{ litres: 208, count: 5, touching: touches }] }).drums[0]!);
    expect(touching!.conductanceWPerK / free!.conductanceWPerK).toBeCloseTo(0.7, 9);
    expect(free!.conductanceWPerK).toBeCloseTo(5 * 12.6, 9);
    // What they hide of each other they hide from the sun too.
    expect(touching!.sunShare / free!.sunShare).toBeCloseTo(0.7, 9);
  });
});

describe('solid wall', () => {
  it('of foam alone still has boards, and stands 2 m high on the shady side', () => {
    const { solidWall, geometry } = houseWith({ solidWall: {} });
    expect(solidWall!.masonryM).toBeGreaterThan(0);
    expect(geometry.solidWall!.areaM2).toBeCloseTo(2 * 8, 9);
    expect(Math.cos(geometry.solidWall!.inwardAzimuthRad)).toBeCloseTo(-1, 9);
    expect(Math.cos(houseWith({ place: { latitude: -45, longitude: 170 }, solidWall: {} }).geometry.solidWall!.inwardAzimuthRad)).toBeCloseTo(1, 9);
  });

  it('is the whole back of a lean-to, described or not', () => {
    for (const solidWall of [undefined, { masonry: 0.3 }]) {
      const house = houseWith({ shape: 'lean-to', sideHeight: 1.2, ...(solidWall ? { solidWall } : {}) });
      expect(house.geometry.solidWall!.areaM2).toBeCloseTo(2.4 * 8, 9);
      expect(house.solidWall!.masonryM).toBeGreaterThan(0.1);
    }
  });

  it('lets less out with foam than without, and knows the room behind it', () => {
    const [bare, foamed] = [0, 0.05].map((foam) => houseWith({ solidWall: { foam, masonry: 0.2 } }).solidWall!.outwardWPerM2K);
    expect(foamed!).toBeCloseTo(1 / (1 / 12 + 0.05 / 0.034), 9);
    expect(foamed!).toBeLessThan(bare!);
    expect(houseWith({ solidWall: { behind: '65 F' } }).solidWall!.behindTempK).toBeCloseTo(celsiusToKelvin(18.333333), 4);
    expect(houseWith({ solidWall: {} }).solidWall!.behindTempK).toBeNull();
  });
});

describe('tubes, compost, blower, snow', () => {
  it('tubes lie in the soil of the beds', () => {
    const { tubes, columns } = houseWith({ soil: { kind: 'clay', moisture: 'wet' }, beds: [{ name: 'a' }], tubes: { length: 12, fan: { airflow: 100 } } });
    expect(tubes!.soil).toEqual(columns[0]!.soil);
    expect([tubes!.lengthM, tubes!.count, tubes!.diameterM, tubes!.depthM]).toEqual([12, 1, 0.1, 0.6]);
  });

  it('a heap knows its day and its bed; one with a fan lies against none', () => {
    const beds = [{ name: 'a' }, { name: 'b' }];
    const against = houseWith({ beds, compost: { volume: 1, started: '2026-11-02', against: 'b' } });
    expect(against.heap!.startedS).toBe(epochOfDateS('2026-11-02'));
    expect(against.columns[against.heap!.column!]!.name).toBe('b');
    expect(houseWith({ beds, compost: { volume: 1, started: '2026-11-02', fan: { airflow: 60 } } }).heap).toMatchObject({ column: null, fan: { airflowM3PerS: 60 / 3600 } });
  });

  it('only a blower keeps films apart that lie on each other without it', () => {
    const layers = [{ film: 'standard' as const }, { film: 'standard' as const }];
    const [plain, blown] = [false, true].map((blower) => houseWith({ layers, blower }));
    expect(plain!.slackGapsWPerM2K).toEqual(plain!.gapsWPerM2K);
    expect(blown!.slackGapsWPerM2K[0]!).toBeGreaterThan(blown!.gapsWPerM2K[0]!);
  });

  it('a plane for snow is carried only where snow lies', () => {
    expect(houseWith().mayHoldSnow).toBe(false);
    expect(houseWith({ now: { snowOnRoof: '4 in' } }).mayHoldSnow).toBe(true);
  });
});
