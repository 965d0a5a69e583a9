import { describe, expect, it } from 'vitest';
import { faultsOf, fileWith, LEAST_FILE } from './files.js';

const { place, size } = LEAST_FILE;
const bed = (parts: object): unknown => fileWith({ beds: [{ name: 'north', ...parts }] });
const heater = (parts: object): unknown => fileWith({ heater: { kind: 'electric', power: 1500, ...parts } });

/** What is in the file, the field that is named, and what is said about it. Every message also has an example. */
const WRONG: readonly (readonly [string, unknown, string, string | RegExp])[] = [
  ['nothing', null, 'the file', 'expected object, received null'],
  ['a list', [], 'the file', 'expected object, received array'],
  ['a word', 'my greenhouse', 'the file', 'expected object, received string'],
  ['an unknown field', fileWith({ colour: 'green' }), 'the file', 'no such field: colour'],
  ['a later version', fileWith({ version: 2 }), 'version', 'expected 1'],
  ['an empty name', fileWith({ name: '' }), 'name', '>=1'],
  ['a place in words', fileWith({ place: 'home' }), 'place', 'expected object, received string'],
  ['no longitude', fileWith({ place: { latitude: 45.1 } }), 'place.longitude', 'expected number, received undefined'],
  ['a latitude beyond the pole', fileWith({ place: { ...place, latitude: 91 } }), 'place.latitude', '<=90'],
  ['a latitude as text', fileWith({ place: { ...place, latitude: '45.1' } }), 'place.latitude', 'expected number, received string'],
  ['an elevation above all mountains', fileWith({ place: { ...place, elevation: '30000 ft' } }), 'place.elevation', 'from -430 to 6000 m'],
  ['surroundings that are not known', fileWith({ place: { ...place, surroundings: 'swamp' } }), 'place.surroundings', '"wooded"'],
  ['an open sky of everything and more', fileWith({ place: { ...place, openSky: 1.5 } }), 'place.openSky', '<=1'],
  ['a misspelt field of the place', fileWith({ place: { ...place, lattitude: 45 } }), 'place', 'no such field: lattitude'],
  ['a time zone in words', fileWith({ place: { ...place, timeZone: 'two hours east' } }), 'place.timeZone', 'no such time zone: "two hours east"'],
  ['no height', fileWith({ size: { width: 4, length: 8 } }), 'size.height', 'expected a length'],
  ['a width of nothing', fileWith({ size: { ...size, width: 0 } }), 'size.width', 'from 1 to 60 m'],
  ['a width in yards', fileWith({ size: { ...size, width: '4 yards' } }), 'size.width', /units m, .*got "4 yards"/u],
  ['a wall higher than the house', fileWith({ solidWall: { height: 3 } }), 'solidWall.height', 'higher than the house (2.4 m)'],
  ['compost against a bed that is not there', fileWith({ compost: { volume: 1, started: '2026-10-20', against: 'moon bed' } }), 'compost.against', 'no bed is called "moon bed"'],
  ['two thermometers of one name', fileWith({ thermometers: [{ name: 'shed' }, { name: 'shed', place: 'outside' }] }), 'thermometers[1].name', 'two thermometers are called "shed"'],
  ['a thermometer over a bed that is not there', fileWith({ thermometers: [{ name: 'shed', bed: 'moon bed' }] }), 'thermometers[0].bed', 'no bed is called "moon bed"'],
  ['a thermometer that hangs in the moon', fileWith({ thermometers: [{ name: 'shed', hangs: 'moon' }] }), 'thermometers[0].hangs', '"shade"'],
  ['compost that was heaped up some day', fileWith({ compost: { volume: 1, started: 'last week' } }), 'compost.started', 'expected the day it was heaped up'],
  ['a blower under one film', fileWith({ blower: true }), 'blower', 'two layers of film'],
  ['a battery of no size', fileWith({ fan: { airflow: 100, supply: 'battery' } }), 'fan.battery', 'needs its capacity'],
  ['an airflow in knots', fileWith({ fan: { airflow: '20 knots' } }), 'fan.airflow', 'expected an airflow'],
  ['a curtain of lace', fileWith({ curtain: { kind: 'lace' } }), 'curtain.kind', '"foil"'],
  ['snow on the roof in feet and more', fileWith({ now: { snowOnRoof: '12 ft' } }), 'now.snowOnRoof', 'from 0 to 2 m'],
  ['no layers', fileWith({ layers: [] }), 'layers', 'expected one or two layers'],
  ['three layers', fileWith({ layers: [{}, {}, {}] }), 'layers', 'expected one or two layers'],
  ['layers as a number', fileWith({ layers: 2 }), 'layers', 'expected array, received number'],
  ['cardboard', fileWith({ layers: [{ film: 'cardboard' }] }), 'layers[0].film', '"ir-barrier"'],
  ['a dome', fileWith({ shape: 'dome' }), 'shape', '"half-round"|"gothic"|"gable"|"lean-to"'],
  ['a ridge that runs up', fileWith({ ridgeRuns: 'up' }), 'ridgeRuns', 'expected "east-west", "north-south" or degrees from north'],
  ['a ridge beyond the full turn', fileWith({ ridgeRuns: 400 }), 'ridgeRuns', '<=360'],
  ['leakage that is not known', fileWith({ leakage: 'windy' }), 'leakage', '"tight"'],
  ['a soil that is not known', fileWith({ soil: { kind: 'mud' } }), 'soil.kind', '"loam"'],
  ['a bed without a name', fileWith({ beds: [{ area: 6 }] }), 'beds[0].name', 'expected string, received undefined'],
  ['beds that are one bed', fileWith({ beds: { name: 'north' } }), 'beds', 'expected array, received object'],
  ['a bed of 10 acres', bed({ area: '10 acres' }), 'beds[0].area', /units m2, .*got "10 acres"/u],
  ['a crop that is a number', bed({ crops: ['kale', 5] }), 'beds[0].crops[1]', 'expected the name of a crop'],
  ['a crop without a name', bed({ crops: [''] }), 'beds[0].crops[0]', '>=1'],
  ['a hardiness that is not known', bed({ crops: [{ crop: 'minutina', hardiness: 'tough' }] }), 'beds[0].crops[0]', 'expected the name of a crop'],
  ['a woollen cover', bed({ cover: { kind: 'wool' } }), 'beds[0].cover.kind', 'expected a cover'],
  ['a cover in stone', bed({ cover: { kind: 'fabric', weight: '1 stone' } }), 'beds[0].cover.weight', /units g\/m2, .*got "1 stone"/u],
  ['a film tunnel with a weight', bed({ cover: { kind: 'film-tunnel', weight: 30 } }), 'beds[0].cover', 'no such field: weight'],
  ['a bed of negative worth', bed({ worth: -1 }), 'beds[0].worth', '>=0'],
  ['half a drum', fileWith({ drums: [{ litres: 208, count: 2.5 }] }), 'drums[0].count', 'expected int'],
  ['a drum in pints', fileWith({ drums: [{ litres: '55 pints', count: 2 }] }), 'drums[0].litres', /units l, .*got "55 pints"/u],
  ['a stove', fileWith({ heater: { kind: 'wood', power: 1500 } }), 'heater.kind', '"electric"'],
  ['a heater without power', fileWith({ heater: { kind: 'electric' } }), 'heater.power', 'expected a heating power'],
  ['a heater of 5 watts', heater({ power: 5 }), 'heater.power', 'from 30 to 100000 w'],
  ['a heater set to a sauna', heater({ set: '180 F' }), 'heater.set', 'from -5 to 25 c'],
  ['safety read as text', heater({ safetyRead: 'yes' }), 'heater.safetyRead', 'expected boolean, received string'],
  ['vents without an area', fileWith({ vents: {} }), 'vents.area', 'expected an area'],
  ['vents that open at frost', fileWith({ vents: { area: 2, openAbove: '30 F' } }), 'vents.openAbove', 'from 5 to 40 c'],
  ['a bedtime in words', fileWith({ grower: { bedtime: 'nine' } }), 'grower.bedtime', 'expected a time such as "21:30"'],
  ['a bedtime of no clock', fileWith({ grower: { bedtime: '25:70' } }), 'grower.bedtime', 'expected a time such as "21:30"'],
  ['kelvin', fileWith({ grower: { units: 'K' } }), 'grower.units', '"C"|"F"'],
  ['a grower who is reckless', fileWith({ grower: { careful: 'reckless' } }), 'grower.careful', '"relaxed"'],
];

