import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { CLOUD_LONGWAVE_WEIGHT, cloudySkyEmissivity, surroundingsRadiantTempK } from '../../../engine/sky/downwelling-longwave.js';
import type { ClearSkyFormula } from './clear-sky-formulas.js';
import type { MeasuredSky } from './measured-sky.js';

/** Downwelling longwave that a sky sends, W/m2. */
export type SkyModel = (sky: MeasuredSky) => number;

const black = (tempK: number): number => STEFAN_BOLTZMANN_W_PER_M2K4 * tempK ** 4;
const skyTempK = (longwaveWPerM2: number): number => (longwaveWPerM2 / STEFAN_BOLTZMANN_W_PER_M2K4) ** 0.25;

/** A rival formula without cloud, or with cloud that closes the whole gap in proportion. */
export const clearSky = (formula: ClearSkyFormula): SkyModel => (sky) => formula(sky) * black(sky.airTempK);
export const withLinearCloud = (formula: ClearSkyFormula): SkyModel => (sky) =>
  cloudySkyEmissivity({ clearSkyEmissivity: formula(sky), cloudFraction: sky.cloudFraction, cloudWeight: 1 }) * black(sky.airTempK);

/** The sky as the house sees it on an open plane. */
export const enginesSky: SkyModel = (sky) =>
  black(surroundingsRadiantTempK({ airTempK: sky.airTempK, vapourPressurePa: sky.vapourPressurePa, cloudFraction: sky.cloudFraction, cloudWeight: CLOUD_LONGWAVE_WEIGHT, skyViewFraction: 1 }));

export interface SkyScore {
  readonly n: number;
  readonly bias: number;
  readonly rmse: number;
  /** The same as temperatures of the sky, K. */
  readonly tsky_bias: number;
  readonly tsky_rmse: number;
}

/** Model less measured. */
export function scoreSky(model: SkyModel, skies: readonly MeasuredSky[]): SkyScore {
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const modelled = skies.map(model);
  const misses = modelled.map((value, i) => value - skies[i]!.longwaveWPerM2);
  const missesK = modelled.map((value, i) => skyTempK(value) - skyTempK(skies[i]!.longwaveWPerM2));
  const rootMeanSquare = (values: readonly number[]): number => Math.sqrt(mean(values.map((value) => value ** 2)));
  return { n: skies.length, bias: mean(misses), rmse: rootMeanSquare(misses), tsky_bias: mean(missesK), tsky_rmse: rootMeanSquare(missesK) };
}
