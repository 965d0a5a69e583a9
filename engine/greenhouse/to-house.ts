import type { Leakage } from '../airflow/infiltration.js';
import { windShareAtHeight } from '../airflow/wind-at-cover.js';
import { houseGeometry, type HouseGeometry } from '../cover/shape.js';
import { FILMS } from '../data/films.js';
import { HEATER_KINDS } from '../data/heater-kinds.js';
import { fabricCover, FILM_TUNNEL } from '../data/row-covers.js';
import { SOILS } from '../data/soils.js';
import { drumConductanceWPerK, TOUCHING_FACTOR } from '../mass/water-drum.js';
import { celsiusToKelvin, degreesToRadians } from '../units.js';
import type { Greenhouse } from './greenhouse.js';
import type { DrumGroup, FloorColumn, House } from './house.js';

/** Air changes an hour in still air and for each m/s; NRAES-33 gives 0.5-1.0 for new double film, home-built houses 1-3 (prior of this project). */
const LEAKAGE = {
  tight: { stillAirChangesPerHour: 0.2, perWindAirChangesPerHour: 0.1 },
  ordinary: { stillAirChangesPerHour: 0.3, perWindAirChangesPerHour: 0.2 },
  leaky: { stillAirChangesPerHour: 0.8, perWindAirChangesPerHour: 0.4 },
} as const satisfies Record<string, Leakage>;

/** Frame, dirt and age leave this share of the light (from memory: 5-15 % for dirt, 5-10 % for the frame). */
const CLEAN_SHARE = 0.85;
/** Width of the strip along the walls that feels the ground outside (project estimate). */
const EDGE_WIDTH_M = 0.4;
/** Heat loss of an uninsulated edge for each metre of wall (ASHRAE 90.1 table A6.3, unheated slab: 1.26 W/(m K), from memory). */
const EDGE_LOSS_W_PER_MK = 1.2;
/** Share of the floor inside the edge strip that beds take when no areas are given (project estimate). */
const BED_SHARE = 0.7;
/** A bed without an area is never smaller. */
export const LEAST_BED_M2 = 0.3;
/** A smaller strip is not worth a soil column of its own. */
const LEAST_STRIP_M2 = 0.1;
/** Winter greens in a bed (project estimate). */
const FOLIAGE_KG_PER_M2 = 1.5;
/** How freely soil gives off water (from memory: a wet surface 1, a dry one next to nothing). */
const EVAPORATION_SHARE = { dry: 0.05, moist: 0.5, wet: 1 } as const;
/** Share of the sun in the house that falls on one sunny drum (prior of this project: 0.02-0.03 each on 32 m2). */
const DRUM_SUN_AREA_M2 = 0.7;
const DEFAULT_ELEVATION_M = 0;

/**
 * The house in SI from the grower's description, every default decided.
 * Units: the file's units in, SI out.
 * Valid: a checked greenhouse.
 * Outside: throws OutOfRangeError for sizes that geometry cannot take.
 * Source: defaults as named above.
 */
export function toHouse(greenhouse: Greenhouse): House {
  const { size, place, heater, vents } = greenhouse;
  const geometry = houseGeometry({
    kind: greenhouse.shape,
    widthM: size.width,
    lengthM: size.length,
    heightM: size.height,
    sideHeightM: greenhouse.sideHeight,
    ridgeAzimuthRad: ridgeAzimuthRad(greenhouse.ridgeRuns),
  });
  return {
    place: { latitude: place.latitude, longitude: place.longitude, elevationM: place.elevation ?? DEFAULT_ELEVATION_M },
    geometry,
    films: greenhouse.layers.map(({ film }) => FILMS[film]).reverse(),
    cleanShare: CLEAN_SHARE,
    skyViewFraction: place.openSky,
    windShare: windShareAtHeight(size.height, place.surroundings),
    leakage: LEAKAGE[greenhouse.leakage],
    columns: floorColumns(greenhouse, geometry),
    drums: greenhouse.drums.map((group) => drumGroup(group, geometry)),
    vents: vents ? { openAreaM2: vents.area, stackHeightM: size.height / 2, openAboveK: celsiusToKelvin(vents.openAbove) } : null,
    heater: heater ? { deliveredW: heater.power * HEATER_KINDS[heater.kind].deliveredShare, thermostat: heater.thermostat } : null,
  };
}

function ridgeAzimuthRad(runs: Greenhouse['ridgeRuns']): number {
  if (typeof runs === 'number') return degreesToRadians(runs);
  return runs === 'east-west' ? Math.PI / 2 : 0;
}

function drumGroup(group: Greenhouse['drums'][number], geometry: HouseGeometry): DrumGroup {
  const each = drumConductanceWPerK(group.litres) * (group.touching ? TOUCHING_FACTOR : 1);
  const sunShare = group.sunny ? Math.min(0.5, (group.count * DRUM_SUN_AREA_M2) / geometry.floorAreaM2) : 0;
  return { litresEach: group.litres, count: group.count, conductanceWPerK: each * group.count, sunShare };
}

/** Beds as given, then the path, then the edge; areas add up to the floor. */
function floorColumns(greenhouse: Greenhouse, geometry: HouseGeometry): FloorColumn[] {
  const { beds, soil, size } = greenhouse;
  const innerM2 = Math.max(0.5, size.width - 2 * EDGE_WIDTH_M) * Math.max(0.5, size.length - 2 * EDGE_WIDTH_M);
  const givenM2 = beds.reduce((sum, bed) => sum + (bed.area ?? 0), 0);
  const without = beds.filter((bed) => bed.area === undefined).length;
  const shareM2 = without > 0 ? Math.max(LEAST_BED_M2, (BED_SHARE * innerM2 - givenM2) / without) : 0;
  const columns: FloorColumn[] = beds.map((bed) => ({
    name: bed.name,
    kind: 'bed',
    areaM2: bed.area ?? shareM2,
    soil: SOILS[soil.kind][soil.moisture],
    rowCover: bed.cover ? (bed.cover.kind === 'fabric' ? fabricCover(bed.cover.weight) : FILM_TUNNEL) : null,
    foliageKgPerM2: bed.crops.length > 0 ? FOLIAGE_KG_PER_M2 : 0,
    evaporationShare: EVAPORATION_SHARE[soil.moisture],
    edgeConductanceWPerK: 0,
  }));
  const bedM2 = columns.reduce((sum, column) => sum + column.areaM2, 0);
  const leftM2 = geometry.floorAreaM2 - bedM2;
  const bare = { rowCover: null, foliageKgPerM2: 0, soil: SOILS[soil.kind][soil.pathMoisture], evaporationShare: EVAPORATION_SHARE[soil.pathMoisture] };
  const edgeSpaceM2 = geometry.floorAreaM2 - innerM2;
  const edgeM2 = leftM2 - edgeSpaceM2 > LEAST_STRIP_M2 ? edgeSpaceM2 : Math.max(leftM2, 0);
  const edgeConductanceWPerK = EDGE_LOSS_W_PER_MK * geometry.perimeterM;
  if (edgeM2 > LEAST_STRIP_M2) columns.push({ ...bare, name: 'edge', kind: 'edge', areaM2: edgeM2, edgeConductanceWPerK });
  if (leftM2 - edgeM2 > LEAST_STRIP_M2) columns.push({ ...bare, name: 'path', kind: 'path', areaM2: leftM2 - edgeM2, edgeConductanceWPerK: 0 });
  return columns;
}
