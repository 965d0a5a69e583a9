import { HEATER_KINDS, type HeaterKindRow } from '../data/heater-kinds.js';
import { SOILS } from '../data/soils.js';
import { BLACK_COAT, STONES } from '../data/stones.js';
import { VAPORISATION_HEAT_J_PER_KG } from '../constants.js';
import { heapSurfaceM2, stoneLumps } from '../mass/stone-store.js';
import { drumConductanceWPerK, TOUCHING_FACTOR } from '../mass/water-drum.js';
import { celsiusToKelvin, SECONDS_PER_HOUR } from '../units.js';
import { epochOfDateS } from './calendar-date.js';
import type { Greenhouse } from './greenhouse.js';
import type { BuriedTubes, CompostHeap, DrumGroup, Fan, FloorColumn, Heater, SolidWall, StoneBox, StoneGroup } from './house.js';

/** Share of the sun in the house that falls on one sunny drum (prior of this project: 0.02-0.03 each on 32 m2). */
const DRUM_SUN_AREA_M2 = 0.7;
/** Of the free surface of a sunny heap of stones, what the sun sees at once (project estimate: the upper and the sunny face of four). */
const SUNLIT_SHARE_OF_STONES = 0.4;
/** No device takes more than this of the sun in a house. */
const MOST_SUN_SHARE = 0.5;
/** A fifth stays in a battery, for its life (from memory). */
const USABLE_BATTERY = 0.8;
/** Foam board (from memory: 0.030 to 0.036 W/(m K)). */
const FOAM_CONDUCTIVITY_W_PER_MK = 0.034;
/** Sides of an insulated box (project estimate: 3 cm of foam). */
const BOX_SIDE_W_PER_M2K = 1;
/** Air film on the far side of a wall, and the thin skin that closes a wall without foam (project estimate). */
const OUTER_FILM_W_PER_M2K = 12;
const BARE_WALL_W_PER_M2K = 6;
/** A wall without masonry still has boards: two centimetres of wood hold as much as this much brick (project estimate). */
const BOARDS_AS_MASONRY_M = 0.01;
/** The back wall of a lean-to that nobody described (project estimate). */
const HOUSE_WALL_M = 0.2;

type Given<K extends keyof Greenhouse> = NonNullable<Greenhouse[K]>;

const sunShareOf = (sunlitM2: number, floorAreaM2: number): number => Math.min(MOST_SUN_SHARE, sunlitM2 / floorAreaM2);

/** Water drums in SI. Units: SI. Valid: a checked group. Outside: throws OutOfRangeError. Source: defaults as named above. */
export function drumGroup(group: Given<'drums'>[number], floorAreaM2: number): DrumGroup {
  const free = group.count * (group.touching ? TOUCHING_FACTOR : 1);
  return { litresEach: group.litres, count: group.count, conductanceWPerK: free * drumConductanceWPerK(group.litres), sunShare: group.sunny ? sunShareOf(free * DRUM_SUN_AREA_M2, floorAreaM2) : 0 };
}

/** Stones that stand free, in SI. Units: SI. Valid: a checked group. Outside: throws OutOfRangeError. Source: defaults as named above. */
export function stoneGroup(group: Given<'stones'>[number], floorAreaM2: number): StoneGroup {
  const stone = STONES[group.kind];
  const exposedM2 = group.exposed ?? heapSurfaceM2(group.volume);
  return {
    lumps: stoneLumps(stone, { volumeM3: group.volume, exposedM2 }),
    sunShare: group.sunny ? sunShareOf(SUNLIT_SHARE_OF_STONES * exposedM2, floorAreaM2) : 0,
    absorptance: group.blackened ? BLACK_COAT.absorptance : stone.bareAbsorptance,
  };
}

