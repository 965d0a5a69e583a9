import { clearSkyWPerM2 } from '../../../bot/weather/sunlight.js';
import { sunPosition } from '../../../engine/sun/position.js';
import { radiansToDegrees, SECONDS_PER_HOUR } from '../../../engine/units.js';
import { once } from '../rc-network.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Haurwitz 1945, clear-sky sunlight from the height of the sun (from memory), as evaluated by pvlib (6382338a). The product gives means of an
 * hour, and has the formula for weather answers without sunlight. At the pole the sun hardly changes its height within an hour, so there
 * the mean is the instant: the two lowest suns of the printed list can be met.
 */
export const source = 'Haurwitz1945';

const POLE = { latitude: 90, longitude: 0 };
const SPRING_S = Date.UTC(2024, 2, 20) / 1000;
const SEARCH_DAYS = 92;

/** End of the hour in spring whose middle has the sun nearest to a height at the pole. */
const hourWithSunAt = (altitudeDeg: number): number => {
  const hours = Array.from({ length: SEARCH_DAYS * 24 }, (_, i) => SPRING_S + i * SECONDS_PER_HOUR);
  const off = (timeS: number): number => Math.abs(radiansToDegrees(sunPosition(timeS - SECONDS_PER_HOUR / 2, POLE).altitudeRad) - altitudeDeg);
  return hours.reduce((best, timeS) => (off(timeS) < off(best) ? timeS : best));
};

const atZenith = (zenithDeg: number): (() => number) => once(() => clearSkyWPerM2(POLE, hourWithSunAt(90 - zenithDeg)));

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'clear-sky sunlight', unit: 'W/m2', tolerance: 0.015, relative: true, toleranceReason: 'the height that the product takes includes refraction: 0.09 degrees at 80 degrees, 1.2 % of the light', origin: 'library run',
    rows: ([[70, 316.04], [80, 135.74]] as const).map(([zenithDeg, expected]) => ({ name: `sun ${zenithDeg} degrees from the zenith`, expected, model: atZenith(zenithDeg) })),
  },
];
