import { FILM_TUNNEL, type RowCoverRow } from '../../../engine/data/row-covers.js';
import type { GreenhouseFile } from '../../../engine/greenhouse/greenhouse.js';
import type { FloorColumn, House } from '../../../engine/greenhouse/house.js';
import { NO_FANS, type Controls } from '../../../engine/night/controls.js';
import type { HouseModel } from '../../../engine/night/house-model.js';
import { CLEAR_COLD_NIGHT, INSIDE } from '../../fixtures/houses.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import type { DawnFluxes } from './dawn-fluxes.js';
import { effectNight, type EffectChange, type EffectNight } from './effect-night.js';

/**
 * What each thing was worth in the throw-away node model behind this project's reference (section 17): 4 x 8 x 2.4 m, two films, -10 °C, clear,
 * three sunny days before. A model result, not a measurement: a row that differs by more than half says why, by its fluxes (W/m2 of floor).
 */
export const source = 'Prototype2026';

const base = effectNight({});
const gainK = (night: () => EffectNight, against: () => EffectNight = base): number => night().insideK - against().insideK;

const SHARE_OF_ROW = 0.8;
const LEAST_TOLERANCE_K = 0.15;

/** A difference of two nights; the engine may be off by most of it, never by its sign. */
function row(name: string, expected: number, model: () => number, more: Pick<PublishedRow, 'note' | 'tolerance'> = {}): PublishedRow {
  return { name, expected, tolerance: Math.max(LEAST_TOLERANCE_K, SHARE_OF_ROW * Math.abs(expected)), model, ...more };
}
const effect = (name: string, expected: number, change: EffectChange, more: Pick<PublishedRow, 'note' | 'tolerance'> = {}): PublishedRow => row(name, expected, () => gainK(effectNight(change)), more);

const w = (value: number): string => value.toFixed(1);
/** Two fluxes before and after a change. */
const told = (change: () => EffectNight, fluxes: readonly (readonly [string, keyof DawnFluxes])[], against: () => EffectNight = base): string =>
  fluxes.map(([words, name]) => `${words} ${w(against().fluxes[name])} to ${w(change().fluxes[name])}`).join(', ');

const shifted = (kelvin: number): EffectChange => ({ weather: { dayHighK: CLEAR_COLD_NIGHT.dayHighK + kelvin, nightLowK: CLEAR_COLD_NIGHT.nightLowK + kelvin, lastLowK: CLEAR_COLD_NIGHT.lastLowK + kelvin } });
const withSoil = (soil: Partial<FloorColumn['soil']>): EffectChange => ({ house: (house) => ({ ...house, columns: house.columns.map((column) => ({ ...column, soil: { ...column.soil, ...soil } })) }) });
const films = (...kinds: readonly ('standard' | 'ir-barrier')[]): Partial<GreenhouseFile> => ({ layers: kinds.map((film) => ({ film })) });
/** Sky of another emissivity, seen through the open share of the sky. */
const brighterSky = (emissivity: number): EffectChange => ({
  forcing: (forcing, house) => ({ ...forcing, surroundingsTempK: forcing.surroundingsTempK.map((tempK, i) => (tempK ** 4 + house.skyViewFraction * emissivity * forcing.outsideAirTempK[i]! ** 4) ** 0.25) }),
});

const OVERCAST = { lastNightCloud: 1 } as const;
const k18 = effectNight(withSoil({ thermalConductivityWPerMK: 1.8 }));
const unfrozen = effectNight(withSoil({ waterFraction: 0 }));
const unfrozenK18 = effectNight(withSoil({ waterFraction: 0, thermalConductivityWPerMK: 1.8 }));
const sky = effectNight(brighterSky(0.05));