/** The glazed stone box in SI. Units: SI. Valid: a checked box. Outside: throws OutOfRangeError. Source: defaults as named above. */
export function stoneBoxOf(box: Given<'stoneBox'>, floorAreaM2: number): StoneBox {
  const stone = STONES[box.kind];
  const depthM = box.volume / box.glazed;
  const edgeM = Math.sqrt(box.glazed);
  return {
    glazedM2: box.glazed,
    volumeM3: box.volume,
    lumps: stoneLumps(stone, { volumeM3: box.volume, exposedM2: box.glazed, deepestM: Infinity }),
    sidesWPerK: BOX_SIDE_W_PER_M2K * (box.glazed + 4 * edgeM * depthM),
    stoneSizeM: box.stoneSize,
    sunShare: box.sunny ? sunShareOf(box.glazed, floorAreaM2) : 0,
    absorptance: box.blackened ? BLACK_COAT.absorptance : stone.bareAbsorptance,
    fan: box.fan ? fanOf(box.fan) : null,
  };
}

/** A fan in SI, with how long its battery lasts. Units: SI. Valid: a checked fan. Outside: not applicable. Source: usable share of a battery as named above. */
export function fanOf(fan: Given<'fan'>): Fan {
  const batteryS = fan.supply === 'battery' && fan.battery !== undefined ? (USABLE_BATTERY * fan.battery * SECONDS_PER_HOUR) / fan.power : null;
  return { airflowM3PerS: fan.airflow / SECONDS_PER_HOUR, powerW: fan.power, supply: fan.supply, batteryS };
}

/** Buried tubes in SI. Units: SI. Valid: checked tubes. Outside: not applicable. Source: definition. */
export const tubesOf = (tubes: Given<'tubes'>, soil: Greenhouse['soil']): BuriedTubes => ({
  lengthM: tubes.length,
  count: tubes.count,
  diameterM: tubes.diameter,
  depthM: tubes.depth,
  soil: SOILS[soil.kind][soil.moisture],
  fan: fanOf(tubes.fan),
});

/** A compost heap in SI. Units: SI. Valid: a checked heap. Outside: not applicable. Source: definition. */
export function heapOf(compost: Given<'compost'>, columns: readonly FloorColumn[]): CompostHeap {
  const column = columns.findIndex(({ kind, name }) => kind === 'bed' && name === compost.against);
  return { volumeM3: compost.volume, startedS: epochOfDateS(compost.started), column: column < 0 ? null : column, fan: compost.fan ? fanOf(compost.fan) : null };
}

/** A heater in SI. Units: SI. Valid: a checked heater. Outside: not applicable. Source: data/heater-kinds. */
export function heaterOf(heater: Given<'heater'>): Heater {
  const kind: HeaterKindRow = HEATER_KINDS[heater.kind];
  const burnHours = heater.burnHours ?? kind.burnHours;
  const vapourKgPerS = heater.power * kind.vapourKgPerJ;
  return {
    deliveredW: heater.power * kind.deliveredShare - vapourKgPerS * VAPORISATION_HEAT_J_PER_KG,
    vapourKgPerS,
    thermostat: heater.thermostat && kind.burnHours === null,
    needsMains: kind.needsMains,
    burnS: burnHours === null ? null : burnHours * SECONDS_PER_HOUR,
  };
}

/** The solid wall in SI; a lean-to without a word about it has plain masonry. Units: SI. Valid: a checked wall. Outside: not applicable. Source: defaults as named above. */
export function solidWallOf(given: Greenhouse['solidWall'], areaM2: number): SolidWall {
  const stone = STONES[given?.stone ?? 'brick'];
  const foamM = given?.foam ?? 0;
  const masonryM = given ? Math.max(BOARDS_AS_MASONRY_M, given.masonry) : HOUSE_WALL_M;
  return {
    areaM2,
    stone,
    masonryM,
    outwardWPerM2K: 1 / (1 / OUTER_FILM_W_PER_M2K + (foamM > 0 ? foamM / FOAM_CONDUCTIVITY_W_PER_MK : 1 / BARE_WALL_W_PER_M2K)),
    behindTempK: given?.behind === undefined ? null : celsiusToKelvin(given.behind),
    absorptance: given?.blackened ? BLACK_COAT.absorptance : stone.bareAbsorptance,
  };
}
