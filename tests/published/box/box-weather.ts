import { humidityRatioKgPerKg, moistAirDensityKgPerM3 } from '../../../engine/air/moist-air.js';
import { saturationVapourPressureOverWaterPa, vapourPressureFromDewPointOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK, VAPOUR_HEAT_CAPACITY_J_PER_KGK } from '../../../engine/constants.js';
import { CLOUD_LONGWAVE_WEIGHT, surroundingsRadiantTempK, type SkyState } from '../../../engine/sky/downwelling-longwave.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import { HOURS_PER_YEAR, type WeatherYear } from './weather-year.js';

/** Air and sky at one instant. */
export interface BoxWeather {
  readonly outsideAirTempK: number;
  readonly windMPerS: number;
  /** Heat that 1 m3 of outside air takes up, J/(m3 K). */
  readonly airJPerM3K: number;
  /** Of all that the roof sees, and of what a wall sees. */
  readonly aboveRoofK: number;
  readonly beforeWallK: number;
}

/**
 * Share of the longwave on a plane that comes from the sky; the rest comes from bodies at air temperature (Walton1983 as in
 * EnergyPlusEngRef, outside surface heat balance: view factor (1 + cos)/2, of which the sky has the square root, air near the horizon the rest).
 */
export const skyShare = (tiltCosine: number): number => ((1 + tiltCosine) / 2) ** 1.5;

/** Weather at an instant of the year, in hours; linear between the hours. */
export function boxWeatherAt(year: WeatherYear, hour: number): BoxWeather {
  // The value at index i belongs to the end of hour i, which is the instant i + 1.
  const position = hour - 1;
  const before = Math.floor(position);
  const share = position - before;
  const index = (i: number): number => ((i % HOURS_PER_YEAR) + HOURS_PER_YEAR) % HOURS_PER_YEAR;
  const at = (values: Float64Array): number => values[index(before)]! + share * (values[index(before + 1)]! - values[index(before)]!);
  const outsideAirTempK = celsiusToKelvin(at(year.dryBulbC));
  const vapourPressurePa = Math.min(vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(at(year.dewPointC))), saturationVapourPressureOverWaterPa(outsideAirTempK));
  const pressurePa = at(year.pressurePa);
  const humidityRatio = humidityRatioKgPerKg(vapourPressurePa, pressurePa);
  const heatJPerKgK = (DRY_AIR_HEAT_CAPACITY_J_PER_KGK + humidityRatio * VAPOUR_HEAT_CAPACITY_J_PER_KGK) / (1 + humidityRatio);
  const sky = (tiltCosine: number): SkyState => ({ airTempK: outsideAirTempK, vapourPressurePa, cloudFraction: at(year.cloudFraction), cloudWeight: CLOUD_LONGWAVE_WEIGHT, skyViewFraction: skyShare(tiltCosine) });
  return {
    outsideAirTempK,
    windMPerS: at(year.windMPerS),
    airJPerM3K: moistAirDensityKgPerM3({ airTempK: outsideAirTempK, humidityRatio, pressurePa }) * heatJPerKgK,
    aboveRoofK: surroundingsRadiantTempK(sky(1)),
    beforeWallK: surroundingsRadiantTempK(sky(0)),
  };
}
