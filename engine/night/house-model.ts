import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, WATER_HEAT_CAPACITY_J_PER_KGK } from '../constants.js';
import { FILM_GAP_W_PER_M2K, naturalConvectionWPerM2K, outsideConvectionWPerM2K, STABLE_W_PER_M2K43, UNSTABLE_W_PER_M2K43 } from '../cover/convection.js';
import { planeIndex, type PlaneIndex } from '../cover/longwave-exchange.js';
import type { House } from '../greenhouse/house.js';
import { layerNearest, SOIL_LAYERS_M, soilColumn } from '../ground/soil-column.js';
import { DRUM_SHARES, waterStore } from '../mass/water-drum.js';
import { MASSLESS, sensibleStore } from '../network/enthalpy.js';
import { createNetwork, steadyConductor, type Conductor, type Network, type NetworkNode, type Radiator } from '../network/network.js';
import { leakageM3PerS } from '../airflow/infiltration.js';
import { ventFlowM3PerS } from '../airflow/vent-flow.js';

/** Foliage and rough soil exchange more with the air than a smooth plate (prior of this project, 0.8 to 2.5). */
const SOIL_ROUGHNESS = 1.4;
/** Even layered air under a cover exchanges this much with the soil (prior of this project). */
const LEAST_SOIL_TO_AIR_W_PER_M2K = 1;
/** Row cover to the air on either side (prior of this project). */
export const ROW_COVER_TO_AIR_W_PER_M2K = 3;
/** Depths at which the edge strip loses heat to the ground outside (5 to 30 cm; prior of this project). */
const EDGE_DEPTHS_M = [0.05, 0.11, 0.23] as const;
/** Plants of a bed without its cover stand in the house air. */
const UNCOVERED_EXCHANGE_W_PER_M2K = 30;
/** Height of the air under a row cover on low hoops. */
export const UNDER_COVER_HEIGHT_M = 0.4;
const TYPICAL_AIR_DENSITY_KG_PER_M3 = 1.27;
/** Vents open from closed to full over this much warming: growers open by degrees, and a step would never settle. */
const VENT_BAND_K = 4;
/** Vents are there to cool: they close over this much as the air outside comes up to that inside. With warmer air outside a step could have two answers. */
const VENT_EXCESS_K = 1;

export interface ColumnIndex {
  readonly surface: number;
  readonly deepest: number;
  /** -1 where there is no row cover. */
  readonly rowCover: number;
  readonly underCoverAir: number;
}

/** What is the same for one step: weather at the cover, air density, what the grower has shut, covered or lit. */
export interface Conditions {
  windAtCoverMPerS: number;
  airDensityKgPerM3: number;
  ventsMayOpen: boolean;
  coverOn: boolean[];
  heaterOn: boolean;
  heaterSetK: number | null;
}

/** The network of one house, and where everything stands in it. */
export interface HouseModel {
  readonly house: House;
  readonly network: Network;
  readonly air: number;
  /** Inner film first. */
  readonly films: readonly number[];
  readonly columns: readonly ColumnIndex[];
  readonly drums: readonly number[];
  readonly outside: number;
  readonly surroundings: number;
  readonly deep: number;
  readonly plane: PlaneIndex;
  /** Network index of each plane of the longwave enclosure. */
  readonly planeNodes: readonly number[];
  /** Read by the conductors; set before each step. */
  readonly conditions: Conditions;
}

export function freshConditions(house: House): Conditions {
  return { windAtCoverMPerS: 0, airDensityKgPerM3: TYPICAL_AIR_DENSITY_KG_PER_M3, ventsMayOpen: true, coverOn: house.columns.map(() => false), heaterOn: false, heaterSetK: null };
}

/**
 * Exchange between the air under a row cover and the house air: through the fabric while it lies on the bed, freely while it does not.
 * Units: index of the column in; W/K out.
 * Valid: columns of the house.
 * Outside: throws for a column that the house does not have.
 * Source: leak of the row cover's own row; uncovered exchange as named above (prior of this project).
 */
export function coverExchangeWPerK(house: House, conditions: Conditions, column: number): number {
  const { areaM2, rowCover } = house.columns[column]!;
  return areaM2 * (conditions.coverOn[column] && rowCover ? rowCover.leakWPerM2K : UNCOVERED_EXCHANGE_W_PER_M2K);
}

