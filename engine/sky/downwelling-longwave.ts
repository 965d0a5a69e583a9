import { saturationVapourPressureOverWaterPa } from '../air/saturation-magnus.js';
import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../constants.js';
import { assertInRange } from '../errors.js';
import { clearSkyEmissivityPrata1996 } from './clear-sky-emissivity-prata.js';
import { cloudReach } from './cloud-reach.js';

/**
 * How far full cloud over saturated air closes the gap between the clear sky and a black one: wholly, as in fog (measured overcast nights
 * at SURFRAD-Bondville reach emissivities of 0.975 to 1). Over drier air `cloudReach` takes off. A house may teach its own.
 */
export const CLOUD_LONGWAVE_WEIGHT = 1;

/**
 * Emissivity of the sky with cloud, by the linear rule: clear + weight x cloud x (1 - clear).
 * Units: clearSkyEmissivity, cloudFraction and cloudWeight 0-1; result 0-1.
 * Valid: all three 0 to 1.
 * Outside: throws OutOfRangeError.
 * Source: Crawford1999 eq. 12 (from memory) with a free weight, as Unsworth1975 (weight 0.84).
 */
export function cloudySkyEmissivity(sky: { clearSkyEmissivity: number; cloudFraction: number; cloudWeight: number }): number {
  assertInRange('clearSkyEmissivity', sky.clearSkyEmissivity, { lowest: 0, highest: 1, unit: '' });
  assertInRange('cloudFraction', sky.cloudFraction, { lowest: 0, highest: 1, unit: '' });
  assertInRange('cloudWeight', sky.cloudWeight, { lowest: 0, highest: 1, unit: '' });
  return sky.clearSkyEmissivity + sky.cloudWeight * sky.cloudFraction * (1 - sky.clearSkyEmissivity);
}

export interface SkyState {
  readonly airTempK: number;
  readonly vapourPressurePa: number;
  readonly cloudFraction: number;
  /** How far full cloud over saturated air closes the gap to a black sky, 0-1. */
  readonly cloudWeight: number;
  /** Share of the hemisphere over the cover that is open sky; trees and slopes count as bodies at air temperature. */
  readonly skyViewFraction: number;
}

/**
 * Temperature of a black hemisphere that would send the same longwave to the cover as sky, trees and slopes do.
 * Units: K, Pa, fractions 0-1; result in K.
 * Valid: as clearSkyEmissivityPrata1996 and cloudySkyEmissivity.
 * Outside: throws OutOfRangeError; air above saturation (a rounded dew point) counts as saturated for the cloud.
 * Source: Prata1996 with the linear cloud rule and cloudReach; surroundings at air temperature as in EnergyPlusEngRef, outside surface heat balance.
 * Accuracy: cold nights at SURFRAD-Bondville, cloud from daylight: bias -0.4, RMSE 22.8 W/m2, about 5.7 K of sky temperature.
 */
export function surroundingsRadiantTempK(state: SkyState): number {
  const relativeHumidity = Math.min(1, state.vapourPressurePa / saturationVapourPressureOverWaterPa(state.airTempK));
  const emissivity = cloudySkyEmissivity({
    clearSkyEmissivity: clearSkyEmissivityPrata1996(state.airTempK, state.vapourPressurePa),
    cloudFraction: state.cloudFraction,
    cloudWeight: state.cloudWeight * cloudReach(relativeHumidity),
  });
  const share = state.skyViewFraction * emissivity + (1 - state.skyViewFraction);
  return share ** 0.25 * state.airTempK;
}

/**
 * Downwelling longwave radiation on an open horizontal plane.
 * Units: airTempK in K, emissivity 0-1; result in W/m2.
 * Valid: emissivity 0 to 1, 173.15 to 373.15 K.
 * Outside: throws OutOfRangeError.
 * Source: Stefan-Boltzmann law (CODATA2018).
 */
export function downwellingLongwaveWPerM2(airTempK: number, emissivity: number): number {
  assertInRange('airTempK', airTempK, { lowest: 173.15, highest: 373.15, unit: 'K' });
  assertInRange('emissivity', emissivity, { lowest: 0, highest: 1, unit: '' });
  return emissivity * STEFAN_BOLTZMANN_W_PER_M2K4 * airTempK ** 4;
}
