import type { Leakage } from '../airflow/infiltration.js';
import { windShareAtHeight } from '../airflow/wind-at-cover.js';
import { FILM_GAP_W_PER_M2K, SLACK_FILM_GAP_W_PER_M2K } from '../cover/convection.js';
import { houseGeometry, type HouseGeometry } from '../cover/shape.js';
import { CURTAINS } from '../data/curtains.js';
import { FILMS, type FilmRow } from '../data/films.js';
import { celsiusToKelvin, degreesToRadians } from '../units.js';
import { drumGroup, fanOf, heapOf, heaterOf, solidWallOf, stoneBoxOf, stoneGroup, tubesOf } from './devices-to-house.js';
import { floorColumns } from './floor-columns.js';
import type { Greenhouse } from './greenhouse.js';
import type { House } from './house.js';

/** Air changes an hour in still air and for each m/s; NRAES-33 gives 0.5-1.0 for new double film, home-built houses 1-3 (prior of this project). */
const LEAKAGE = {
  tight: { stillAirChangesPerHour: 0.2, perWindAirChangesPerHour: 0.1 },
  ordinary: { stillAirChangesPerHour: 0.3, perWindAirChangesPerHour: 0.2 },
  leaky: { stillAirChangesPerHour: 0.8, perWindAirChangesPerHour: 0.4 },
} as const satisfies Record<string, Leakage>;

/** Frame, dirt and age leave this share of the light (from memory: 5-15 % for dirt, 5-10 % for the frame). */
const CLEAN_SHARE = 0.85;
const DEFAULT_ELEVATION_M = 0;
/** Up to here a solid wall reaches when nobody says (project estimate). */
const USUAL_WALL_M = 2;
const FACES_RAD = { north: 0, east: Math.PI / 2, south: Math.PI, west: (3 * Math.PI) / 2 } as const;

/**
 * The house in SI from the grower's description, every default decided.
 * Units: the file's units in, SI out.
 * Valid: a checked greenhouse.
 * Outside: throws OutOfRangeError for sizes that geometry cannot take.
 * Source: defaults as named above.
 */
export function toHouse(greenhouse: Greenhouse): House {
  const { size, place, vents } = greenhouse;
  const geometry = geometryOf(greenhouse);
  const columns = floorColumns(greenhouse, geometry);
  const { films, gapsWPerM2K, slackGapsWPerM2K } = coverOf(greenhouse);
  return {
    place: { latitude: place.latitude, longitude: place.longitude, elevationM: place.elevation ?? DEFAULT_ELEVATION_M },
    geometry,
    films,
    gapsWPerM2K,
    slackGapsWPerM2K,
    cleanShare: CLEAN_SHARE,
    skyViewFraction: place.openSky,
    windShare: windShareAtHeight(size.height, place.surroundings),
    leakage: LEAKAGE[greenhouse.leakage],
    columns,
    curtain: greenhouse.curtain ? CURTAINS[greenhouse.curtain.kind] : null,
    solidWall: geometry.solidWall ? solidWallOf(greenhouse.solidWall, geometry.solidWall.areaM2) : null,
    drums: greenhouse.drums.map((group) => drumGroup(group, geometry.floorAreaM2)),
    stones: greenhouse.stones.map((group) => stoneGroup(group, geometry.floorAreaM2)),
    stoneBox: greenhouse.stoneBox ? stoneBoxOf(greenhouse.stoneBox, geometry.floorAreaM2) : null,
    tubes: greenhouse.tubes ? tubesOf(greenhouse.tubes, greenhouse.soil) : null,
    stirringFan: greenhouse.fan ? fanOf(greenhouse.fan) : null,
    heap: greenhouse.compost ? heapOf(greenhouse.compost, columns) : null,
    vents: vents ? { openAreaM2: vents.area, stackHeightM: size.height / 2, openAboveK: celsiusToKelvin(vents.openAbove), byOpener: vents.opener } : null,
    heater: greenhouse.heater ? heaterOf(greenhouse.heater) : null,
    mayHoldSnow: greenhouse.now.snowOnRoof > 0,
  };
}

function geometryOf(greenhouse: Greenhouse): HouseGeometry {
  const { size, solidWall, shape } = greenhouse;
  const isLeanTo = shape === 'lean-to';
  const shadySideRad = greenhouse.place.latitude >= 0 ? FACES_RAD.north : FACES_RAD.south;
  return houseGeometry({
    kind: shape,
    widthM: size.width,
    lengthM: size.length,
    heightM: size.height,
    sideHeightM: greenhouse.sideHeight,
    ridgeAzimuthRad: ridgeAzimuthRad(greenhouse.ridgeRuns),
    solidWall: isLeanTo || solidWall ? { heightM: isLeanTo ? size.height : (solidWall?.height ?? Math.min(USUAL_WALL_M, size.height)), facesAzimuthRad: solidWall?.faces ? FACES_RAD[solidWall.faces] : shadySideRad } : null,
  });
}

function ridgeAzimuthRad(runs: Greenhouse['ridgeRuns']): number {
  if (typeof runs === 'number') return degreesToRadians(runs);
  return runs === 'east-west' ? Math.PI / 2 : 0;
}

/** Sheets from inside to outside with the gaps between them; the two sheets of a panel have their own. */
function coverOf(greenhouse: Greenhouse): Pick<House, 'films' | 'gapsWPerM2K' | 'slackGapsWPerM2K'> {
  const films: FilmRow[] = [];
  const gapsWPerM2K: number[] = [];
  const slackGapsWPerM2K: number[] = [];
  const addGap = (steady: number, slack: number): void => {
    gapsWPerM2K.push(steady);
    slackGapsWPerM2K.push(slack);
  };
  for (const { film } of [...greenhouse.layers].reverse()) {
    const row: FilmRow = FILMS[film];
    if (films.length > 0) addGap(FILM_GAP_W_PER_M2K, greenhouse.blower ? SLACK_FILM_GAP_W_PER_M2K : FILM_GAP_W_PER_M2K);
    films.push(row);
    if (row.webWPerM2K === null) continue;
    addGap(row.webWPerM2K, row.webWPerM2K);
    films.push(row);
  }
  return { films, gapsWPerM2K, slackGapsWPerM2K };
}
