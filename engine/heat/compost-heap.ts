import { assertInRange } from '../errors.js';
import { celsiusToKelvin } from '../units.js';

/** Best days of a small heap: 250 W/m3, so that over two months it gives 2.7 MJ for each kg of dry matter (200 kg/m3), between the lab (1.2) and pilot (3.9) means of Smith2017. */
const PEAK_W_PER_M3 = 250;
const WARM_UP_DAYS = 5;
const HALF_LIFE_DAYS = 20;
/** A heap works between these temperatures, best between the inner two (from memory: microbes slow below 20 and die off above 65 degrees C). */
const STARTS_K = celsiusToKelvin(0);
const FULL_FROM_K = celsiusToKelvin(20);
const FULL_UNTIL_K = celsiusToKelvin(60);
const STOPS_K = celsiusToKelvin(72);
/** Moist compost (from memory: 0.7 to 0.8 of water by mass). */
export const HEAP_HEAT_CAPACITY_J_PER_M3K = 2.8e6;
const HEAP_CONDUCTIVITY_W_PER_MK = 0.3;
/** From the warm core to the surface: this share of half the heap's width (project estimate). */
const SHELL_SHARE = 0.6;
const FREE_FACES = 5;

/** Heat made by a heap, W, and its slope with the temperature of the core. */
export interface MetabolicHeat {
  readonly powerW: number;
  readonly slopeWPerK: number;
}

/**
 * Heat that a compost heap makes.
 * Units: m3, days since it was heaped up, K; W and W/K.
 * Valid: 0.05 to 100 m3; any age and temperature (before it is heaped up, too cold or too hot: none).
 * Outside: throws OutOfRangeError.
 * Source: Smith2017 for the amount; warm-up, half-life and temperature limits are priors of this project.
 */
export function metabolicHeatW(heap: { volumeM3: number; ageDays: number; coreTempK: number }): MetabolicHeat {
  assertInRange('volumeM3', heap.volumeM3, { lowest: 0.05, highest: 100, unit: 'm3' });
  const { coreTempK } = heap;
  const fullW = heap.volumeM3 * PEAK_W_PER_M3 * shareOfPeak(heap.ageDays);
  if (coreTempK <= STARTS_K || coreTempK >= STOPS_K) return { powerW: 0, slopeWPerK: 0 };
  if (coreTempK < FULL_FROM_K) return { powerW: (fullW * (coreTempK - STARTS_K)) / (FULL_FROM_K - STARTS_K), slopeWPerK: fullW / (FULL_FROM_K - STARTS_K) };
  if (coreTempK <= FULL_UNTIL_K) return { powerW: fullW, slopeWPerK: 0 };
  return { powerW: (fullW * (STOPS_K - coreTempK)) / (STOPS_K - FULL_UNTIL_K), slopeWPerK: -fullW / (STOPS_K - FULL_UNTIL_K) };
}

function shareOfPeak(ageDays: number): number {
  if (ageDays <= 0) return 0;
  return ageDays < WARM_UP_DAYS ? ageDays / WARM_UP_DAYS : 0.5 ** ((ageDays - WARM_UP_DAYS) / HALF_LIFE_DAYS);
}

/** One face of a heap. Units: m3 in, m2 out. Valid: any positive volume. Outside: not checked. Source: geometry of a cube (project estimate). */
export const heapFaceM2 = (volumeM3: number): number => volumeM3 ** (2 / 3);

/**
 * From the warm core through its own outer layers: to what it touches with one face, and to the air around the other five.
 * Units: m3 in, W/K out.
 * Valid: any positive volume.
 * Outside: not checked.
 * Source: conduction through moist compost (project estimate): a heap of 1 m3 with 250 W stands 50 K above its surroundings.
 */
export function heapConductancesWPerK(volumeM3: number): { oneFace: number; freeFaces: number } {
  const faceWPerK = (heapFaceM2(volumeM3) * HEAP_CONDUCTIVITY_W_PER_MK) / (SHELL_SHARE * (volumeM3 ** (1 / 3) / 2));
  return { oneFace: faceWPerK, freeFaces: FREE_FACES * faceWPerK };
}

/** Air that is drawn through a heap comes this near to its core (prior of this project, pipes of a few metres or loose heaps: 0.6 to 0.9). */
export const HEAP_PIPE_EFFECTIVENESS = 0.75;
const HOTTEST_START_K = celsiusToKelvin(60);

/** Temperature that a heap holds by itself in air of a given temperature. Units: K. Valid: as metabolicHeatW. Outside: throws OutOfRangeError. Source: steady balance of heat made and lost, at most 60 degrees C. */
export function heapSteadyTempK(heap: { volumeM3: number; ageDays: number; airTempK: number }): number {
  const { powerW } = metabolicHeatW({ ...heap, coreTempK: FULL_FROM_K });
  const { oneFace, freeFaces } = heapConductancesWPerK(heap.volumeM3);
  return Math.min(HOTTEST_START_K, heap.airTempK + powerW / (oneFace + freeFaces));
}
