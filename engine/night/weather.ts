/**
 * Hourly weather outside the house as the engine reads it: complete, in SI, in equal steps of one hour.
 * Whoever fills it (a forecast service, a file) has already closed short gaps; the series simply ends where a core value ends.
 */
export interface WeatherHours {
  /** Epoch seconds, each exactly one hour after the one before. */
  readonly timeS: readonly number[];
  /** Air temperature at 2 m, at the instant. */
  readonly airTempK: readonly number[];
  /** Water vapour pressure at 2 m, at the instant. */
  readonly vapourPressurePa: readonly number[];
  /** Wind speed at 10 m, at the instant. */
  readonly windSpeed10mMPerS: readonly number[];
  /** Total cloud cover 0-1, at the instant. */
  readonly cloudFraction: readonly number[];
  /** Global horizontal sunlight, mean of the hour that ends at the time. */
  readonly globalShortwaveWPerM2: readonly number[];
  /** Diffuse part of it, same hour. */
  readonly diffuseShortwaveWPerM2: readonly number[];
  /** Air pressure at the height of the place. */
  readonly surfacePressurePa: readonly number[];
  /** New snow, depth of the hour that ends at the time (m); zero where the service has none. */
  readonly snowfallM: readonly number[];
  /** Standard deviation of the air temperature over the ensemble; null where unknown. */
  readonly airTempSpreadK: readonly (number | null)[];
  /** Standard deviation, over the members of the ensemble, of the mean cloud cover of the twelve hours up to the time, 0-1; null where members are not known. */
  readonly cloudSpread: readonly (number | null)[];
  /** How the air temperature of the members goes with that mean cloud cover, -1 to 1; null where members are not known or agree on the cloud. */
  readonly airTempCloudCorrelation: readonly (number | null)[];
  /** Difference between the two forecast models in air temperature (absolute); null where only one is known. */
  readonly modelDifferenceK: readonly (number | null)[];
}

/** What is known of the ground outside; null where the service has none. */
export interface GroundOutside {
  readonly soilTemp18cmK: number | null;
  readonly soilTemp54cmK: number | null;
  /** Mean air temperature of the past year. */
  readonly yearlyMeanAirTempK: number | null;
}
