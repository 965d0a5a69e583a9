import { leakageM3PerS } from '../airflow/infiltration.js';
import { mixedWPerM2K } from '../airflow/stirred-air.js';
import { ventFlowM3PerS } from '../airflow/vent-flow.js';
import { houseAirConvectionWPerM2K, STABLE_W_PER_M2K43, UNSTABLE_W_PER_M2K43, VERTICAL_W_PER_M2K43 } from '../cover/convection.js';
import type { House } from '../greenhouse/house.js';
import type { Conditions } from './conditions.js';

const HOUSE_SURFACES = { mixing: UNSTABLE_W_PER_M2K43, layered: STABLE_W_PER_M2K43 } as const;
/** An upright wall stirs the air whichever of the two is warmer. */
const UPRIGHT_SURFACES = { mixing: VERTICAL_W_PER_M2K43, layered: VERTICAL_W_PER_M2K43 } as const;
/** Foliage and rough soil exchange more with the air than a smooth plate (prior of this project, 0.8 to 2.5). */
const SOIL_ROUGHNESS = 1.4;
/** Even layered air under a cover exchanges this much with the soil (prior of this project). */
const LEAST_SOIL_TO_AIR_W_PER_M2K = 1;
/** Row cover to the air on either side (prior of this project). */
export const ROW_COVER_TO_AIR_W_PER_M2K = 3;
/** Two covers that lie over each other hold a thin layer of air between them (prior of this project). */
export const BETWEEN_COVERS_W_PER_M2K = 3;
/** Plants of a bed without its cover stand in the house air, and an open curtain parts nothing. */
const FREE_EXCHANGE_W_PER_M2K = 300;
/** Height of the air under a row cover on low hoops. */
export const UNDER_COVER_HEIGHT_M = 0.4;
/** Vents open from closed to full over this much warming: growers open by degrees, and a step would never settle. */
const VENT_BAND_K = 4;
/** Vents are there to cool: they close over this much as the air outside comes up to that inside. With warmer air outside a step could have two answers. */
const VENT_EXCESS_K = 1;

/**
 * Exchange between the air under a row cover and the house air: through the fabrics while they lie on the bed, freely while they do not.
 * Units: index of the column in; W/K out.
 * Valid: columns of the house.
 * Outside: throws for a column that the house does not have.
 * Source: leaks of the row covers' own rows, one behind the other; free exchange as named above (prior of this project).
 */
export function coverExchangeWPerK(house: House, conditions: Conditions, column: number): number {
  const { areaM2, rowCover, secondCover } = house.columns[column]!;
  if (!conditions.coverOn[column] || !rowCover) return areaM2 * FREE_EXCHANGE_W_PER_M2K;
  return areaM2 * (secondCover ? 1 / (1 / rowCover.leakWPerM2K + 1 / secondCover.leakWPerM2K) : rowCover.leakWPerM2K);
}

/** Exchange of air past the inner curtain. Units: W/K. Valid: a house with a curtain. Outside: throws without one. Source: leak of the curtain's own row; free exchange as named above (prior of this project). */
export const curtainExchangeWPerK = (house: House, conditions: Conditions): number => house.geometry.floorAreaM2 * (conditions.curtainDrawn ? house.curtain!.leakWPerM2K : FREE_EXCHANGE_W_PER_M2K);

/**
 * Convection between the air below and a film or curtain: mixing when the air is warmer, more where a fan stirs it.
 * Units: K in; W/(m2 K) out.
 * Valid: any temperatures.
 * Outside: not applicable.
 * Source: houseAirConvectionWPerM2K, mixedWPerM2K.
 */
export const filmToAirWPerM2K = (filmTempK: number, airTempK: number, stirredWPerM2K: number): number =>
  mixedWPerM2K(houseAirConvectionWPerM2K(airTempK - filmTempK, HOUSE_SURFACES), stirredWPerM2K);

/**
 * Convection between soil with its foliage and the air above: mixing when the soil is warmer, never less than the floor named above.
 * Units: K in; W/(m2 K) out.
 * Valid: any temperatures.
 * Outside: not applicable.
 * Source: houseAirConvectionWPerM2K, mixedWPerM2K; roughness and floor are priors of this project.
 */
export const soilToAirWPerM2K = (soilTempK: number, airTempK: number, stirredWPerM2K: number): number =>
  mixedWPerM2K(Math.max(LEAST_SOIL_TO_AIR_W_PER_M2K, SOIL_ROUGHNESS * houseAirConvectionWPerM2K(soilTempK - airTempK, HOUSE_SURFACES)), stirredWPerM2K);

/** Convection between an upright wall and the air. Units: K in; W/(m2 K) out. Valid: any temperatures. Outside: not applicable. Source: Walton1983 vertical surface, mixedWPerM2K. */
export const wallToAirWPerM2K = (wallTempK: number, airTempK: number, stirredWPerM2K: number): number => mixedWPerM2K(houseAirConvectionWPerM2K(wallTempK - airTempK, UPRIGHT_SURFACES), stirredWPerM2K);

/** Stirred air reaches a bed only while no cover lies on it. Units: W/(m2 K). Valid: columns of the house. Outside: not checked. Source: definition. */
export const stirredAtColumnWPerM2K = (conditions: Conditions, column: number): number => (conditions.coverOn[column] ? 0 : conditions.stirredWPerM2K);

/**
 * Leakage, holes and vents together: the one place that decides how much outside air comes in.
 * Units: K in; m3/s out.
 * Valid: wind at the cover 0 to 40 m/s.
 * Outside: throws OutOfRangeError.
 * Source: leakageM3PerS and ventFlowM3PerS; gradual opening as named above (prior of this project).
 */
export function outsideAirflowM3PerS(house: House, conditions: Conditions, temps: { insideAirTempK: number; outsideAirTempK: number }): number {
  const leak = leakageM3PerS(house.leakage, house.geometry.volumeM3, conditions.windAtCoverMPerS);
  const openM2 = conditions.troubles.openingM2 + ventOpeningM2(house, conditions, temps);
  if (openM2 === 0) return leak;
  const stackHeightM = house.vents?.stackHeightM ?? house.geometry.volumeM3 / house.geometry.floorAreaM2 / 2;
  return leak + ventFlowM3PerS({ openAreaM2: openM2, stackHeightM }, { ...temps, windSpeedMPerS: conditions.windAtCoverMPerS });
}

function ventOpeningM2(house: House, conditions: Conditions, temps: { insideAirTempK: number; outsideAirTempK: number }): number {
  if (!house.vents || !(conditions.ventsMayOpen || house.vents.byOpener)) return 0;
  const warmth = (temps.insideAirTempK - house.vents.openAboveK) / VENT_BAND_K;
  const excess = (temps.insideAirTempK - temps.outsideAirTempK) / VENT_EXCESS_K;
  return Math.min(1, Math.max(0, Math.min(warmth, excess))) * house.vents.openAreaM2;
}