export const weatherTable: PublishedTable = {
  source, title: 'weather: change of the inside low', unit: 'K', tolerance: LEAST_TOLERANCE_K, listed: true, toleranceReason: 'a model beside a model: 0.8 of the row, so that sign and order of magnitude hold', origin: 'worked example of this project',
  rows: [
    effect('1 days and night warmer by 1 K', 0.75, shifted(1)),
    effect('1 days and night colder by 1 K', -0.75, shifted(-1)),
    effect('1 days and night colder by 10 K', -8.2, shifted(-10)),
    effect('4 overcast night', 3.05, { weather: OVERCAST }),
    effect('4 half cloud', 1.5, { weather: { lastNightCloud: 0.5 } }),
    effect('10 three dark days, same sky', -1.5, { weather: { peakSunWPerM2: 30 } }),
    effect('11 dew point -20 instead of -11 °C', -1.1, { weather: { dewPointBelowLowK: 10 } }),
    row('11 sky emissivity +0.05', 0.9, () => gainK(sky), {
      note: () => `the soil surface stands in its freezing band and takes the gain: ${told(sky, [['soil heat', 'soilUp'], ['its longwave', 'soilLongwave'], ['frost outside', 'frostOutside']])} W/m2`,
    }),
    effect('11 sky emissivity -0.05', -0.5, brighterSky(-0.05)),
    effect('17 wind 0.5 instead of 1.5 m/s at the cover', -0.2, { weather: { wind10mMPerS: 1 } }),
    effect('17 wind 5 m/s at the cover', -0.2, { weather: { wind10mMPerS: 10 } }, {
      note: () => `film below the outside air: wind warms it as much as leaks cool the house: ${told(effectNight({ weather: { wind10mMPerS: 10 } }), [['heat from outside air', 'outsideAirToCover'], ['leakage', 'leakage']])} W/m2`,
    }),
  ],
};

const single = effectNight({ file: films('standard') });
const overcast = effectNight({ weather: OVERCAST });
const singleOvercast = effectNight({ file: films('standard'), weather: OVERCAST });
const heated = (file: Partial<GreenhouseFile>, powerW: number): (() => EffectNight) => effectNight({ file: { ...file, heater: { kind: 'electric', power: powerW, thermostat: false } }, atNight: () => ({ heaterOn: true }) });
const irInner = effectNight({ file: films('standard', 'ir-barrier') });
/** Heat from soil and foliage to the air doubled, its vapour not. */
const doubledSoilToAir = (model: HouseModel): HouseModel => ({
  ...model,
  network: { ...model.network, conductors: model.network.conductors.map((conductor) => (conductor.dependsOnTemps && model.columns.some(({ surface }) => surface === conductor.a) ? { ...conductor, conductanceWPerK: (a: number, b: number) => 2 * conductor.conductanceWPerK(a, b) } : conductor)) },
});
/** 19 x 5.8 m and 2 m high: 1.5 m2 of cover for each m2 of floor. */
const LOW_HOUSE: Partial<GreenhouseFile> = { size: { width: 5.8, length: 19, height: 2 }, beds: [{ name: 'north', area: 34, crops: ['kale'] }, { name: 'south', area: 34, crops: ['lettuce'] }] };

