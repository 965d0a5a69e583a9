import { describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { AS_FORECAST } from '../../engine/night/forcing.js';
import type { Controls } from '../../engine/night/controls.js';
import { kelvinToCelsius, ZERO_CELSIUS_K } from '../../engine/units.js';
import { CLEAR_COLD_NIGHT, hourOfLastNightS, INSIDE, OUTSIDE, referenceHouse, runInventedNight, type InventedNight, type InventedWeather } from '../fixtures/houses.js';

const SINGLE: GreenhouseFile['layers'] = [{ film: 'standard' }];
const at = (hour: number): number => hourOfLastNightS(CLEAR_COLD_NIGHT, hour);
const heatedBetween = (fromHour: number, toHour: number) => (timeS: number): Partial<Controls> => ({ heaterOn: timeS > at(fromHour) && timeS < at(toHour) });
const run = (changes: Partial<GreenhouseFile> = {}, weather: InventedWeather = CLEAR_COLD_NIGHT, controls?: (timeS: number) => Partial<Controls>): InventedNight =>
  runInventedNight(referenceHouse(changes), weather, controls ? { controls } : {});
const insideLowK = (...given: Parameters<typeof run>): number => run(...given).lowK(INSIDE);

const base = insideLowK();

describe('weather', () => {
  it.each([['double film', undefined], ['single film', SINGLE]] as const)('each more cloud is warmer, overcast by 1.5 to 5 K: %s', (_name, layers) => {
    const lows = [0, 0.25, 0.5, 0.75, 1].map((lastNightCloud) => insideLowK(layers ? { layers } : {}, { ...CLEAR_COLD_NIGHT, lastNightCloud }));
    lows.slice(1).forEach((low, i) => expect(low).toBeGreaterThan(lows[i]!));
    expect(lows.at(-1)! - lows[0]!).toBeGreaterThan(1.5);
    expect(lows.at(-1)! - lows[0]!).toBeLessThan(5);
  });

  it('a colder sky never warms: drier air, less weight of cloud, more open sky', () => {
    expect(insideLowK({}, { ...CLEAR_COLD_NIGHT, dewPointBelowLowK: 10 })).toBeLessThan(base);
    const house = referenceHouse();
    const halfCloud = { ...CLEAR_COLD_NIGHT, lastNightCloud: 0.5 };
    const byWeight = [1, 0.9, 0.7, 0.5, 0].map((cloudWeight) => runInventedNight(house, halfCloud, { departure: { ...AS_FORECAST, cloudWeight } }).lowK(INSIDE));
    byWeight.slice(1).forEach((low, i) => expect(low).toBeLessThan(byWeight[i]!));
    const byOpenSky = [0.2, 0.5, 0.75, 1].map((openSky) => insideLowK({ place: { latitude: 45.1, longitude: -72.2, elevation: 180, openSky } }));
    byOpenSky.slice(1).forEach((low, i) => expect(low).toBeLessThan(byOpenSky[i]!));
  });

  it('weather 10 K colder cools the inside by 5 to 9.5 K: soil that freezes holds against it', () => {
    const { dayHighK, nightLowK, lastLowK } = CLEAR_COLD_NIGHT;
    const colder = insideLowK({}, { ...CLEAR_COLD_NIGHT, dayHighK: dayHighK - 10, nightLowK: nightLowK - 10, lastLowK: lastLowK - 10 });
    expect(base - colder).toBeGreaterThan(5);
    expect(base - colder).toBeLessThan(9.5);
  });

  it('dark days before cool the dawn by 0.3 to 2.5 K', () => {
    const dark = insideLowK({}, { ...CLEAR_COLD_NIGHT, peakSunWPerM2: 60, dayCloud: 1 });
    expect(base - dark).toBeGreaterThan(0.3);
    expect(base - dark).toBeLessThan(2.5);
  });
});

describe('house', () => {
  it('dry soil cools by 2 to 7 K; wet soil is not colder than moist', () => {
    const soil = (moisture: 'dry' | 'moist' | 'wet'): number => insideLowK({ soil: { kind: 'loam', moisture, pathMoisture: moisture } });
    const [dry, moist, wet] = [soil('dry'), soil('moist'), soil('wet')];
    expect(moist - dry).toBeGreaterThan(2);
    expect(moist - dry).toBeLessThan(7);
    expect(wet).toBeGreaterThan(moist - 0.05);
  });

  it('a clear night on dry soil may end below the outside air, by less than 3 K', () => {
    const night = run({ soil: { kind: 'sand', moisture: 'dry', pathMoisture: 'dry' } });
    expect(night.lowK(INSIDE) - night.lowK(OUTSIDE)).toBeLessThan(0);
    expect(night.lowK(INSIDE) - night.lowK(OUTSIDE)).toBeGreaterThan(-3);
  });

  it('two films are warmer than one by 0.2 to 3 K, films that stop longwave warmer still', () => {
    const single = insideLowK({ layers: SINGLE });
    expect(base - single).toBeGreaterThan(0.2);
    expect(base - single).toBeLessThan(3);
    expect(insideLowK({ layers: [{ film: 'ir-barrier' }, { film: 'ir-barrier' }] })).toBeGreaterThan(base);
  });

  it.each([17, 30, 50])('a fabric of %i g/m2 warms its plants by 1 to 5 K and cools the air above by 0.2 to 3 K', (weight) => {
    const beds: GreenhouseFile['beds'] = [{ name: 'bed', area: 24, crops: ['kale'], cover: { kind: 'fabric', weight } }];
    const house = referenceHouse({ beds });
    const bare = runInventedNight(house, CLEAR_COLD_NIGHT);
    const covered = runInventedNight(house, CLEAR_COLD_NIGHT, { controls: (timeS) => (timeS > at(-8) ? { coverOn: house.columns.map(({ rowCover }) => rowCover !== null) } : {}) });
    const gain = (place: 'cover' | 'leaf'): number => covered.lowK({ place, bed: 'bed' }) - bare.lowK({ place, bed: 'bed' });
    for (const place of ['cover', 'leaf'] as const) {
      expect(gain(place)).toBeGreaterThan(1);
      expect(gain(place)).toBeLessThan(5);
    }
    expect(bare.lowK(INSIDE) - covered.lowK(INSIDE)).toBeGreaterThan(0.2);
    expect(bare.lowK(INSIDE) - covered.lowK(INSIDE)).toBeLessThan(3);
  });

  it('two beds of one house, one covered, end at least 2 K apart', () => {
    const house = referenceHouse({ beds: [{ name: 'covered', area: 10, crops: ['kale'], cover: { kind: 'fabric', weight: 50 } }, { name: 'open', area: 10, crops: ['kale'] }] });
    const night = runInventedNight(house, CLEAR_COLD_NIGHT, { controls: (timeS) => (timeS > at(-8) ? { coverOn: house.columns.map(({ rowCover }) => rowCover !== null) } : {}) });
    expect(night.lowK({ place: 'leaf', bed: 'covered' }) - night.lowK({ place: 'leaf', bed: 'open' })).toBeGreaterThan(2);
  });
});

describe('heat', () => {
  const heater = (power: number): GreenhouseFile['heater'] => ({ kind: 'electric', power, thermostat: false });

  it.each([500, 1000, 2000])('a heater of %i W in a 4 x 8 m house with two films warms by 2.5 to 5 K for each kW', (power) => {
    const perKilowatt = (insideLowK({ heater: heater(power) }, CLEAR_COLD_NIGHT, heatedBetween(-8, 9)) - base) / (power / 1000);
    expect(perKilowatt).toBeGreaterThan(2.5);
    expect(perKilowatt).toBeLessThan(5);
  });

  it('heat of the day before, 10 to 14 h, is gone at dawn but for what soil stored: below 0.3 K, never cooling', () => {
    const gain = insideLowK({ heater: heater(1000) }, CLEAR_COLD_NIGHT, heatedBetween(-14, -10)) - base;
    expect(gain).toBeGreaterThan(-0.01);
    expect(gain).toBeLessThan(0.3);
  });

  it('each more drums is warmer, 0.1 to 0.3 K for each', () => {
    const lows = [0, 4, 8, 16].map((count) => (count === 0 ? base : insideLowK({ drums: [{ litres: 208, count }] })));
    lows.slice(1).forEach((low, i) => expect(low).toBeGreaterThan(lows[i]!));
    const perDrum = (lows.at(-1)! - lows[0]!) / 16;
    expect(perDrum).toBeGreaterThan(0.1);
    expect(perDrum).toBeLessThan(0.3);
  });

  it('small drums reach 0 °C, stand there for hours while they freeze, and hold the house up', () => {
    const cold: InventedWeather = { ...CLEAR_COLD_NIGHT, dayHighK: ZERO_CELSIUS_K - 4, nightLowK: ZERO_CELSIUS_K - 12, lastLowK: ZERO_CELSIUS_K - 18, peakSunWPerM2: 60, dayCloud: 1, sunnyDays: 4 };
    const night = run({ drums: [{ litres: 100, count: 10, sunny: false }], soil: { kind: 'loam', moisture: 'dry', pathMoisture: 'dry' } }, cold);
    const waterC = night.seriesK({ place: 'water', bed: '1' }).map(kelvinToCelsius);
    const standing = waterC.filter((tempC) => tempC <= 0.01 && tempC >= -0.21).length;
    expect(Math.min(...waterC)).toBeLessThan(0);
    expect(standing * 600).toBeGreaterThan(6 * 3600);
    const insideC = night.seriesK(INSIDE).map(kelvinToCelsius);
    expect(Math.min(...insideC)).toBeLessThan(-5);
  });
});
