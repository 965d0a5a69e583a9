import { getPosition, getTimes } from 'suncalc';
import { nextSunriseS, nextSunsetS } from '../../../engine/sun/rise-and-set.js';
import { SECONDS_PER_DAY } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { altitudeDeg, azimuthDeg, epochS, type SunPlace } from '../sun-rows.js';
import { refractionDeg } from './refraction.js';

/**
 * suncalc 2.0.2 where calendars and angles go wrong: beside the poles, on the polar circles, and on both sides of the date line. Also the rows
 * that were printed from it.
 */
export const source = 'suncalc';

const DAYS = ['2023-12-21', '2024-02-29', '2024-03-20', '2024-06-20', '2024-12-31', '2026-11-25'] as const;
const HOURS = [0, 5, 11, 17, 23] as const;
const LATITUDES = [-89.9, -66.56, -17.8, 0.01, 52, 66.56, 89.9] as const;
const LONGITUDES = [-180, -179.99, -176.5, 173, 178, 179.99, 180] as const;
const places = LATITUDES.flatMap((latitude) => LONGITUDES.map((longitude): SunPlace => ({ latitude, longitude })));
const instants = DAYS.flatMap((day) => HOURS.map((hour) => epochS(`${day}T${String(hour).padStart(2, '0')}:00:00Z`)));
const nameOf = (timeS: number, { latitude, longitude }: SunPlace): string => `${new Date(timeS * 1000).toISOString()} ${latitude} ${longitude}`;

const positions = instants.flatMap((timeS) => places.map((place) => ({ timeS, place })));
const altitudes = positions.map(({ timeS, place }): PublishedRow => ({
  name: nameOf(timeS, place),
  expected: getPosition(new Date(timeS * 1000), place.latitude, place.longitude).altitude,
  model: () => altitudeDeg(timeS, place) + refractionDeg(altitudeDeg(timeS, place)),
}));
const azimuths = positions.map(({ timeS, place }): PublishedRow => ({
  name: nameOf(timeS, place),
  expected: 0,
  model: () => ((((azimuthDeg(timeS, place) - getPosition(new Date(timeS * 1000), place.latitude, place.longitude).azimuth) % 360) + 540) % 360) - 180,
}));

/** Where the sun sinks slower than this, the instant is ill defined: there only the event itself is compared. */
const GRAZES_BELOW_DEG_PER_H = 3;
const sinksDegPerH = (place: SunPlace, timeS: number): number => 3 * Math.abs(altitudeDeg(timeS + 600, place) - altitudeDeg(timeS - 600, place));
/** Within this of grazing the horizon all day, two theories may differ about whether there is an event. */
const GRAZING_DEG = 0.5;
const HORIZON_DEG = -0.833;
const SOLAR_NOON_S = SECONDS_PER_DAY / 2;

/** Events of the day around the sun's own noon of a place, so that the calendar of either side of the date line plays no part. */
const events = DAYS.flatMap((day) =>
  places.flatMap((place): PublishedRow[] => {
    const noonS = epochS(`${day}T00:00:00Z`) + SOLAR_NOON_S - (place.longitude / 360) * SECONDS_PER_DAY;
    const times = getTimes(new Date(noonS * 1000), place.latitude, place.longitude);
    const extremes = [altitudeDeg(noonS, place), altitudeDeg(noonS + SOLAR_NOON_S, place)];
    const eventRow = (name: string, theirs: Date | null, ours: () => number | null): PublishedRow[] => {
      if (extremes.some((altitude) => Math.abs(altitude - HORIZON_DEG) < GRAZING_DEG)) return [];
      if (theirs === null) return [{ name: `${day} ${place.latitude} ${place.longitude}: no ${name}`, expected: 0, model: () => (ours() === null ? 0 : Number.NaN) }];
      const theirsS = theirs.getTime() / 1000;
      const grazes = sinksDegPerH(place, theirsS) < GRAZES_BELOW_DEG_PER_H;
      return [{ name: `${day} ${place.latitude} ${place.longitude}: ${name}`, expected: 0, model: () => ((found) => (found === null ? Number.NaN : grazes ? 0 : found - theirsS))(ours()) }];
    };
    return [...eventRow('sunset', times.sunset, () => nextSunsetS(noonS, place)), ...eventRow('sunrise', times.sunrise, () => nextSunriseS(noonS - SOLAR_NOON_S, place))];
  }),
);

const GOLDEN: SunPlace = { latitude: 39.742476, longitude: -105.1786 };
const MINNEAPOLIS: SunPlace = { latitude: 44.98, longitude: -93.27 };
const EXAMPLE_S = epochS('2003-10-17T19:30:30Z');

export const edgeTables: readonly PublishedTable[] = [
  {
    source, title: 'printed: worked example of Reda2004', unit: 'degrees', tolerance: 0.02, toleranceReason: 'two low-precision theories of 0.01 degrees each', origin: 'library run',
    rows: [
      { name: 'altitude with refraction', expected: 39.8925, model: () => altitudeDeg(EXAMPLE_S, GOLDEN) + refractionDeg(altitudeDeg(EXAMPLE_S, GOLDEN)) },
      { name: 'azimuth', expected: 194.3391, model: () => azimuthDeg(EXAMPLE_S, GOLDEN) },
    ],
  },
  {
    source, title: 'printed: sunsets that fall past midnight UTC', unit: 's', tolerance: 30, toleranceReason: 'refraction fixed at 34 minutes of arc; a library that wraps to the UTC date is 77 and 88 s off here', origin: 'library run',
    rows: [
      { name: '39.742476 N 105.1786 W, evening of 2003-10-17', expected: epochS('2003-10-18T00:18:51Z'), model: () => nextSunsetS(epochS('2003-10-17T19:00:00Z'), GOLDEN)! },
      { name: '44.98 N 93.27 W, evening of 2024-03-20', expected: epochS('2024-03-21T00:26:21Z'), model: () => nextSunsetS(epochS('2024-03-20T18:00:00Z'), MINNEAPOLIS)! },
    ],
  },
  { source, title: 'edges: altitude with refraction', unit: 'degrees', tolerance: 0.02, toleranceReason: 'two low-precision theories of 0.01 degrees each', origin: 'library run', rows: altitudes },
  { source, title: 'edges: azimuth', unit: 'degrees', tolerance: 0.3, toleranceReason: 'two theories of 0.01 degrees each; in the tropics the sun stands within 2 degrees of the zenith, which magnifies that', origin: 'library run', rows: azimuths },
  { source, title: 'edges: sunrise and sunset, polar day and night', unit: 's', tolerance: 30, toleranceReason: 'where the sun sinks faster than 3 degrees an hour, 0.02 degrees are 24 s', origin: 'library run', rows: events },
];