export const houseTable: PublishedTable = {
  source, title: 'house and soil: change of the inside low', unit: 'K', tolerance: LEAST_TOLERANCE_K, listed: true, toleranceReason: 'a model beside a model: 0.8 of the row, so that sign and order of magnitude hold', origin: 'worked example of this project',
  rows: [
    effect('3 dry soil, k 0.3 W/(m K)', -4.1, withSoil({ thermalConductivityWPerMK: 0.3, volumetricHeatCapacityJPerM3K: 1.36e6, waterFraction: 0.05 })),
    row('3 moist soil of k 1.8 instead of 1.2 W/(m K)', 0.8, () => gainK(k18), {
      note: () => `the surface stands in its freezing band either way: ${told(k18, [['soil heat', 'soilUp'], ['heat to the air', 'soilToAir']])} W/m2; without freezing heat the same change brings ${gainK(unfrozenK18, unfrozen).toFixed(2)} K`,
    }),
    effect('7 both films stop longwave', 2.2, { file: films('ir-barrier', 'ir-barrier') }),
    row('7 inner film stops longwave', 0.6, () => gainK(irInner), {
      tolerance: 0.6,
      note: () => `the soil loses less (${told(irInner, [['longwave', 'soilLongwave'], ['soil heat', 'soilUp']])} W/m2), but the film that takes up more also gives off more to the outer one and is no warmer; the air stands between it and a soil pinned at freezing (${told(irInner, [['air to film', 'airToFilm']])} W/m2). Wet films are nearly alike in the steady film network as well: U 5.55 becomes 5.41 W/(m2 K)`,
    }),
    row('8 no heat of freezing in the soil', -1.9, () => gainK(unfrozen)),
    effect('9 cover 1.5 instead of 2.2 of the floor', 1.8, { file: LOW_HOUSE }),
    effect('13 soil and foliage give twice the heat to the air', 1, { model: doubledSoilToAir }),
    row('14 one film, clear', -0.3, () => gainK(single), {
      tolerance: 0.4,
      note: () => `without the second film ${told(single, [['soil longwave', 'soilLongwave'], ['soil heat', 'soilUp'], ['heat from outside air', 'outsideAirToCover']])} W/m2; the base stands 1.5 K higher here, so there is more to lose`,
    }),
    row('14 one film, overcast', -0.9, () => gainK(singleOvercast, overcast), {
      note: () => `${told(singleOvercast, [['air to film', 'airToFilm'], ['soil longwave', 'soilLongwave'], ['soil heat', 'soilUp']], overcast)} W/m2`,
    }),
    row('14 one film, 2 kW of heat', -2.3, () => gainK(heated(films('standard'), 2000), heated({}, 2000))),
    effect('16 leakage 2 instead of 0.3 changes an hour', -0.4, { house: (house) => ({ ...house, leakage: { ...house.leakage, stillAirChangesPerHour: 2 } }) }),
    effect('18 foam along the edge, one night', 0.1, { file: { edgeInsulation: { depth: 0.6 } } }),
    effect('18 deep ground 4 K warmer', 0.1, { deepWarmerK: 4 }),
    effect('18 gap between films 1.5 instead of 2 W/(m2 K)', 0.1, { house: (house) => ({ ...house, gapsWPerM2K: house.gapsWPerM2K.map(() => 1.5) }) }),
  ],
};

const plantsUnder = { place: 'cover', bed: 'all' } as const;
const allBed = (cover?: NonNullable<NonNullable<GreenhouseFile['beds']>[number]['cover']>): Partial<GreenhouseFile> => ({ beds: [{ name: 'all', area: 32, crops: ['kale'], ...(cover ? { cover } : {}) }] });
const bareFloor = effectNight({ file: allBed() });
const coverAll = (house: House): Partial<Controls> => ({ coverOn: house.columns.map(({ rowCover }) => rowCover !== null) });
type CoverKind = NonNullable<Parameters<typeof allBed>[0]>;
const FOIL_BLANKET: RowCoverRow = { ...FILM_TUNNEL, dry: { transmittance: 0.03, emissivity: 0.3 }, wet: { transmittance: 0.03, emissivity: 0.3 } };
const asBlanket = (house: House): House => ({ ...house, columns: house.columns.map((column) => ({ ...column, rowCover: FOIL_BLANKET })) });

/** The whole floor covered: plants under it and air over it, against the air of the house without it. */
function coverRows(name: string, cover: CoverKind, expected: { plants: number; air: number; airNote?: true }, house?: (house: House) => House): PublishedRow[] {
  const night = effectNight({ file: allBed(cover), atNight: coverAll, ...(house ? { house } : {}) });
  return [
    row(`5 ${name}: plants`, expected.plants, () => night().lowK(plantsUnder) - bareFloor().lowK(INSIDE)),
    row(`5 ${name}: air above`, expected.air, () => gainK(night, bareFloor), expected.airNote ? { tolerance: 1.1, note: () => `the cover holds soil heat and longwave back from the air above: ${told(night, [['soil to the air at the plants', 'soilToAir'], ['air to film', 'airToFilm'], ['soil longwave', 'soilLongwave']], bareFloor)} W/m2` } : {}),
  ];
}

