import { SOILS } from '../../../engine/data/soils.js';
import { DEEP_SOIL_DEPTH_M, layerDepthM, layerNearest, SOIL_LAYERS_M, soilColumn } from '../../../engine/ground/soil-column.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { createNetwork, type Conductor } from '../../../engine/network/network.js';
import { celsiusToKelvin, HOURS_PER_DAY, kelvinToCelsius, SECONDS_PER_HOUR, ZERO_CELSIUS_K } from '../../../engine/units.js';

/** A day of the record: snow on the ground, and the soil at 20 cm. */
export interface SnowDay {
  readonly snowDepthM: number;
  readonly waterEquivalentKgPerM2: number;
  readonly measuredC: number;
  readonly airTempK: readonly number[];
}

const PROBE_DEPTH_M = 0.2;
/** Not measured: a wet mountain loam, 5 °C at 1.5 m all winter, straight between the first reading and that. */
const SOIL = SOILS.loam.wet;
const DEEP_C = 5;
const LEAST_SNOW_M = 0.05;

/** Conductivity of snow by its density (Yen 1981, from memory): 2.22 (density/1000)^1.88. */
const snowWPerM2K = ({ snowDepthM, waterEquivalentKgPerM2 }: SnowDay): number => (2.22 * (waterEquivalentKgPerM2 / snowDepthM / 1000) ** 1.88) / Math.max(LEAST_SNOW_M, snowDepthM);

/** From the middle of the first layer to the base of the snow. */
const TO_SNOW_W_PER_M2K = SOIL.thermalConductivityWPerMK / layerDepthM(0);

/** The engine's soil column under snow whose surface has the temperature of the air and whose base melts rather than pass 0 °C; modelled and measured at 20 cm, °C, at the end of each day. */
export function soilUnderSnow(days: readonly SnowDay[]): readonly { readonly modelC: number; readonly measuredC: number }[] {
  const layers = SOIL_LAYERS_M.length;
  const column = soilColumn(SOIL, { areaM2: 1, firstNode: 0, deepBoundary: layers, name: 'meadow' });
  let throughSnowWPerK = 0;
  const meltingWPerK = (soilK: number, snowSurfaceK: number): number => (soilK > ZERO_CELSIUS_K ? (TO_SNOW_W_PER_M2K * (soilK - ZERO_CELSIUS_K)) / (soilK - snowSurfaceK) : 0);
  const snow: Conductor = { a: 0, b: layers + 1, conductanceWPerK: (soilK, surfaceK) => Math.max(throughSnowWPerK, meltingWPerK(soilK, surfaceK)), dependsOnTemps: true };
  const network = createNetwork({ nodes: column.nodes, boundaries: ['deep ground', 'snow surface'], conductors: [...column.conductors, snow], radiators: [] });
  const startC = (depthM: number): number => days[0]!.measuredC + ((DEEP_C - days[0]!.measuredC) * (depthM - PROBE_DEPTH_M)) / (DEEP_SOIL_DEPTH_M - PROBE_DEPTH_M);
  const tempsK = Float64Array.from([...SOIL_LAYERS_M.map((_, layer) => Math.max(ZERO_CELSIUS_K, celsiusToKelvin(startC(layerDepthM(layer))))), celsiusToKelvin(DEEP_C), ZERO_CELSIUS_K]);
  const sources = emptySources(layers);
  return days.map((day) => {
    throughSnowWPerK = snowWPerM2K(day);
    for (let hour = 0; hour < HOURS_PER_DAY; hour += 1) {
      tempsK[layers + 1] = Math.min(ZERO_CELSIUS_K, day.airTempK[hour]!);
      stepImplicit({ network, tempsK, stepS: SECONDS_PER_HOUR, sources, updateSources: () => undefined });
    }
    return { modelC: kelvinToCelsius(atProbeK(tempsK)), measuredC: day.measuredC };
  });
}

/** Straight between the two layers whose middles lie around the probe. */
function atProbeK(tempsK: Float64Array): number {
  const nearest = layerNearest(PROBE_DEPTH_M);
  const upper = layerDepthM(nearest) > PROBE_DEPTH_M ? nearest - 1 : nearest;
  const share = (PROBE_DEPTH_M - layerDepthM(upper)) / (layerDepthM(upper + 1) - layerDepthM(upper));
  return tempsK[upper]! + share * (tempsK[upper + 1]! - tempsK[upper]!);
}
