import { windShareAtHeight } from '../../../engine/airflow/wind-at-cover.js';
import { outsideConvectionWPerM2K } from '../../../engine/cover/convection.js';
import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, STANDARD_PRESSURE_PA } from '../../../engine/constants.js';
import { moistAirDensityKgPerM3 } from '../../../engine/air/moist-air.js';
import { createNetwork, steadyConductor, type Network } from '../../../engine/network/network.js';
import { celsiusToKelvin, SECONDS_PER_HOUR } from '../../../engine/units.js';
import { greyExchangeAreasM2 } from './bounces.js';
import { addBody, addLayeredWall, CELL_M, type BoxBodies, type Faces } from './box-bodies.js';
import type { BoxCase } from './box-case.js';
import type { BoxWeather } from './box-weather.js';
import { addGlazing, type GlazingBodies } from './glazing-bodies.js';
import { insideConvectionWPerM2K } from './inside-convection.js';
import { roomOf, type Face, type Room } from './room.js';
import { sunInBox, type SunInBox } from './sun-in-box.js';
import { viewAreasM2 } from './view-areas.js';

/** Insulation lies on the ground without a gap. */
const CONTACT_W_PER_M2K = 1000;
/** Lowest height for which the wind profile is given (windShareAtHeight). */
const LOWEST_WIND_M = 0.3;
const AT_20_C = { airTempK: celsiusToKelvin(20), humidityRatio: 0 } as const;

/** A box as a network, and what changes with the hour. */
export interface BoxModel {
  readonly boxCase: BoxCase;
  readonly network: Network;
  readonly air: number;
  /** Index of the first boundary: outside air, above the roof, before the walls, ground under the floor. */
  readonly firstBoundary: number;
  readonly sun: SunInBox;
  /** Steady gains, W by body. */
  readonly gainsW: Float64Array;
  readonly setHour: (weather: BoxWeather, hourOfDay: number) => void;
}

/** What conductors read during a step. */
interface Conditions {
  windMPerS: number;
  airExchangeWPerK: number;
}

// Boundaries get their place once all bodies are known; until then they are counted from here.
const BOUNDARY_BASE = 1_000_000;
const [OUTSIDE, ABOVE_ROOF, BEFORE_WALL, GROUND] = [0, 1, 2, 3].map((k) => BOUNDARY_BASE + k) as [number, number, number, number];
const BOUNDARIES = ['outside air', 'above the roof', 'before the walls', 'ground under the floor'] as const;

export function boxModel(boxCase: BoxCase, siteMeanPressurePa: number, cellM = CELL_M): BoxModel {
  const room = roomOf(boxCase);
  const conditions: Conditions = { windMPerS: 0, airExchangeWPerK: 0 };
  const bodies: BoxBodies = { nodes: [], conductors: [], radiators: [] };
  const volumeM3 = room.sizeM[0] * room.sizeM[1] * room.sizeM[2];
  const airDensity = (pressurePa: number): number => moistAirDensityKgPerM3({ ...AT_20_C, pressurePa });
  const air = addBody(bodies, 'air', airDensity(siteMeanPressurePa) * volumeM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK);
  const walls = addWalls(bodies, { boxCase, room, conditions, air, cellM });
  const windows = addWindows(bodies, { boxCase, room, conditions, air, pressurePa: siteMeanPressurePa });
  const views = viewAreasM2(room);
  exchangeInside(bodies, { boxCase, room, views, walls, windows });
  bodies.conductors.push({ a: air, b: OUTSIDE, conductanceWPerK: () => conditions.airExchangeWPerK, dependsOnTemps: false });

  const placed = (index: number): number => (index >= BOUNDARY_BASE ? index - BOUNDARY_BASE + bodies.nodes.length : index);
  const network = createNetwork({
    nodes: bodies.nodes,
    boundaries: BOUNDARIES,
    conductors: bodies.conductors.map((conductor) => ({ ...conductor, a: placed(conductor.a), b: placed(conductor.b) })),
    radiators: bodies.radiators.map((radiator) => ({ ...radiator, a: placed(radiator.a), b: placed(radiator.b) })),
  });
  const seaLevelJPerM3K = airDensity(STANDARD_PRESSURE_PA) * DRY_AIR_HEAT_CAPACITY_J_PER_KGK;
  return {
    boxCase,
    network,
    air,
    firstBoundary: bodies.nodes.length,
    sun: sunInBox(boxCase, room, views, { walls, windows }),
    gainsW: steadyGainsW(boxCase, room, { air, walls, windows, size: bodies.nodes.length }),
    setHour: (weather, hourOfDay) => {
      conditions.windMPerS = weather.windMPerS;
      conditions.airExchangeWPerK = airExchangeWPerK(boxCase, { volumeM3, siteJPerM3K: weather.airJPerM3K, seaLevelJPerM3K, hourOfDay });
    },
  };
}

interface WallsPlan {
  readonly boxCase: BoxCase;
  readonly room: Room;
  readonly conditions: Conditions;
  readonly air: number;
  readonly cellM: number;
}

