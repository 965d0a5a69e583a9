import { saturationVapourPressureAtSurfacePa } from '../air/saturation-magnus.js';
import { humidityRatioKgPerKg, standardPressurePa } from '../air/moist-air.js';
import { DEEP_SOIL_DEPTH_M, layerDepthM, SOIL_LAYERS_M } from '../ground/soil-column.js';
import { undisturbedGroundTempK } from '../ground/undisturbed-kusuda.js';
import { heapSteadyTempK } from '../heat/compost-heap.js';
import type { HouseModel } from './house-model.js';
import type { HouseRunner, HouseState } from './house-run.js';
import type { GroundOutside, WeatherHours } from './weather.js';

/** Soil under a closed house is warmer than outside (prior of this project: 3 K, uncertain by as much). */
const HOUSE_SOIL_OFFSET_K = 3;
/** Yearly swing of the ground surface in a continental climate, when only the yearly mean is known (project estimate). */
const SURFACE_AMPLITUDE_K = 12;
const NORTHERN_COLDEST_DAY = 35;
const SOUTHERN_COLDEST_DAY = 217;
/** Moist soil over the year (Kusuda1965 example value 0.05 m2/day). */
const GROUND_DIFFUSIVITY_M2_PER_S = 5.8e-7;
const DAY_S = 86_400;
const YEAR_S = 365.2425 * DAY_S;

/** What the start stands on: the answer says so when it is only a guess. */
export type GroundBasis = 'soil-layers' | 'yearly-mean' | 'past-air';

export interface StartState {
  readonly state: HouseState;
  readonly deepTempK: number;
  readonly basis: GroundBasis;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const dayOfYear = (timeS: number): number => ((timeS % YEAR_S) + YEAR_S) % YEAR_S / DAY_S;

/**
 * A first state of the house before the past fortnight is run: soil from the service's layers and the yearly mean, air as outside.
 * Units: SI.
 * Valid: weather of at least an hour.
 * Outside: not applicable.
 * Source: Kusuda1965 for what lies deeper than the service's layers; house offset as named above.
 */
export function startState(runner: HouseRunner, weather: WeatherHours, ground: GroundOutside): StartState {
  const { model, moisture } = runner;
  const fromS = weather.timeS[0]!;
  const pastAirK = mean(weather.airTempK.slice(0, 15 * 24));
  const kusuda = (depthM: number): number | null =>
    ground.yearlyMeanAirTempK === null
      ? null
      : undisturbedGroundTempK(
          { yearlyMeanK: ground.yearlyMeanAirTempK + 1, surfaceAmplitudeK: SURFACE_AMPLITUDE_K, coldestDay: model.house.place.latitude >= 0 ? NORTHERN_COLDEST_DAY : SOUTHERN_COLDEST_DAY, diffusivityM2PerS: GROUND_DIFFUSIVITY_M2_PER_S },
          depthM,
          dayOfYear(fromS),
        );
  const at54 = ground.soilTemp54cmK ?? kusuda(0.54);
  const at18 = ground.soilTemp18cmK ?? at54;
  const basis: GroundBasis = ground.soilTemp54cmK !== null ? 'soil-layers' : at54 !== null ? 'yearly-mean' : 'past-air';
  const upperK = (at18 ?? pastAirK) + HOUSE_SOIL_OFFSET_K;
  const lowerK = (at54 ?? pastAirK + HOUSE_SOIL_OFFSET_K) + HOUSE_SOIL_OFFSET_K;
  const deepTempK = Math.max(kusuda(DEEP_SOIL_DEPTH_M) ?? lowerK, lowerK - HOUSE_SOIL_OFFSET_K) + (kusuda(DEEP_SOIL_DEPTH_M) === null ? 0 : HOUSE_SOIL_OFFSET_K);
  const tempsK = new Float64Array(model.network.nodes.length + model.network.boundaries.length).fill(weather.airTempK[0]!);
  for (const column of model.columns) SOIL_LAYERS_M.forEach((_, layer) => (tempsK[column.surface + layer] = soilAtDepthK(layerDepthM(layer), { upperK, lowerK, deepTempK })));
  for (const store of [...model.drums, ...model.stones.flatMap(({ skin, core }) => [skin, core]), ...(model.stoneBox ? [model.stoneBox.skin, model.stoneBox.core] : [])]) tempsK[store] = upperK;
  for (const ring of model.tubes?.rings ?? []) tempsK[ring] = soilAtDepthK(Math.min(DEEP_SOIL_DEPTH_M, model.house.tubes!.depthM), { upperK, lowerK, deepTempK });
  startWallAndHeap(model, tempsK, { pastAirK, upperK, fromS });
  tempsK[model.deep] = deepTempK;
  const humidity = humidityRatioKgPerKg(saturationVapourPressureAtSurfacePa(weather.airTempK[0]!), standardPressurePa(model.house.place.elevationM));
  return {
    state: { tempsK, humidity: new Float64Array(moisture.volumes.length).fill(humidity), waterKgPerM2: new Float64Array(moisture.waterAreasM2.length) },
    deepTempK,
    basis,
  };
}

/** Masonry starts between the house and what lies behind it; a heap as warm as it keeps itself. */
function startWallAndHeap(model: HouseModel, tempsK: Float64Array, known: { pastAirK: number; upperK: number; fromS: number }): void {
  const { wall, house } = model;
  wall?.layers.forEach((node, l) => (tempsK[node] = known.upperK + ((l + 0.5) / wall.layers.length) * ((house.solidWall!.behindTempK ?? known.pastAirK) - known.upperK)));
  if (house.heap && model.heap !== null) tempsK[model.heap] = heapSteadyTempK({ volumeM3: house.heap.volumeM3, ageDays: (known.fromS - house.heap.startedS) / DAY_S, airTempK: house.heap.fan ? known.pastAirK : known.upperK });
}

function soilAtDepthK(depthM: number, known: { upperK: number; lowerK: number; deepTempK: number }): number {
  if (depthM <= 0.18) return known.upperK;
  if (depthM <= 0.54) return known.upperK + ((depthM - 0.18) / 0.36) * (known.lowerK - known.upperK);
  return known.lowerK + ((depthM - 0.54) / (DEEP_SOIL_DEPTH_M - 0.54)) * (known.deepTempK - known.lowerK);
}
