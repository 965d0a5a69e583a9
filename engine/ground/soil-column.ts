import { FUSION_HEAT_J_PER_KG, WATER_DENSITY_KG_PER_M3, WATER_HEAT_CAPACITY_J_PER_KGK } from '../constants.js';
import type { SoilRow } from '../data/soils.js';
import type { HeatStore } from '../network/enthalpy.js';
import { steadyConductor, type Conductor, type NetworkNode } from '../network/network.js';

/** Thickness of the soil layers from the surface down (m): fine where a night acts, coarse where a season does. */
export const SOIL_LAYERS_M = [0.005, 0.01, 0.02, 0.04, 0.08, 0.15, 0.3, 0.5] as const;
/** Depth at which the temperature is given for the fortnight (m). */
export const DEEP_SOIL_DEPTH_M = 1.5;
/** Soil water freezes between 0 and -1 degrees C (range given with the apparent heat capacity method, from memory). */
const FREEZING_BAND_K = 1;
/** What dissolved in the ground heat of ice against water: frozen soil holds about this share of the thawed heat capacity (Moene2014, ice 1.88 against water 4.18 MJ/(m3 K)). */
const ICE_TO_WATER_CAPACITY = 1.88 / 4.18;

/**
 * Depth of the middle of a layer.
 * Units: index of the layer in; m out.
 * Valid: an index of SOIL_LAYERS_M.
 * Outside: not checked; an index beyond the last layer gives NaN.
 * Source: geometry.
 */
export function layerDepthM(layer: number): number {
  return SOIL_LAYERS_M.slice(0, layer).reduce((sum, thickness) => sum + thickness, 0) + SOIL_LAYERS_M[layer]! / 2;
}

/**
 * The layer whose middle is nearest to a depth.
 * Units: m in; index of the layer out.
 * Valid: 0 to 1.1 m.
 * Outside: the nearest layer.
 * Source: definition.
 */
export function layerNearest(depthM: number): number {
  return SOIL_LAYERS_M.reduce((nearest, _, layer) => (Math.abs(layerDepthM(layer) - depthM) < Math.abs(layerDepthM(nearest) - depthM) ? layer : nearest), 0);
}

/**
 * Nodes and conductors of a column of soil under an area of floor.
 * Units: m2; soil in W/(m K), J/(m3 K), water fraction by volume.
 * Valid: positive area.
 * Outside: not checked; areas come from a checked house.
 * Source: finite volumes; freezing by apparent heat capacity with theta rho L (Moene2014 properties). Grid tested against Carslaw1959.
 */
export function soilColumn(soil: SoilRow, place: { areaM2: number; firstNode: number; deepBoundary: number; name: string }): { nodes: NetworkNode[]; conductors: Conductor[] } {
  const { areaM2, firstNode, deepBoundary, name } = place;
  const nodes = SOIL_LAYERS_M.map((thicknessM, layer): NetworkNode => ({ name: `${name} soil ${layer}`, store: soilStore(soil, areaM2 * thicknessM) }));
  const conductors = SOIL_LAYERS_M.map((_, layer): Conductor => {
    const last = layer === SOIL_LAYERS_M.length - 1;
    const belowDepthM = last ? DEEP_SOIL_DEPTH_M : layerDepthM(layer + 1);
    const conductance = (soil.thermalConductivityWPerMK * areaM2) / (belowDepthM - layerDepthM(layer));
    return steadyConductor(firstNode + layer, last ? deepBoundary : firstNode + layer + 1, conductance);
  });
  return { nodes, conductors };
}

/** Heat store of a volume of soil that may freeze. Units: m3; J/K and J. Valid: any positive volume. Outside: not checked. Source: Moene2014 properties; apparent heat capacity over 1 K. */
export function soilStore(soil: SoilRow, volumeM3: number): HeatStore {
  const waterCapacity = soil.waterFraction * WATER_DENSITY_KG_PER_M3 * WATER_HEAT_CAPACITY_J_PER_KGK;
  const thawed = soil.volumetricHeatCapacityJPerM3K;
  return {
    thawedJPerK: thawed * volumeM3,
    frozenJPerK: Math.max(0.4 * thawed, thawed - (1 - ICE_TO_WATER_CAPACITY) * waterCapacity) * volumeM3,
    latentJ: soil.waterFraction * WATER_DENSITY_KG_PER_M3 * FUSION_HEAT_J_PER_KG * volumeM3,
    freezingBandK: FREEZING_BAND_K,
  };
}