const drums = (count: number): EffectChange => ({ file: { drums: [{ litres: 208, count }] } });
const TUBES: Partial<GreenhouseFile> = { tubes: { length: 20, diameter: 0.1, depth: 0.5, fan: { airflow: 150, power: 0.5 } } };
const tubesOn: () => Partial<Controls> = () => ({ fansOn: { ...NO_FANS, tubes: true } });
/** 1.26 m3 in its sixth day makes 300 W. */
const HEAP: Partial<GreenhouseFile> = { compost: { volume: 1.26, started: '2026-11-17', against: 'north' } };
const FACES = 6;
/** A heap that lies wholly under its bed: no face to the air. */
const buried = (model: HouseModel): HouseModel => ({
  ...model,
  network: { ...model.network, conductors: model.network.conductors.map((conductor) => (conductor.a === model.heap ? { ...conductor, conductanceWPerK: (a: number, b: number) => (conductor.b === model.air ? 0 : FACES * conductor.conductanceWPerK(a, b)) } : conductor)) },
});
const heapInHouse = effectNight({ file: HEAP });
const heapBuried = effectNight({ file: HEAP, model: buried });

export const deviceTable: PublishedTable = {
  source, title: 'heat, covers and stores: change of the low', unit: 'K', tolerance: LEAST_TOLERANCE_K, listed: true, toleranceReason: 'a model beside a model: 0.8 of the row, so that sign and order of magnitude hold', origin: 'worked example of this project',
  rows: [
    ...([[500, 2.2], [1000, 4], [2000, 8.6]] as const).map(([powerW, expected]) => row(`2 heater of ${powerW} W`, expected, () => gainK(heated({}, powerW)))),
    ...coverRows('fabric of 17 g/m2', { kind: 'fabric', weight: 17 }, { plants: 2.2, air: -1.1, airNote: true }),
    ...coverRows('fabric of 30 g/m2', { kind: 'fabric', weight: 30 }, { plants: 2.6, air: -1.4, airNote: true }),
    ...coverRows('fabric of 50 g/m2', { kind: 'fabric', weight: 50 }, { plants: 3.2, air: -1.8, airNote: true }),
    ...coverRows('film tunnel', { kind: 'film-tunnel' }, { plants: 3.7, air: -2.3 }),
    ...coverRows('foil blanket', { kind: 'film-tunnel' }, { plants: 5.4, air: -2.7 }, asBlanket),
    ...([[4, 0.7], [8, 1.3], [16, 2.4]] as const).map(([count, expected]) => effect(`6 ${count} drums`, expected, drums(count))),
    effect('12 tube of 20 m, 150 m3/h by night', 1.1, { file: TUBES, atNight: tubesOn }),
    effect('12 the same by day alone', -0.01, { file: TUBES, byDay: tubesOn }),
    row('15 compost of 300 W under a bed', 0.5, () => gainK(heapBuried), {
      note: () => `its ${w(heapBuried().fluxes.heapToSoil)} W/m2 enter the soil at 11 cm, and of them the house sees little within days: ${told(heapBuried, [['soil to air', 'soilToAir'], ['soil longwave', 'soilLongwave']])} W/m2; standing in the house the heap brings ${gainK(heapInHouse).toFixed(2)} K, for ${w(heapInHouse().fluxes.heapToAir)} W/m2 go to the air`,
    }),
  ],
};

const flux = (name: string, expected: number, of: keyof DawnFluxes): PublishedRow => ({ name, expected, model: () => base().fluxes[of] });

export const fluxTable: PublishedTable = {
  source, title: 'fluxes of the reference dawn, for each m2 of floor', unit: 'W/m2', tolerance: 10, listed: true, toleranceReason: 'a model beside a model: a seventh of the largest', origin: 'worked example of this project',
  rows: [
    flux('soil conduction upwards', 67, 'soilUp'),
    flux('soil to air', 19, 'soilToAir'),
    flux('air to film', 18, 'airToFilm'),
    flux('evaporation', 5.5, 'soilEvaporation'),
    flux('leakage', 0.9, 'leakage'),
    flux('frost on the outer film', 10.6, 'frostOutside'),
    flux('longwave to the sky, for each m2 of cover', 60, 'coverToSky'),
  ],
};

export const prototypeTables: readonly PublishedTable[] = [fluxTable, weatherTable, houseTable, deviceTable];
