import { nextSunriseS, nextSunsetS } from '../../../engine/sun/rise-and-set.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { altitudeDeg, epochS, positionRows, type SunPlace } from '../sun-rows.js';

/** pvlib (6382338a), NREL SPA implementation: geometric positions, and times of rise, noon and set on which suncalc agrees to 2 s. */
export const source = 'pvlib';

const MINNEAPOLIS: SunPlace = { latitude: 44.98, longitude: -93.27 };
const DENVER: SunPlace = { latitude: 39.74, longitude: -104.99 };
const BURLINGTON: SunPlace = { latitude: 44.48, longitude: -73.21 };
const FAIRBANKS: SunPlace = { latitude: 64.84, longitude: -147.72 };

const riseAndSet = (place: SunPlace, printed: { rise: string; set: string; tolerance: number }): PublishedRow[] => [
  { name: `sunrise ${printed.rise} at ${place.latitude}`, expected: epochS(printed.rise), tolerance: printed.tolerance, model: () => nextSunriseS(epochS(printed.rise) - 6 * 3600, place)! },
  { name: `sunset ${printed.set} at ${place.latitude}`, expected: epochS(printed.set), tolerance: printed.tolerance, model: () => nextSunsetS(epochS(printed.set) - 3 * 3600, place)! },
];
const noon = (place: SunPlace, utc: string, expected: number): PublishedRow => ({ name: `noon ${utc} at ${place.latitude}`, expected, model: () => altitudeDeg(epochS(utc), place) });

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'SPA: geometric position', unit: 'degrees', tolerance: 0.02, toleranceReason: 'low-precision theory of Meeus, 0.01 degrees; a house needs 0.1', origin: 'library run',
    rows: [
      ...positionRows('2024-02-10T15:00:00Z', MINNEAPOLIS, { altitudeDeg: 14.357, azimuthDeg: 128.192 }),
      ...positionRows('2024-02-10T21:00:00Z', MINNEAPOLIS, { altitudeDeg: 21.354, azimuthDeg: 220.03 }),
      ...positionRows('2024-12-21T19:00:00Z', DENVER, { altitudeDeg: 26.819, azimuthDeg: 180.412 }),
      ...positionRows('2024-03-20T22:00:00Z', BURLINGTON, { altitudeDeg: 10.865, azimuthDeg: 259.585 }),
    ],
  },
  {
    source, title: 'SPA: sunrise and sunset', unit: 's', tolerance: 30, toleranceReason: 'refraction fixed at 34 minutes of arc; 60 s at 65 degrees north, where the sun sets slantwise', origin: 'library run',
    rows: [
      ...riseAndSet(MINNEAPOLIS, { rise: '2024-12-21T13:48:27Z', set: '2024-12-21T22:34:35Z', tolerance: 30 }),
      ...riseAndSet(BURLINGTON, { rise: '2024-02-10T12:00:34Z', set: '2024-02-10T22:14:05Z', tolerance: 30 }),
      ...riseAndSet(FAIRBANKS, { rise: '2024-12-21T19:58:41Z', set: '2024-12-21T23:40:06Z', tolerance: 60 }),
    ],
  },
  {
    source, title: 'SPA: altitude at noon', unit: 'degrees', tolerance: 0.05, toleranceReason: 'the printed altitude includes up to 0.05 degrees of refraction', origin: 'library run',
    rows: [noon(MINNEAPOLIS, '2024-12-21T18:11:30Z', 21.58), noon(BURLINGTON, '2024-02-10T17:07:02Z', 31.16), { ...noon(FAIRBANKS, '2024-12-21T21:49:23Z', 1.72), tolerance: 0.02 }],
  },
];
