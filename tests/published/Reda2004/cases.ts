import { nextSunriseS, nextSunsetS } from '../../../engine/sun/rise-and-set.js';
import type { PublishedTable } from '../published-table.js';
import { epochS, positionRows } from '../sun-rows.js';

/**
 * Reda and Andreas 2004, NREL/TP-560-34302, worked example of 17 October 2003 12:30:30 UT-7 (from memory, reproduced by pvlib; the
 * geometric altitude by pvlib and astropy). Its printed sunset, 17:20:19, is that of the evening before: the true one is 17:18:51
 * (altitude -0.832 degrees by astropy), so the printed one is not asserted.
 */
export const source = 'Reda2004';

const GOLDEN = { latitude: 39.742476, longitude: -105.1786 };

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'worked example: position', unit: 'degrees', tolerance: 0.02, toleranceReason: 'low-precision theory of Meeus, 0.01 degrees; a house needs 0.1', origin: 'library run',
    rows: positionRows('2003-10-17T19:30:30Z', GOLDEN, { altitudeDeg: 90 - 50.128, azimuthDeg: 194.3402 }),
  },
  {
    source, title: 'worked example: sunrise, and the true sunset', unit: 's', tolerance: 20, toleranceReason: 'refraction fixed at 34 minutes of arc', origin: 'library run',
    rows: [
      { name: 'sunrise', expected: epochS('2003-10-17T13:12:43Z'), model: () => nextSunriseS(epochS('2003-10-17T07:00:00Z'), GOLDEN)! },
      { name: 'sunset (after midnight UTC)', expected: epochS('2003-10-18T00:18:51Z'), model: () => nextSunsetS(epochS('2003-10-17T19:00:00Z'), GOLDEN)! },
    ],
  },
];
