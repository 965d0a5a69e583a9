import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { CURTAIN_KINDS } from '../../engine/data/curtains.js';
import { FILM_KINDS } from '../../engine/data/films.js';
import { HEATER_KIND_NAMES } from '../../engine/data/heater-kinds.js';
import { STONE_KINDS } from '../../engine/data/stones.js';
import { SHAPES } from '../../engine/cover/profile.js';
import { SOIL_KINDS } from '../../engine/data/soils.js';
import { TERRAINS } from '../../engine/airflow/wind-at-cover.js';
import type { WeatherHours } from '../../engine/night/weather.js';
import type { Controls } from '../../engine/night/controls.js';
import type { House } from '../../engine/greenhouse/house.js';
import { celsiusToKelvin } from '../../engine/units.js';
import { inventedWeather, type InventedWeather } from '../fixtures/houses.js';

export type Random = () => number;

/** mulberry32 (from memory): a small generator, the same series for the same seed everywhere. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
const pick = <T>(random: Random, values: readonly T[]): T => values[Math.floor(random() * values.length)]!;
const chance = (random: Random, probability: number): boolean => random() < probability;
const PLAIN_FILMS = ['standard', 'thermal', 'ir-barrier'] as const;
const MOISTURES = ['dry', 'moist', 'wet'] as const;

/** Any greenhouse that the file format takes, from a lean 2.5 x 4 m to a field tunnel. */
export function randomGreenhouse(random: Random): GreenhouseFile {
  const size = { width: between(random, 2.5, 9), length: between(random, 4, 30), height: between(random, 1.9, 4.5) };
  const bedCount = Math.floor(random() * 4);
  const bedM2 = (0.6 * size.width * size.length) / Math.max(1, bedCount);
  return {
    place: { latitude: 45.1, longitude: -72.2, elevation: between(random, 0, 2000), openSky: between(random, 0.4, 1), surroundings: pick(random, TERRAINS) },
    size,
    shape: pick(random, ['half-round', 'gable'] as const),
    sideHeight: between(random, 0.2, size.height - 0.3),
    ridgeRuns: between(random, 0, 360),
    layers: Array.from({ length: chance(random, 0.5) ? 2 : 1 }, () => ({ film: pick(random, PLAIN_FILMS) })),
    leakage: pick(random, ['tight', 'ordinary', 'leaky'] as const),
    soil: { kind: pick(random, SOIL_KINDS), moisture: pick(random, MOISTURES), pathMoisture: pick(random, MOISTURES) },
    beds: Array.from({ length: bedCount }, (_, b) => ({
      name: `bed ${b + 1}`,
      area: between(random, 0.3, 1) * bedM2,
      crops: chance(random, 0.7) ? ['kale'] : [],
      ...(chance(random, 0.5) ? { cover: chance(random, 0.7) ? { kind: 'fabric' as const, weight: between(random, 12, 100) } : { kind: 'film-tunnel' as const } } : {}),
    })),
    drums: Array.from({ length: Math.floor(random() * 3) }, () => ({ litres: between(random, 20, 1000), count: 1 + Math.floor(random() * 8), touching: chance(random, 0.5), sunny: chance(random, 0.5) })),
    ...(chance(random, 0.5) ? { heater: { kind: 'electric' as const, power: between(random, 200, 8000), thermostat: chance(random, 0.5) } } : {}),
    ...(chance(random, 0.6) ? { vents: { area: between(random, 0.2, 6), openAbove: between(random, 12, 30) } } : {}),
  };
}

