import { edgeLossWPerMK } from '../cover/edge-loss.js';
import type { HouseGeometry } from '../cover/shape.js';
import { fabricCover, FILM_TUNNEL, type RowCoverRow } from '../data/row-covers.js';
import { SOILS } from '../data/soils.js';
import type { Greenhouse } from './greenhouse.js';
import type { FloorColumn } from './house.js';

/** Width of the strip along the walls that feels the ground outside (project estimate). */
const EDGE_WIDTH_M = 0.4;
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

type Cover = NonNullable<Greenhouse['beds'][number]['cover']>;

const coverRow = (cover: Cover | NonNullable<Cover['second']>): RowCoverRow => (cover.kind === 'fabric' ? fabricCover(cover.weight) : FILM_TUNNEL);

/**
 * Beds as given, then the edge, then the path; areas add up to the floor.
 * Units: m2, kg/m2, W/K.
 * Valid: a checked greenhouse and its own geometry.
 * Outside: not checked; the check refuses beds that are larger than the floor.
 * Source: defaults as named above.
 */
export function floorColumns(greenhouse: Greenhouse, geometry: HouseGeometry): FloorColumn[] {
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
    rowCover: bed.cover ? coverRow(bed.cover) : null,
    secondCover: bed.cover?.second ? coverRow(bed.cover.second) : null,
    foliageKgPerM2: bed.crops.length > 0 ? FOLIAGE_KG_PER_M2 : 0,
    evaporationShare: EVAPORATION_SHARE[soil.moisture],
    edgeConductanceWPerK: 0,
  }));
  const bedM2 = columns.reduce((sum, column) => sum + column.areaM2, 0);
  const leftM2 = geometry.floorAreaM2 - bedM2;
  const bare = { rowCover: null, secondCover: null, foliageKgPerM2: 0, soil: SOILS[soil.kind][soil.pathMoisture], evaporationShare: EVAPORATION_SHARE[soil.pathMoisture] };
  const edgeSpaceM2 = geometry.floorAreaM2 - innerM2;
  const edgeM2 = leftM2 - edgeSpaceM2 > LEAST_STRIP_M2 ? edgeSpaceM2 : Math.max(leftM2, 0);
  const { edgeInsulation: foam } = greenhouse;
  const edgeConductanceWPerK = edgeLossWPerMK(foam ? { depthM: foam.depth, thicknessM: foam.thickness } : null) * geometry.perimeterM;
  if (edgeM2 > LEAST_STRIP_M2) columns.push({ ...bare, name: 'edge', kind: 'edge', areaM2: edgeM2, edgeConductanceWPerK });
  if (leftM2 - edgeM2 > LEAST_STRIP_M2) columns.push({ ...bare, name: 'path', kind: 'path', areaM2: leftM2 - edgeM2, edgeConductanceWPerK: 0 });
  return columns;
}
