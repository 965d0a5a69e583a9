import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, WATER_HEAT_CAPACITY_J_PER_KGK } from '../../constants.js';
import { MASSLESS, sensibleStore } from '../../network/enthalpy.js';
import { curtainExchangeWPerK, filmToAirWPerM2K, outsideAirflowM3PerS } from '../air-exchange.js';
import { BOUNDARY, type NetworkBuilder } from './network-builder.js';

const TYPICAL_AIR_DENSITY_KG_PER_M3 = 1.27;
/** Share of the air that lies above a curtain drawn at the height of the side walls (project estimate). */
export const ROOF_SHARE_OF_VOLUME = 0.4;

export interface AirIndex {
  /** Where the plants stand. */
  readonly air: number;
  /** Under the film: the same body unless there is a curtain. */
  readonly roofAir: number;
  /** -1 without a curtain. */
  readonly curtain: number;
}

/** Heat capacity of a body of air. Units: m3 in, J/K out. Valid: any positive volume. Outside: not checked. Source: definition. */
export const airCapacityJPerK = (volumeM3: number): number => volumeM3 * TYPICAL_AIR_DENSITY_KG_PER_M3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK;

/** The air of the house with its foliage, parted by a curtain where there is one, and what outside air comes in. */
export function addAir(builder: NetworkBuilder): AirIndex {
  const { house, conditions } = builder;
  const openFoliageKg = house.columns.reduce((sum, column) => sum + (column.rowCover ? 0 : column.areaM2 * column.foliageKgPerM2), 0);
  const lowerShare = house.curtain ? 1 - ROOF_SHARE_OF_VOLUME : 1;
  const air = builder.addNode({ name: 'inside air', store: sensibleStore(airCapacityJPerK(lowerShare * house.geometry.volumeM3) + openFoliageKg * WATER_HEAT_CAPACITY_J_PER_KGK) });
  let roofAir = air;
  let curtain = -1;
  if (house.curtain) {
    const { floorAreaM2, volumeM3 } = house.geometry;
    roofAir = builder.addNode({ name: 'air above the curtain', store: sensibleStore(airCapacityJPerK(ROOF_SHARE_OF_VOLUME * volumeM3)) });
    curtain = builder.addNode({ name: 'curtain', store: MASSLESS });
    builder.coupleBy(air, roofAir, () => curtainExchangeWPerK(house, conditions));
    for (const side of [air, roofAir]) builder.coupleByTemps(curtain, side, (curtainK, airK) => floorAreaM2 * filmToAirWPerM2K(curtainK, airK, conditions.stirredWPerM2K));
  }
  builder.coupleByTemps(roofAir, BOUNDARY.outside, (insideAirTempK, outsideAirTempK) => outsideAirflowM3PerS(house, conditions, { insideAirTempK, outsideAirTempK }) * conditions.airDensityKgPerM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK);
  return { air, roofAir, curtain };
}