function addWalls(bodies: BoxBodies, { boxCase, room, conditions, air, cellM }: WallsPlan): readonly Faces[] {
  const { constructions, floor, roof, walls, finish } = boxCase;
  return room.surfaces.filter(({ opening }) => !opening).map(({ name, face, areaM2 }) => {
    const construction = face === 'roof' ? roof : face === 'floor' ? floor.construction : walls[face];
    const faces = addLayeredWall(bodies, { name, areaM2, layers: constructions[construction]! }, cellM);
    bodies.conductors.push({ a: faces.inside, b: air, conductanceWPerK: (faceK, airK) => areaM2 * insideConvectionWPerM2K(face, faceK, airK), dependsOnTemps: true });
    if (face === 'floor' && floor.underside.kind === 'ground') bodies.conductors.push(steadyConductor(faces.outside, GROUND, CONTACT_W_PER_M2K * areaM2));
    else addOutside(bodies, { face, areaM2, node: faces.outside, emittance: finish.longwaveEmittanceOutside }, { boxCase, conditions });
    return faces;
  });
}

/** Outer face: wind, and longwave with sky and surroundings. Under a raised floor there is neither wind nor sky. */
function addOutside(bodies: BoxBodies, outer: { face: Face; areaM2: number; node: number; emittance: number }, { boxCase, conditions }: { boxCase: BoxCase; conditions: Conditions }): void {
  const { face, areaM2, node, emittance } = outer;
  const { size, site } = boxCase;
  const heightM = face === 'roof' ? size.heightM : size.heightM / 2;
  const windShare = face === 'floor' ? 0 : windShareAtHeight(Math.max(LOWEST_WIND_M, heightM), site.terrain);
  bodies.conductors.push({ a: node, b: OUTSIDE, conductanceWPerK: () => areaM2 * outsideConvectionWPerM2K(windShare * conditions.windMPerS), dependsOnTemps: false });
  bodies.radiators.push({ a: node, b: face === 'roof' ? ABOVE_ROOF : face === 'floor' ? OUTSIDE : BEFORE_WALL, exchangeAreaM2: emittance * areaM2 });
}

function addWindows(bodies: BoxBodies, plan: { boxCase: BoxCase; room: Room; conditions: Conditions; air: number; pressurePa: number }): readonly GlazingBodies[] {
  const { boxCase, room, conditions, air, pressurePa } = plan;
  const { glazing } = boxCase;
  if (!glazing) return [];
  const [outerEmittance] = emittancesOf(boxCase);
  return room.surfaces.filter(({ opening }) => opening).map(({ name, face, areaM2 }) => {
    const window = addGlazing(bodies, { name, areaM2, glazing, pressurePa });
    bodies.conductors.push({ a: window.inside, b: air, conductanceWPerK: (faceK, airK) => areaM2 * insideConvectionWPerM2K(face, faceK, airK), dependsOnTemps: true });
    addOutside(bodies, { face, areaM2, node: window.outside, emittance: outerEmittance }, { boxCase, conditions });
    return window;
  });
}

/** Longwave emittance of the outermost and the innermost glass face. */
function emittancesOf({ glazing }: BoxCase): readonly [outer: number, inner: number] {
  if (!glazing) return [0, 0];
  return glazing.kind === 'u-value' ? [glazing.longwaveEmittance, glazing.longwaveEmittance] : [glazing.panes[0]!.longwaveEmittance, glazing.panes.at(-1)!.longwaveEmittance];
}

function exchangeInside(bodies: BoxBodies, plan: { boxCase: BoxCase; room: Room; views: Float64Array; walls: readonly Faces[]; windows: readonly GlazingBodies[] }): void {
  const { boxCase, room, views, walls, windows } = plan;
  const innerFaces = [...walls, ...windows].map(({ inside }) => inside);
  const [, innerEmittance] = emittancesOf(boxCase);
  const emittances = room.surfaces.map(({ opening }) => (opening ? innerEmittance : boxCase.finish.longwaveEmittanceInside));
  const exchange = greyExchangeAreasM2(room.surfaces.map(({ areaM2 }) => areaM2), views, emittances);
  innerFaces.forEach((a, i) => innerFaces.slice(0, i).forEach((b, j) => {
    const exchangeAreaM2 = exchange[i * innerFaces.length + j]!;
    if (exchangeAreaM2 > 0) bodies.radiators.push({ a, b, exchangeAreaM2 });
  }));
}

/** Convective gain into the air, radiative gain onto all inner faces by area. */
function steadyGainsW({ gains }: BoxCase, room: Room, at: { air: number; walls: readonly Faces[]; windows: readonly GlazingBodies[]; size: number }): Float64Array {
  const power = new Float64Array(at.size);
  const totalM2 = room.surfaces.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  power[at.air] = gains.convectiveW;
  [...at.walls, ...at.windows].forEach(({ inside }, i) => (power[inside]! += (gains.radiativeW * room.surfaces[i]!.areaM2) / totalM2));
  return power;
}

/** Leakage and fans; what is given at the density of sea level carries that much heat. */
function airExchangeWPerK({ infiltration, ventilation }: BoxCase, at: { volumeM3: number; siteJPerM3K: number; seaLevelJPerM3K: number; hourOfDay: number }): number {
  const running = ventilation.filter(({ fromHour, toHour }) => (fromHour < toHour ? at.hourOfDay >= fromHour && at.hourOfDay < toHour : at.hourOfDay >= fromHour || at.hourOfDay < toHour));
  const flows = [{ m3PerH: infiltration.airChangesPerHour * at.volumeM3, airDensity: infiltration.airDensity }, ...running.map(({ airflowM3PerH, airDensity }) => ({ m3PerH: airflowM3PerH, airDensity }))];
  return flows.reduce((sum, { m3PerH, airDensity }) => sum + (m3PerH / SECONDS_PER_HOUR) * (airDensity === 'site' ? at.siteJPerM3K : at.seaLevelJPerM3K), 0);
}