describe('a wrong file', () => {
  it.each(WRONG)('%s', (_name, file, field, said) => {
    const faults = faultsOf(file);
    expect(faults.map((fault) => fault.field)).toEqual([field]);
    expect(faults[0]!.message).toMatch(typeof said === 'string' ? new RegExp(said.replace(/[.*+?^${}()|[\]\\]/gu, '\\$&'), 'u') : said);
    expect(faults[0]!.message).toMatch(/for example|such as/u);
    expect(faults[0]!.message).toMatch(/^[ -~]+$/u);
  });

  it('names every fault at once', () => {
    expect(faultsOf(fileWith({ place: { latitude: 91, longitude: 400 }, shape: 'dome' })).map(({ field }) => field)).toEqual(['place.latitude', 'place.longitude', 'shape']);
  });
});

describe('contradictions', () => {
  it.each<readonly [string, unknown, string, string]>([
    ['two beds of one name', fileWith({ beds: [{ name: 'north' }, { name: 'south' }, { name: 'north' }] }), 'beds[2].name', 'two beds are called "north"'],
    ['beds larger than the floor', fileWith({ beds: [{ name: 'north', area: 20 }, { name: 'south', area: '140 sq ft' }] }), 'beds', 'add up to 33.0 m2, but the floor has 32.0 m2'],
    ['no floor left for a bed without an area', fileWith({ beds: [{ name: 'north', area: 32 }, { name: 'south' }] }), 'beds', 'but the floor has 32.0 m2'],
    ['side walls above the ridge', fileWith({ shape: 'gable', sideHeight: '9 ft' }), 'sideHeight', 'must be lower than the ridge (2.4 m)'],
  ])('%s', (_name, file, field, said) => {
    const faults = faultsOf(file);
    expect(faults.map((fault) => fault.field)).toEqual([field]);
    expect(faults[0]!.message).toContain(said);
    expect(faults[0]!.message).toContain('for example');
  });

  it('a bed may fill the floor, and a half-round asks for no side wall', () => {
    expect(faultsOf({ ...LEAST_FILE, size: { width: '13 ft', length: '26 ft', height: '8 ft' }, beds: [{ name: 'all', area: '338 sq ft' }] })).toEqual([]);
    expect(faultsOf(fileWith({ size: { width: 3.3, length: 7, height: 2.4 }, beds: ['a', 'b', 'c'].map((name) => ({ name, area: 7.7 })) }))).toEqual([]);
    expect(faultsOf(fileWith({ size: { width: 2, length: 3, height: 1.2 } }))).toEqual([]);
  });
});
