import { blendOptics, type LongwaveOptics } from '../cover/film-optics.js';
import type { FloorPatch, LongwaveEnclosure, StandingBodies } from '../cover/longwave-enclosure.js';
import { SNOW_EMISSIVITY, snowHoldingShare, snowyShare } from '../cover/snow-layer.js';
import type { House } from '../greenhouse/house.js';
import { BODY_EMISSIVITY, shownM2 } from '../mass/standing-body.js';

/** Soil longwave emissivity (from memory: 0.92 to 0.97). */
const SOIL_EMISSIVITY = 0.95;
/** Brick, stone and plaster (from memory: 0.9 to 0.95). */
const WALL_EMISSIVITY = 0.93;
const TRANSPARENT: LongwaveOptics = { transmittance: 1, emissivity: 0 };

/** What lies on beds and roof, and the water on each plane (kg/m2), as the longwave sees it. */
export interface LaidPlanes {
  readonly coverOn: (column: number) => boolean;
  readonly curtainDrawn: boolean;
  readonly roofSnowM: number;
  readonly innerFilmWater: number;
  readonly outerFilmWater: number;
  readonly rowCoverWater: (column: number) => number;
  readonly curtainWater: number;
}

export const NOTHING_LAID: LaidPlanes = { coverOn: () => false, curtainDrawn: false, roofSnowM: 0, innerFilmWater: 0, outerFilmWater: 0, rowCoverWater: () => 0, curtainWater: 0 };

/**
 * The longwave enclosure of a house: films and covers with the water they hold; what is not laid or drawn lets everything pass.
 * Units: m2, kg/m2.
 * Valid: any house.
 * Outside: not applicable.
 * Source: optics of the rows of data/; emissivities as named above (from memory).
 */
export function enclosureOf(house: House, laid: LaidPlanes): LongwaveEnclosure {
  const last = house.films.length - 1;
  const films = house.films.map((film, f) => blendOptics(film.dry, film.wet, (f === 0 ? laid.innerFilmWater : 0) + (f === last ? laid.outerFilmWater : 0)));
  const snowy = snowyShare(laid.roofSnowM, snowHoldingShare(house.geometry.facets));
  return {
    coverAreaM2: house.geometry.coverAreaM2,
    films: house.mayHoldSnow ? [...films, { transmittance: 1 - snowy, emissivity: 0 }] : films,
    snow: house.mayHoldSnow ? { share: snowy, emissivity: SNOW_EMISSIVITY } : null,
    patches: house.columns.map((_, c): FloorPatch => ({ areaM2: house.columns[c]!.areaM2, emissivity: SOIL_EMISSIVITY, covers: coversOf(house, laid, c) })),
    bodies: bodiesOf(house),
    curtain: house.curtain ? (laid.curtainDrawn ? blendOptics(house.curtain.dry, house.curtain.wet, laid.curtainWater) : TRANSPARENT) : null,
    wall: house.geometry.solidWall ? { areaM2: house.geometry.solidWall.areaM2, emissivity: WALL_EMISSIVITY, openingAreaM2: house.geometry.solidWall.openingAreaM2 } : null,
  };
}

/** Where they stand close they hide each other before they hide all of the floor (project estimate). */
const MOST_HIDDEN_SHARE = 0.8;

/** Drums, then stones. */
function bodiesOf(house: House): readonly StandingBodies[] {
  const shown = [...house.drums.map(({ conductanceWPerK }) => conductanceWPerK), ...house.stones.map(({ lumps }) => lumps.surfaceWPerK)].map(shownM2);
  const share = Math.min(1, (MOST_HIDDEN_SHARE * house.geometry.floorAreaM2) / shown.reduce((sum, m2) => sum + m2, 0));
  return shown.map((m2) => ({ shownM2: m2 * share, emissivity: BODY_EMISSIVITY }));
}

/** Condensation gathers on the lowest cover: that over it stays dry. */
function coversOf(house: House, laid: LaidPlanes, c: number): readonly LongwaveOptics[] {
  const { rowCover, secondCover } = house.columns[c]!;
  const rows = [rowCover, secondCover].filter((row) => row !== null);
  return rows.map((row, k) => (laid.coverOn(c) ? blendOptics(row.dry, row.wet, k === 0 ? laid.rowCoverWater(c) : 0) : TRANSPARENT));
}
