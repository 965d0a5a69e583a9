import { assertInRange } from '../errors.js';

// Walton1983 as in EnergyPlusEngRef: V = V10 (270/10)^0.14 (z/delta)^alpha; the station stands in open country.
const STATION_LAYER_M = 270;
const STATION_HEIGHT_M = 10;
const STATION_EXPONENT = 0.14;

const TERRAIN = {
  open: { exponent: 0.14, layerM: 270 },
  wooded: { exponent: 0.22, layerM: 370 },
  town: { exponent: 0.33, layerM: 460 },
} as const;

export type Terrain = keyof typeof TERRAIN;
export const TERRAINS = Object.keys(TERRAIN) as readonly Terrain[];

/**
 * Share of the 10 m wind that blows at the height of the cover.
 * Units: heightM in m; result dimensionless.
 * Valid: 0.3 to 20 m.
 * Outside: throws OutOfRangeError.
 * Source: EnergyPlusEngRef, local wind speed (ASHRAE terrain classes).
 */
export function windShareAtHeight(heightM: number, terrain: Terrain): number {
  assertInRange('heightM', heightM, { lowest: 0.3, highest: 20, unit: 'm' });
  const { exponent, layerM } = TERRAIN[terrain];
  return (STATION_LAYER_M / STATION_HEIGHT_M) ** STATION_EXPONENT * (heightM / layerM) ** exponent;
}
