import { RING_COUNT, ringMiddleRadiusM, ringOuterRadiusM } from '../../ground/earth-tube.js';
import { layerDepthM, layerNearest, SOIL_LAYERS_M, soilStore } from '../../ground/soil-column.js';
import type { AirIndex } from './air-part.js';
import type { ColumnIndex } from './floor-part.js';
import { BOUNDARY, type NetworkBuilder } from './network-builder.js';

/** Beyond the last ring the ground is undisturbed at twice its radius (project grid, tested against Carslaw1959). */
const FAR_RADIUS_FACTOR = 2;

/** Rings of soil around the tubes, the innermost first. */
export interface TubesIndex {
  readonly rings: readonly number[];
}

/** All tubes lumped into one: rings of soil, the air that is blown through, and the ground around at the depth of the tubes. */
export function addTubes(builder: NetworkBuilder, around: { air: AirIndex; columns: readonly ColumnIndex[] }): TubesIndex | null {
  const { house, conditions } = builder;
  const { tubes } = house;
  if (!tubes) return null;
  const tubeRadiusM = tubes.diameterM / 2;
  const lengthM = tubes.lengthM * tubes.count;
  const rings = Array.from({ length: RING_COUNT }, (_, ring) => {
    const sectionM2 = Math.PI * (ringOuterRadiusM(tubeRadiusM, ring) ** 2 - ringOuterRadiusM(tubeRadiusM, ring - 1) ** 2);
    return builder.addNode({ name: `soil around tubes ${ring + 1}`, store: soilStore(tubes.soil, sectionM2 * lengthM) });
  });
  const between = (innerM: number, outerM: number): number => (2 * Math.PI * tubes.soil.thermalConductivityWPerMK * lengthM) / Math.log(outerM / innerM);
  for (let ring = 1; ring < RING_COUNT; ring += 1) builder.couple(rings[ring - 1]!, rings[ring]!, between(ringMiddleRadiusM(tubeRadiusM, ring - 1), ringMiddleRadiusM(tubeRadiusM, ring)));
  const outwardWPerK = between(ringMiddleRadiusM(tubeRadiusM, RING_COUNT - 1), FAR_RADIUS_FACTOR * ringOuterRadiusM(tubeRadiusM, RING_COUNT - 1));
  if (tubes.depthM > layerDepthM(SOIL_LAYERS_M.length - 1)) builder.couple(rings.at(-1)!, BOUNDARY.deep, outwardWPerK);
  else around.columns.forEach(({ surface }, c) => builder.couple(rings.at(-1)!, surface + layerNearest(tubes.depthM), (outwardWPerK * house.columns[c]!.areaM2) / house.geometry.floorAreaM2));
  builder.coupleBy(rings[0]!, around.air.air, () => conditions.fanWPerK.tubes);
  return { rings };
}
