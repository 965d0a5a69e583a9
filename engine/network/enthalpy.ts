import { ZERO_CELSIUS_K } from '../units.js';

/**
 * How much heat a node holds at a temperature, counted from the lower end of its freezing band.
 * A node that freezes gives up its latent heat evenly over a narrow band below 0 degrees C, so that heat and temperature
 * always determine each other and no step can lose the latent part.
 */
export interface HeatStore {
  readonly thawedJPerK: number;
  readonly frozenJPerK: number;
  readonly latentJ: number;
  /** Width of the freezing band; it ends at 0 degrees C. */
  readonly freezingBandK: number;
}

export const MASSLESS: HeatStore = { thawedJPerK: 0, frozenJPerK: 0, latentJ: 0, freezingBandK: 1 };

/** A store that does not freeze. Units: J/K. Valid: 0 and more. Outside: not checked. Source: definition. */
export const sensibleStore = (capacityJPerK: number): HeatStore => ({ ...MASSLESS, thawedJPerK: capacityJPerK, frozenJPerK: capacityJPerK });

function bandSlopeJPerK(store: HeatStore): number {
  return (store.thawedJPerK + store.frozenJPerK) / 2 + store.latentJ / store.freezingBandK;
}

/**
 * Heat held by a store.
 * Units: tempK in K; result in J, zero at the lower end of the freezing band.
 * Valid: any temperature.
 * Outside: not applicable.
 * Source: definition (apparent heat capacity method, Incropera2007 sec. 5.10 idea; latent heat spread over the band).
 */
export function heatOfStoreJ(store: HeatStore, tempK: number): number {
  const bottomK = ZERO_CELSIUS_K - store.freezingBandK;
  if (tempK <= bottomK) return store.frozenJPerK * (tempK - bottomK);
  if (tempK < ZERO_CELSIUS_K) return bandSlopeJPerK(store) * (tempK - bottomK);
  return bandSlopeJPerK(store) * store.freezingBandK + store.thawedJPerK * (tempK - ZERO_CELSIUS_K);
}

/**
 * Slope of the heat held, J/K, at a temperature.
 * Units: K in, J/K out.
 * Valid: any temperature.
 * Outside: not applicable.
 * Source: derivative of heatOfStoreJ.
 */
export function slopeOfStoreJPerK(store: HeatStore, tempK: number): number {
  if (tempK >= ZERO_CELSIUS_K) return store.thawedJPerK;
  return tempK <= ZERO_CELSIUS_K - store.freezingBandK ? store.frozenJPerK : bandSlopeJPerK(store);
}

/**
 * Temperature at which a store holds the given heat: the exact inverse of heatOfStoreJ.
 * Units: J in, K out.
 * Valid: stores with mass.
 * Outside: a massless store gives NaN; callers treat those apart.
 * Source: definition.
 */
export function tempOfStoreK(store: HeatStore, heatJ: number): number {
  const bottomK = ZERO_CELSIUS_K - store.freezingBandK;
  if (heatJ <= 0) return bottomK + heatJ / store.frozenJPerK;
  const bandHeatJ = bandSlopeJPerK(store) * store.freezingBandK;
  if (heatJ < bandHeatJ) return bottomK + heatJ / bandSlopeJPerK(store);
  return ZERO_CELSIUS_K + (heatJ - bandHeatJ) / store.thawedJPerK;
}
