import { describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { FAN_PLACES, NO_FANS, NO_TROUBLES, type Controls, type FanPlace } from '../../engine/night/controls.js';
import type { House } from '../../engine/greenhouse/house.js';
import type { PlaceKey } from '../../engine/night/places.js';
import { CLEAR_COLD_NIGHT, hourOfLastNightS, INSIDE, referenceHouse, runInventedNight, type InventedWeather } from '../fixtures/houses.js';

const EVENING_S = hourOfLastNightS(CLEAR_COLD_NIGHT, -8);
const OVERCAST: InventedWeather = { ...CLEAR_COLD_NIGHT, lastNightCloud: 1 };
const DRY: GreenhouseFile['soil'] = { kind: 'sand', moisture: 'dry', pathMoisture: 'dry' };
const ROUNDING_K = 1e-6;

type NightControls = (house: House) => Partial<Controls>;

/** Low of a place after sunset, with controls set from the evening on. */
function lowK(changes: Partial<GreenhouseFile>, atNight: NightControls = () => ({}), options: { place?: PlaceKey; weather?: InventedWeather } = {}): number {
  const house = referenceHouse(changes);
  const night = runInventedNight(house, options.weather ?? CLEAR_COLD_NIGHT, { controls: (timeS) => (timeS > EVENING_S ? atNight(house) : {}) });
  return night.lowK(options.place ?? INSIDE);
}

const neverColder = (lows: readonly number[]): void => lows.slice(1).forEach((low, i) => expect(low).toBeGreaterThan(lows[i]! - ROUNDING_K));
const fanOn = (place: FanPlace): NightControls => () => ({ fansOn: { ...NO_FANS, [place]: true } });
const MAINS = { airflow: 150, power: 20 } as const;

describe('more of a device is never colder at dawn', () => {
  it.each([['clear', {}, CLEAR_COLD_NIGHT], ['overcast', {}, OVERCAST], ['clear, dry sand', { soil: DRY }, CLEAR_COLD_NIGHT]] as const)('drums, after three days in the house: %s', (_name, changes, weather) => {
    neverColder([0, 6, 18].map((count) => lowK({ ...changes, ...(count === 0 ? {} : { drums: [{ litres: 208, count }] }) }, undefined, { weather })));
  });

  it('that there is water brings more than that the sun falls on it', () => {
    const [none, shaded, sunny] = [lowK({}), ...[false, true].map((sun) => lowK({ drums: [{ litres: 208, count: 16, sunny: sun }] }))] as [number, number, number];
    expect(sunny).toBeGreaterThan(shaded - ROUNDING_K);
    expect(shaded - none).toBeGreaterThan(sunny - shaded);
  });

  it('length of buried tubes, each kept going by the same fan', () => {
    neverColder([2, 5, 10, 20, 40].map((length) => lowK({ tubes: { length, count: 2, fan: MAINS } }, fanOn('tubes'))));
  });

  it('insulation of the wall, and masonry once it has had its three weeks to warm up', () => {
    neverColder([0, 0.02, 0.05, 0.1, 0.2].map((foam) => lowK({ solidWall: { height: 1.8, foam, masonry: 0.2 } })));
    const weeks = { ...CLEAR_COLD_NIGHT, sunnyDays: 21 };
    neverColder([0, 0.1, 0.2, 0.4].map((masonry) => lowK({ solidWall: { height: 1.8, foam: 0.05, masonry } }, undefined, { weather: weeks })));
  });

  it('warmth of the room behind a lean-to', () => {
    neverColder([5, 12, 20].map((behind) => lowK({ shape: 'lean-to', sideHeight: 1.2, solidWall: { masonry: 0.2, foam: 0, behind } })));
  });

  it('depth and thickness of foam along the edge', () => {
    neverColder([0.2, 0.6, 1.2].map((depth) => lowK({ edgeInsulation: { depth } })));
    neverColder([0.02, 0.05].map((thickness) => lowK({ edgeInsulation: { depth: 0.6, thickness } })));
  });

  it.each(['film', 'fabric', 'foil'] as const)('a drawn curtain, by at least 1 K over the same one open: %s', (kind) => {
    for (const place of [INSIDE, { place: 'leaf', bed: 'north' }] as const) {
      expect(lowK({ curtain: { kind } }, () => ({ curtainDrawn: true }), { place }) - lowK({ curtain: { kind } }, undefined, { place })).toBeGreaterThan(1);
    }
  });

  it('a second cover, at the plants and on their leaves', () => {
    const bed = (second: boolean): Partial<GreenhouseFile> => ({ beds: [{ name: 'north', area: 10, crops: ['kale'], cover: { kind: 'fabric', weight: 30, ...(second ? { second: { kind: 'fabric', weight: 17 } } : {}) } }] });
    const laid: NightControls = (house) => ({ coverOn: house.columns.map(({ rowCover }) => rowCover !== null) });
    for (const place of ['cover', 'leaf'] as const) {
      const at = { place: { place, bed: 'north' } } as const;
      neverColder([lowK(bed(false), undefined, at), lowK(bed(false), laid, at), lowK(bed(true), laid, at)]);
    }
  });

  it('stones, compost and heat', () => {
    neverColder([0.2, 1, 3].map((volume) => lowK({ stones: [{ volume }] })));
    neverColder([0.3, 1, 3].map((volume) => lowK({ compost: { volume, started: '2026-11-12' } })));
    neverColder([100, 400, 1600].map((power) => lowK({ heater: { kind: 'candles', power } }, () => ({ heaterOn: true }))));
  });

  it('a panel of two walls over single glass', () => {
    neverColder([lowK({ layers: [{ film: 'glass' }] }), lowK({ layers: [{ film: 'twin-wall' }] }), lowK({ layers: [{ film: 'twin-wall' }, { film: 'standard' }] })]);
  });
});

describe('snow that fell on the roof at sunset of a clear night', () => {
  const snowGainK = (changes: Partial<GreenhouseFile>, depthM: number): number => lowK({ ...changes, now: { snowOnRoof: depthM } }, () => ({ troubles: { ...NO_TROUBLES, roofSnowM: depthM } })) - lowK(changes);

  it.each([['half-round', {}], ['gable', { shape: 'gable', sideHeight: 1.2 }]] as const)('never leaves a house of two films colder at dawn: %s', (_name, changes) => {
    for (const depthM of [0.02, 0.1, 0.3]) expect(snowGainK(changes, depthM)).toBeGreaterThan(0);
  });
});

const withFan = (place: FanPlace, fan: NonNullable<GreenhouseFile['fan']>): Partial<GreenhouseFile> => {
  switch (place) {
    case 'tubes':
      return { tubes: { length: 15, count: 2, fan } };
    case 'stone-box':
      return { stoneBox: { volume: 0.5, glazed: 1, fan } };
    case 'heap':
      return { compost: { volume: 1, started: '2026-11-12', fan } };
    case 'air':
      return { fan };
  }
};

describe.each(FAN_PLACES)('fan at %s', (place) => {
  it('that the sun drives brings nothing by night, however it is switched', () => {
    const sunDriven = withFan(place, { ...MAINS, supply: 'sun' });
    expect(lowK(sunDriven, fanOn(place))).toBe(lowK(sunDriven));
  });

  it('on the mains or a battery does change the night', () => {
    for (const supply of ['mains', 'battery'] as const) {
      const driven = withFan(place, { ...MAINS, supply, ...(supply === 'battery' ? { battery: 240 } : {}) });
      expect(Math.abs(lowK(driven, fanOn(place)) - lowK(driven))).toBeGreaterThan(0.01);
    }
  });

  it('that is dead stands as if switched off; a power cut stops it on the mains and not on a battery', () => {
    const night = (supply: 'mains' | 'battery', troubles: Partial<Controls['troubles']>): number =>
      lowK(withFan(place, { ...MAINS, supply, ...(supply === 'battery' ? { battery: 240 } : {}) }), () => ({ fansOn: { ...NO_FANS, [place]: true }, troubles: { ...NO_TROUBLES, ...troubles } }));
    const off = lowK(withFan(place, MAINS));
    expect(night('mains', { powerOut: true })).toBe(off);
    expect(night('battery', { fansDead: true })).toBe(off);
    expect(night('battery', { powerOut: true })).not.toBe(off);
  });
});

describe('a power cut', () => {
  const heater = (kind: NonNullable<GreenhouseFile['heater']>['kind']): Partial<GreenhouseFile> => ({ heater: { kind, power: 1000, thermostat: false } });
  const cut: NightControls = () => ({ heaterOn: true, troubles: { ...NO_TROUBLES, powerOut: true } });

  it.each(['electric', 'vented-propane', 'vented-kerosene', 'vented-gas'] as const)('stops what needs current: %s', (kind) => {
    expect(lowK(heater(kind), cut)).toBe(lowK(heater(kind)));
  });

  it.each(['candles', 'wood-stove', 'unvented-propane', 'unvented-kerosene', 'unvented-gas'] as const)('does not stop a flame that needs none: %s', (kind) => {
    expect(lowK(heater(kind), cut)).toBe(lowK(heater(kind), () => ({ heaterOn: true })));
    expect(lowK(heater(kind), cut)).toBeGreaterThan(lowK(heater(kind)) + 1);
  });

  it('takes the air from between two films that a blower kept apart: colder, by less than 1.5 K', () => {
    const loss = lowK({ blower: true }) - lowK({ blower: true }, () => ({ troubles: { ...NO_TROUBLES, blowerOff: true } }));
    expect(loss).toBeGreaterThan(0.05);
    expect(loss).toBeLessThan(1.5);
  });
});

describe('an open door and a hole in the film', () => {
  it('cool the more the larger they are', () => {
    const opened = (openingM2: number): number => lowK({}, () => ({ troubles: { ...NO_TROUBLES, openingM2 } }));
    neverColder([1.6, 0.5, 0.1, 0].map(opened));
  });
});
