import { sunPosition } from '../../../engine/sun/position.js';
import { radiansToDegrees, SECONDS_PER_DAY } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Spencer 1971, Fourier series of declination and equation of time by the day of the year, as evaluated by pvlib (6382338a). The series knows
 * no leap years, so the engine is averaged over four years; at the pole the height of the sun is its declination, and its azimuth the hour angle.
 */
export const source = 'Spencer1971';

const YEARS = [2001, 2002, 2003, 2004] as const;
const POLE = { latitude: 90, longitude: 0 };
const startOfDayS = (year: number, day: number): number => Date.UTC(year, 0, 1) / 1000 + (day - 1) * SECONDS_PER_DAY;
const meanOverYears = (of: (year: number) => number): number => YEARS.reduce((sum, year) => sum + of(year), 0) / YEARS.length;

const declinationDeg = (day: number): number => meanOverYears((year) => radiansToDegrees(sunPosition(startOfDayS(year, day), POLE).altitudeRad));
const MINUTES_PER_DEGREE = 4;
/** At midnight UTC on the meridian opposite to Greenwich the sun is past south by the equation of time. */
const equationOfTimeMin = (day: number): number => meanOverYears((year) => MINUTES_PER_DEGREE * (radiansToDegrees(sunPosition(startOfDayS(year, day), { latitude: 90, longitude: 180 }).azimuthRad) - 180));

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'declination by day of the year', unit: 'degrees', tolerance: 0.15, toleranceReason: 'a day of the year is only known to half a day of the sun: up to 0.2 degrees in autumn', origin: 'library run',
    rows: ([[17, -20.904], [47, -12.609], [172, 23.452], [290, -8.959], [355, -23.42]] as const).map(([day, expected]) => ({ name: `day ${day}`, expected, model: () => declinationDeg(day) })),
  },
  {
    source, title: 'equation of time by day of the year', unit: 'min', tolerance: 0.6, toleranceReason: 'the series itself is up to 35 s off (from memory)', origin: 'library run',
    rows: ([[17, -9.34], [47, -14.247], [290, 14.803], [355, 2.155]] as const).map(([day, expected]) => ({ name: `day ${day}`, expected, model: () => equationOfTimeMin(day) })),
  },
];
