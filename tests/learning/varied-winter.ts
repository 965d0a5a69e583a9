import { saturationVapourPressureOverWaterPa } from '../../engine/air/saturation-magnus.js';
import { standardPressurePa } from '../../engine/air/moist-air.js';
import type { Greenhouse } from '../../engine/greenhouse/greenhouse.js';
import type { GroundOutside, WeatherHours } from '../../engine/night/weather.js';
import { sunPosition } from '../../engine/sun/position.js';
import { celsiusToKelvin, SECONDS_PER_DAY, SECONDS_PER_HOUR } from '../../engine/units.js';
import { normalQuantile } from '../../engine/chance/normal.js';
import type { Random } from '../physics/random-houses.js';

/** Standard normal from a number between 0 and 1. */
export const normalFrom = (random: Random): number => normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, random())));

export const GROUND_OUTSIDE: GroundOutside = { soilTemp18cmK: celsiusToKelvin(4), soilTemp54cmK: celsiusToKelvin(7), yearlyMeanAirTempK: celsiusToKelvin(9) };

/** Midnight of 20 November UTC, epoch s. */
const FIRST_DAY_S = Date.UTC(2025, 10, 20) / 1000;
// Day to day: a cold continental early winter (project estimate).
const MEAN_C = -2;
const SPELL_SD_K = 4;
const SWING_K = { clear: 6, overcast: 2 } as const;
const KEPT_FROM_DAY_BEFORE = 0.6;
const DEW_POINT_BELOW_MEAN_K = 4;
const CLEAR_SUN_W_PER_M2 = 950;
const CLOUD_TAKES = 0.75;

/** Hours of days that differ: cold and mild spells, clear and overcast nights, calm and windy ones. */
export function variedWinter({ place }: Greenhouse, days: number, random: Random): WeatherHours {
  const shiftS = -Math.round(place.longitude / 15) * SECONDS_PER_HOUR;
  const spells: { meanC: number; cloud: number; windMPerS: number }[] = [];
  for (let day = 0; day <= days; day += 1) {
    const before = spells.at(-1)?.meanC ?? MEAN_C;
    const meanC = MEAN_C + KEPT_FROM_DAY_BEFORE * (before - MEAN_C) + Math.sqrt(1 - KEPT_FROM_DAY_BEFORE ** 2) * SPELL_SD_K * normalFrom(random);
    // Most nights are nearly clear or nearly overcast.
    const cloud = (1 - Math.cos(Math.PI * random())) / 2;
    spells.push({ meanC, cloud, windMPerS: 0.5 + 5 * random() ** 2 });
  }
  // Noon to noon, so that no night is cut in two.
  const at = (hour: number): { meanC: number; cloud: number; windMPerS: number } => spells[Math.max(0, Math.min(days, Math.floor((hour + 12) / 24)))]!;
  const hours = Array.from({ length: days * 24 + 1 }, (_, hour) => hour);
  const timeS = hours.map((hour) => FIRST_DAY_S + shiftS + hour * SECONDS_PER_HOUR);
  const smooth = (hour: number, of: (spell: { meanC: number; cloud: number }) => number): number => (of(at(hour - 6)) + of(at(hour)) + of(at(hour + 6))) / 3;
  const airTempK = hours.map((hour) => {
    const cloud = smooth(hour, (spell) => spell.cloud);
    const swingK = SWING_K.clear + cloud * (SWING_K.overcast - SWING_K.clear);
    return celsiusToKelvin(smooth(hour, ({ meanC }) => meanC) + swingK * Math.cos((2 * Math.PI * (hour - 15)) / 24));
  });
  const global = timeS.map((time, hour) => CLEAR_SUN_W_PER_M2 * Math.max(0, Math.sin(sunPosition(time - SECONDS_PER_HOUR / 2, { latitude: place.latitude, longitude: place.longitude }).altitudeRad)) * (1 - CLOUD_TAKES * at(hour).cloud));
  return {
    timeS,
    airTempK,
    vapourPressurePa: hours.map((hour) => Math.min(saturationVapourPressureOverWaterPa(airTempK[hour]!), saturationVapourPressureOverWaterPa(celsiusToKelvin(smooth(hour, ({ meanC }) => meanC) - DEW_POINT_BELOW_MEAN_K)))),
    windSpeed10mMPerS: hours.map((hour) => at(hour).windMPerS),
    cloudFraction: hours.map((hour) => at(hour).cloud),
    globalShortwaveWPerM2: global,
    diffuseShortwaveWPerM2: global.map((value, hour) => (0.2 + 0.8 * at(hour).cloud) * value),
    surfacePressurePa: hours.map(() => standardPressurePa(place.elevation ?? 0)),
    snowfallM: hours.map(() => 0),
    airTempSpreadK: hours.map(() => null),
    cloudSpread: hours.map(() => null),
    airTempCloudCorrelation: hours.map(() => null),
    modelDifferenceK: hours.map(() => null),
  };
}

export const dayOfWinterS = (day: number, place: Greenhouse['place'], sunHour: number): number => FIRST_DAY_S - Math.round(place.longitude / 15) * SECONDS_PER_HOUR + day * SECONDS_PER_DAY + sunHour * SECONDS_PER_HOUR;