const airCapacityJPerK = (volumeM3: number): number => volumeM3 * TYPICAL_AIR_DENSITY_KG_PER_M3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK;

/**
 * Natural convection between the air below and a film: mixing when the air is warmer.
 * Units: K in; W/(m2 K) out.
 * Valid: any temperatures.
 * Outside: not applicable.
 * Source: naturalConvectionWPerM2K (form of Walton1983).
 */
export const filmToAirWPerM2K = (filmTempK: number, airTempK: number): number =>
  naturalConvectionWPerM2K(airTempK - filmTempK, airTempK > filmTempK ? UNSTABLE_W_PER_M2K43 : STABLE_W_PER_M2K43);

/**
 * Natural convection between soil with its foliage and the air above: mixing when the soil is warmer, never less than the floor named above.
 * Units: K in; W/(m2 K) out.
 * Valid: any temperatures.
 * Outside: not applicable.
 * Source: naturalConvectionWPerM2K (form of Walton1983); roughness and floor are priors of this project.
 */
export const soilToAirWPerM2K = (soilTempK: number, airTempK: number): number =>
  Math.max(LEAST_SOIL_TO_AIR_W_PER_M2K, SOIL_ROUGHNESS * naturalConvectionWPerM2K(soilTempK - airTempK, soilTempK > airTempK ? UNSTABLE_W_PER_M2K43 : STABLE_W_PER_M2K43));

/**
 * Leakage and vents together: the one place that decides how much outside air comes in.
 * Units: K in; m3/s out.
 * Valid: wind at the cover 0 to 40 m/s.
 * Outside: throws OutOfRangeError.
 * Source: leakageM3PerS and ventFlowM3PerS; gradual opening as named above (prior of this project).
 */
export function outsideAirflowM3PerS(house: House, conditions: Conditions, temps: { insideAirTempK: number; outsideAirTempK: number }): number {
  const leak = leakageM3PerS(house.leakage, house.geometry.volumeM3, conditions.windAtCoverMPerS);
  if (!house.vents || !conditions.ventsMayOpen) return leak;
  const warmth = (temps.insideAirTempK - house.vents.openAboveK) / VENT_BAND_K;
  const excess = (temps.insideAirTempK - temps.outsideAirTempK) / VENT_EXCESS_K;
  const opening = Math.min(1, Math.max(0, Math.min(warmth, excess)));
  if (opening === 0) return leak;
  return leak + ventFlowM3PerS({ openAreaM2: opening * house.vents.openAreaM2, stackHeightM: house.vents.stackHeightM }, { ...temps, windSpeedMPerS: conditions.windAtCoverMPerS });
}

/**
 * Builds the network of a house: films, air, a soil column for each bed, path and edge, row covers with their air, drums.
 * A house without a thing carries no node for it.
 * Units: SI.
 * Valid: a house from toHouse.
 * Outside: throws from the parts.
 * Source: network of this project; each relation names its own source.
 */
