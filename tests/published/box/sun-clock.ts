import { sunPosition, type SunPosition } from '../../../engine/sun/position.js';
import { SECONDS_PER_HOUR } from '../../../engine/units.js';
import type { BoxCase } from './box-case.js';
import type { WeatherYear } from './weather-year.js';

/** Any year without leap day serves; the sun of one differs from that of another by less than a quarter of a degree. */
const YEAR_START_UTC_S = Date.UTC(2001, 0, 1) / 1000;
const HOURS_PER_DAY = 24;
const RAD_PER_HOUR = (2 * Math.PI) / HOURS_PER_DAY;

/** Sunlight of one step. */
export interface SunLight {
  readonly sun: SunPosition;
  readonly beamNormalWPerM2: number;
  readonly diffuseWPerM2: number;
  readonly globalWPerM2: number;
}

/** Sun position at an hour of the year on the clock that the weather file keeps for its sunlight. */
export function sunAt(boxCase: BoxCase, hour: number): SunPosition {
  const { site, weather } = boxCase;
  if (weather.sunClock === 'standard') return sunPosition(YEAR_START_UTC_S + (hour - site.utcOffsetH) * SECONDS_PER_HOUR, site);
  const meanSolarS = YEAR_START_UTC_S + hour * SECONDS_PER_HOUR - (site.longitude / 360) * HOURS_PER_DAY * SECONDS_PER_HOUR;
  const ahead = solarHour(sunPosition(meanSolarS, site), site.latitude) - (hour % HOURS_PER_DAY);
  const equationOfTimeH = ahead - HOURS_PER_DAY * Math.round(ahead / HOURS_PER_DAY);
  return sunPosition(meanSolarS - equationOfTimeH * SECONDS_PER_HOUR, site);
}

/** Time by the sun, h: 12 when it stands highest. */
function solarHour({ altitudeRad, azimuthRad }: SunPosition, latitude: number): number {
  const latitudeRad = (latitude * Math.PI) / 180;
  const west = -Math.cos(altitudeRad) * Math.sin(azimuthRad);
  const towardsNoon = Math.sin(altitudeRad) * Math.cos(latitudeRad) - Math.cos(altitudeRad) * Math.cos(azimuthRad) * Math.sin(latitudeRad);
  return HOURS_PER_DAY / 2 + Math.atan2(west, towardsNoon) / RAD_PER_HOUR;
}

/** Sunlight in the middle of each step of an hour: the means of the hour hold while the sun is up, so that their sums are kept. */
export function lightOfHour(boxCase: BoxCase, year: WeatherYear, hourIndex: number, steps: number): readonly SunLight[] | null {
  const globalWPerM2 = year.globalWPerM2[hourIndex]!;
  const beam = year.beamNormalWPerM2[hourIndex]!;
  if (globalWPerM2 <= 0 && beam <= 0) return null;
  const suns = Array.from({ length: steps }, (_, k) => sunAt(boxCase, hourIndex + (k + 0.5) / steps));
  const sines = suns.map(({ altitudeRad }) => Math.max(0, Math.sin(altitudeRad)));
  const up = sines.filter((sine) => sine > 0).length;
  const beamWhileUp = up === 0 ? 0 : (beam * steps) / up;
  const beamOnFlat = sines.reduce((sum, sine) => sum + beamWhileUp * sine, 0) / steps;
  const diffuseWPerM2 = boxCase.weather.diffuse === 'given' ? year.diffuseWPerM2[hourIndex]! : Math.max(0, globalWPerM2 - beamOnFlat);
  return suns.map((sun, k): SunLight => {
    const beamNormalWPerM2 = sines[k]! > 0 ? beamWhileUp : 0;
    return { sun, beamNormalWPerM2, diffuseWPerM2, globalWPerM2: diffuseWPerM2 + beamNormalWPerM2 * sines[k]! };
  });
}
