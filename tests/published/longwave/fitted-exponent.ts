import { saturationVapourPressureOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { cloudySkyEmissivity } from '../../../engine/sky/downwelling-longwave.js';
import { CLEAR_SKY_FORMULAS } from './clear-sky-formulas.js';
import type { MeasuredSky } from './measured-sky.js';
import { scoreSky } from './sky-score.js';

const STEP = 0.01;
const MOST = 1.5;

/** Longwave of a sky whose cloud works by a power of the humidity: the form of the engine, with the power left open. */
const skyWithExponent = (exponent: number) => (sky: MeasuredSky): number => {
  const humidity = Math.min(1, sky.vapourPressurePa / saturationVapourPressureOverWaterPa(sky.airTempK));
  const emissivity = cloudySkyEmissivity({ clearSkyEmissivity: CLEAR_SKY_FORMULAS.Prata96(sky), cloudFraction: sky.cloudFraction, cloudWeight: humidity ** exponent });
  return emissivity * STEFAN_BOLTZMANN_W_PER_M2K4 * sky.airTempK ** 4;
};

/** The power that leaves the least mean square miss over some sets, each set counted alike. */
export function exponentAskedFor(sets: readonly (readonly MeasuredSky[])[]): number {
  const missOf = (exponent: number): number => sets.reduce((sum, skies) => sum + scoreSky(skyWithExponent(exponent), skies).rmse ** 2, 0);
  const candidates = Array.from({ length: Math.round(MOST / STEP) + 1 }, (_, i) => ({ exponent: i * STEP, miss: missOf(i * STEP) }));
  return candidates.reduce((best, candidate) => (candidate.miss < best.miss ? candidate : best)).exponent;
}