export function buildHouseModel(house: House): HouseModel {
  const nodes: NetworkNode[] = [];
  const conductors: Conductor[] = [];
  const conditions = freshConditions(house);
  const addNode = (node: NetworkNode): number => nodes.push(node) - 1;
  const { coverAreaM2 } = house.geometry;

  const openFoliageKg = house.columns.reduce((sum, column) => sum + (column.rowCover ? 0 : column.areaM2 * column.foliageKgPerM2), 0);
  const air = addNode({ name: 'inside air', store: sensibleStore(airCapacityJPerK(house.geometry.volumeM3) + openFoliageKg * WATER_HEAT_CAPACITY_J_PER_KGK) });
  const films = house.films.map((_, f) => addNode({ name: f === 0 ? 'inner film' : 'outer film', store: MASSLESS }));
  const size = nodes.length + house.columns.reduce((sum, column) => sum + SOIL_LAYERS_M.length + (column.rowCover ? 2 : 0), 0) + house.drums.length;
  const [outside, surroundings, deep] = [size, size + 1, size + 2];

  const columns = house.columns.map((column, c): ColumnIndex => {
    const surface = nodes.length;
    const soil = soilColumn(column.soil, { areaM2: column.areaM2, firstNode: surface, deepBoundary: deep, name: column.name });
    nodes.push(...soil.nodes);
    conductors.push(...soil.conductors);
    const deepest = nodes.length - 1;
    if (column.edgeConductanceWPerK > 0) for (const depthM of EDGE_DEPTHS_M) conductors.push(steadyConductor(surface + layerNearest(depthM), outside, column.edgeConductanceWPerK / EDGE_DEPTHS_M.length));
    if (!column.rowCover) {
      conductors.push({ a: surface, b: air, dependsOnTemps: true, conductanceWPerK: (soilK, airK) => column.areaM2 * soilToAirWPerM2K(soilK, airK) });
      return { surface, deepest, rowCover: -1, underCoverAir: -1 };
    }
    const rowCover = addNode({ name: `${column.name} row cover`, store: MASSLESS });
    const foliage = column.areaM2 * column.foliageKgPerM2 * WATER_HEAT_CAPACITY_J_PER_KGK;
    const underCoverAir = addNode({ name: `${column.name} air under cover`, store: sensibleStore(airCapacityJPerK(column.areaM2 * UNDER_COVER_HEIGHT_M) + foliage) });
    const { areaM2 } = column;
    conductors.push(
      { a: surface, b: underCoverAir, dependsOnTemps: true, conductanceWPerK: (soilK, airK) => areaM2 * soilToAirWPerM2K(soilK, airK) },
      steadyConductor(underCoverAir, rowCover, areaM2 * ROW_COVER_TO_AIR_W_PER_M2K),
      steadyConductor(rowCover, air, areaM2 * ROW_COVER_TO_AIR_W_PER_M2K),
      { a: underCoverAir, b: air, dependsOnTemps: false, conductanceWPerK: () => coverExchangeWPerK(house, conditions, c) },
    );
    return { surface, deepest, rowCover, underCoverAir };
  });

  const drumGround = columns[columns.length - 1]!.surface;
  const drums = house.drums.map((group, d) => {
    const node = addNode({ name: `drums ${d + 1}`, store: scaledStore(group.litresEach, group.count) });
    conductors.push(
      steadyConductor(node, air, DRUM_SHARES.air * group.conductanceWPerK),
      steadyConductor(node, films[0]!, DRUM_SHARES.film * group.conductanceWPerK),
      steadyConductor(node, drumGround, DRUM_SHARES.ground * group.conductanceWPerK),
    );
    return node;
  });

  conductors.push({ a: films[0]!, b: air, dependsOnTemps: true, conductanceWPerK: (filmK, airK) => coverAreaM2 * filmToAirWPerM2K(filmK, airK) });
  if (films.length === 2) conductors.push(steadyConductor(films[0]!, films[1]!, coverAreaM2 * FILM_GAP_W_PER_M2K));
  conductors.push({ a: films.at(-1)!, b: outside, dependsOnTemps: false, conductanceWPerK: () => coverAreaM2 * outsideConvectionWPerM2K(conditions.windAtCoverMPerS) });
  conductors.push({
    a: air,
    b: outside,
    dependsOnTemps: house.vents !== null,
    conductanceWPerK: (insideAirTempK, outsideAirTempK) =>
      outsideAirflowM3PerS(house, conditions, { insideAirTempK, outsideAirTempK }) * conditions.airDensityKgPerM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK,
  });

  const plane = planeIndex({ coverAreaM2, films: house.films.map((film) => film.dry), patches: house.columns.map((column) => ({ areaM2: column.areaM2, emissivity: 1, rowCover: column.rowCover?.dry ?? null })) });
  const planeNodes = [...columns.map((column) => column.surface), ...columns.filter((column) => column.rowCover >= 0).map((column) => column.rowCover), ...films, surroundings];
  const radiators: Radiator[] = [];
  for (let n = 0; n < plane.count; n += 1) for (let m = n + 1; m < plane.count; m += 1) radiators.push({ a: planeNodes[n]!, b: planeNodes[m]!, exchangeAreaM2: 0 });
  const network = createNetwork({ nodes, boundaries: ['outside air', 'sky and surroundings', 'deep ground'], conductors, radiators });
  return { house, network, air, films, columns, drums, outside, surroundings, deep, plane, planeNodes, conditions };
}

function scaledStore(litresEach: number, count: number): NetworkNode['store'] {
  const one = waterStore(litresEach);
  return { ...one, thawedJPerK: one.thawedJPerK * count, frozenJPerK: one.frozenJPerK * count, latentJ: one.latentJ * count };
}
