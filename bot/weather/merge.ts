import { SECONDS_PER_HOUR, type WeatherHours } from '../../engine/index.js';

/**
 * Stored hours from startS on, then the newer ones from their first to their last.
 * Old hours that do not touch the newer ones are dropped: the engine needs unbroken hours.
 */
export function mergedHours(older: WeatherHours, newer: WeatherHours, startS: number): WeatherHours {
  const joinS = newer.timeS[0];
  if (joinS === undefined) return newer;
  const join = older.timeS.indexOf(joinS - SECONDS_PER_HOUR) + 1;
  const firstKept = older.timeS.findIndex((t) => t >= startS);
  const from = firstKept < 0 ? join : Math.min(join, firstKept);
  const joined = <T>(column: (hours: WeatherHours) => readonly T[]): readonly T[] => [...column(older).slice(from, join), ...column(newer)];
  return {
    timeS: joined((hours) => hours.timeS),
    airTempK: joined((hours) => hours.airTempK),
    vapourPressurePa: joined((hours) => hours.vapourPressurePa),
    windSpeed10mMPerS: joined((hours) => hours.windSpeed10mMPerS),
    cloudFraction: joined((hours) => hours.cloudFraction),
    globalShortwaveWPerM2: joined((hours) => hours.globalShortwaveWPerM2),
    diffuseShortwaveWPerM2: joined((hours) => hours.diffuseShortwaveWPerM2),
    surfacePressurePa: joined((hours) => hours.surfacePressurePa),
    snowfallM: joined((hours) => hours.snowfallM),
    airTempSpreadK: joined((hours) => hours.airTempSpreadK),
    cloudSpread: joined((hours) => hours.cloudSpread),
    airTempCloudCorrelation: joined((hours) => hours.airTempCloudCorrelation),
    modelDifferenceK: joined((hours) => hours.modelDifferenceK),
  };
}