/** Devices of every kind on top of a random greenhouse, each there or not. */
export function withRandomDevices(random: Random, file: GreenhouseFile): GreenhouseFile {
  const size = file.size as { width: number; length: number; height: number };
  const fan = () => ({ airflow: between(random, 30, 400), power: between(random, 5, 80), supply: pick(random, ['mains', 'battery', 'sun'] as const), battery: 500 });
  const maybe = <T>(value: () => T): T | undefined => (chance(random, 0.6) ? value() : undefined);
  const shape = pick(random, SHAPES);
  const layers = Array.from({ length: chance(random, 0.5) ? 2 : 1 }, () => ({ film: pick(random, FILM_KINDS) }));
  const given = {
    shape,
    sideHeight: between(random, 0.2, 0.6 * size.height),
    layers,
    blower: layers.length === 2 && chance(random, 0.5),
    beds: (file.beds ?? []).map((bed) => (bed.cover && chance(random, 0.5) ? { ...bed, cover: { ...bed.cover, second: { kind: 'fabric' as const, weight: 17 } } } : bed)),
    edgeInsulation: maybe(() => ({ depth: between(random, 0.2, 1.2), thickness: 0.05 })),
    solidWall: maybe(() => ({ ...(shape === 'lean-to' ? {} : { height: between(random, 0.5, 0.6 * size.height) }), foam: between(random, 0, 0.1), masonry: between(random, 0, 0.5), stone: pick(random, STONE_KINDS), blackened: chance(random, 0.5), ...(chance(random, 0.3) ? { behind: 18 } : {}) })),
    curtain: maybe(() => ({ kind: pick(random, CURTAIN_KINDS) })),
    stones: Array.from({ length: Math.floor(random() * 3) }, () => ({ kind: pick(random, STONE_KINDS), volume: between(random, 0.1, 4), blackened: chance(random, 0.5), sunny: chance(random, 0.5) })),
    stoneBox: maybe(() => ({ kind: pick(random, STONE_KINDS), volume: between(random, 0.1, 1), glazed: between(random, 0.3, 2), blackened: chance(random, 0.5), fan: fan() })),
    tubes: maybe(() => ({ length: between(random, 5, 30), count: 1 + Math.floor(random() * 4), diameter: between(random, 0.08, 0.2), depth: between(random, 0.2, 2), fan: fan() })),
    fan: maybe(fan),
    compost: maybe(() => ({ volume: between(random, 0.3, 3), started: '2026-11-05', ...(chance(random, 0.5) ? { fan: fan() } : { against: file.beds?.[0]?.name }) })),
    heater: maybe(() => ({ kind: pick(random, HEATER_KIND_NAMES), power: between(random, 100, 5000) })),
    vents: maybe(() => ({ area: between(random, 0.2, 4), opener: chance(random, 0.5) })),
    now: { snowOnRoof: chance(random, 0.4) ? between(random, 0.01, 0.4) : 0 },
  };
  return { ...file, ...JSON.parse(JSON.stringify(given)) } as GreenhouseFile;
}

/** Curtain, fans and troubles changed at any hour, on top of the rest. */
export function randomDeviceControls(random: Random, house: House): (timeS: number) => Partial<Controls> {
  const plain = randomControls(random, house);
  const byHour = Array.from({ length: 150 }, (): Partial<Controls> => ({
    curtainDrawn: chance(random, 0.5),
    fansOn: { tubes: chance(random, 0.5), 'stone-box': chance(random, 0.5), heap: chance(random, 0.5), air: chance(random, 0.5) },
    troubles: { roofSnowM: house.mayHoldSnow && chance(random, 0.7) ? between(random, 0, 0.5) : 0, powerOut: chance(random, 0.2), blowerOff: chance(random, 0.3), openingM2: chance(random, 0.3) ? between(random, 0, 1) : 0, fansDead: chance(random, 0.1) },
  }));
  return (timeS) => ({ ...plain(timeS), ...byHour[Math.floor(timeS / 3600) % byHour.length]! });
}

/** Two days and a night between deep frost and mild, with cloud and wind that jump from hour to hour. */
export function randomWeather(random: Random, house: House): { invented: InventedWeather; weather: WeatherHours } {
  const lowC = between(random, -22, 6);
  const invented: InventedWeather = {
    sunnyDays: 2,
    dayHighK: celsiusToKelvin(lowC + between(random, 3, 18)),
    nightLowK: celsiusToKelvin(lowC + between(random, -2, 2)),
    lastLowK: celsiusToKelvin(lowC),
    dewPointBelowLowK: between(random, -4, 10),
    dayCloud: random(),
    lastNightCloud: 0,
    wind10mMPerS: 0,
    peakSunWPerM2: between(random, 40, 700),
  };
  const weather = inventedWeather(house, invented);
  return { invented, weather: { ...weather, cloudFraction: weather.timeS.map(() => random()), windSpeed10mMPerS: weather.timeS.map(() => between(random, 0, 12) * random()) } };
}

/** Covers, vents and heater changed at any hour. */
export function randomControls(random: Random, house: House): (timeS: number) => Partial<Controls> {
  const byHour = Array.from({ length: 200 }, (): Partial<Controls> => ({
    coverOn: house.columns.map(({ rowCover }) => rowCover !== null && chance(random, 0.5)),
    ventsMayOpen: chance(random, 0.6),
    heaterOn: chance(random, 0.5),
    heaterSetK: chance(random, 0.3) ? null : celsiusToKelvin(between(random, -2, 8)),
  }));
  return (timeS) => byHour[Math.floor(timeS / 3600) % byHour.length]!;
}
