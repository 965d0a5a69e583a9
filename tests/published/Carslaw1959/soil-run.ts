import { layerDepthM, SOIL_LAYERS_M, soilColumn } from '../../../engine/ground/soil-column.js';
import { createNetwork, steadyConductor } from '../../../engine/network/network.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';

/** What happens at the soil surface: heat taken out, a convecting fluid, or a surface held at a temperature. */
export type SurfaceCondition =
  | { readonly kind: 'flux'; readonly outOfSoilWPerM2: number }
  | { readonly kind: 'convective'; readonly hWPerM2K: number; readonly fluidTempK: number }
  | { readonly kind: 'held'; readonly tempK: (timeS: number) => number };

export interface SoilRun {
  readonly conductivityWPerMK: number;
  readonly heatCapacityJPerM3K: number;
  readonly waterFraction?: number;
  readonly startK: number;
  readonly surface: SurfaceCondition;
  readonly stepS?: number;
}

export interface SoilProfile {
  /** Temperature at a depth: the first layer's above its middle (as the house has it), then by cubic through the layers' middles. */
  readonly atDepthK: (depthM: number) => number;
  readonly heatOutWPerM2: number;
}

/** Step of the house model, s. */
export const SOIL_STEP_S = 600;

/** Runs one square metre of the engine's soil column, with nothing else around, for a time; `observe` sees the profile after each step. */
export function runSoil(run: SoilRun, durationS: number, observe: (timeS: number, profile: SoilProfile) => void = () => undefined): SoilProfile {
  const layers = SOIL_LAYERS_M.length;
  const soil = { thermalConductivityWPerMK: run.conductivityWPerMK, volumetricHeatCapacityJPerM3K: run.heatCapacityJPerM3K, waterFraction: run.waterFraction ?? 0, source: 'given' };
  const column = soilColumn(soil, { areaM2: 1, firstNode: 0, deepBoundary: layers, name: 'column' });
  const { surface } = run;
  // A held surface lies half a layer above the first node; convection works on the first node itself, as in the house.
  const surfaceConductance = surface.kind === 'held' ? run.conductivityWPerMK / layerDepthM(0) : surface.kind === 'convective' ? surface.hWPerM2K : 0;
  const network = createNetwork({ nodes: column.nodes, boundaries: ['deep', 'above'], conductors: [...column.conductors, steadyConductor(0, layers + 1, surfaceConductance)], radiators: [] });
  const tempsK = new Float64Array(layers + 2).fill(run.startK);
  const sources = emptySources(layers);
  const stepS = run.stepS ?? SOIL_STEP_S;
  let profile: SoilProfile = { atDepthK: () => run.startK, heatOutWPerM2: 0 };
  for (let step = 1; step * stepS <= durationS + 1e-6; step += 1) {
    if (surface.kind === 'convective') tempsK[layers + 1] = surface.fluidTempK;
    if (surface.kind === 'held') tempsK[layers + 1] = surface.tempK(step * stepS);
    stepImplicit({ network, tempsK, stepS, sources, updateSources: (_, out) => (out.powerW[0]! -= surface.kind === 'flux' ? surface.outOfSoilWPerM2 : 0) });
    const now = Float64Array.from(tempsK);
    profile = { atDepthK: (depthM) => interpolatedK(now, depthM, surface.kind === 'held' ? now[layers + 1]! : null), heatOutWPerM2: surfaceConductance * (now[0]! - now[layers + 1]!) };
    observe(step * stepS, profile);
  }
  return profile;
}

/** Monotone cubic (Fritsch and Carlson 1980, from memory) through surface, where it is held, and the layers' middles. */
function interpolatedK(tempsK: Float64Array, depthM: number, heldSurfaceK: number | null): number {
  const points = [...(heldSurfaceK === null ? [] : [[0, heldSurfaceK] as const]), ...SOIL_LAYERS_M.map((_, layer) => [layerDepthM(layer), tempsK[layer]!] as const)];
  if (depthM <= points[0]![0]) return points[0]![1];
  const k = Math.min(points.length - 2, points.findIndex(([depth]) => depth >= depthM) - 1);
  const slope = (i: number): number => (points[i + 1]![1] - points[i]![1]) / (points[i + 1]![0] - points[i]![0]);
  const tangent = (i: number): number => {
    if (i === 0 || i === points.length - 1) return slope(Math.min(i, points.length - 2));
    const [before, after] = [slope(i - 1), slope(i)];
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  };
  const [[x0, y0], [x1, y1]] = [points[k]!, points[k + 1]!];
  const h = x1 - x0;
  const t = (depthM - x0) / h;
  return y0 * (1 + 2 * t) * (1 - t) ** 2 + y1 * t ** 2 * (3 - 2 * t) + h * tangent(k) * t * (1 - t) ** 2 - h * tangent(k + 1) * t ** 2 * (1 - t);
}
