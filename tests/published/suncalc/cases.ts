import { getPosition, getTimes } from 'suncalc';
import { nextSunriseS, nextSunsetS } from '../../../engine/sun/rise-and-set.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { altitudeDeg, azimuthDeg, epochS, type SunPlace } from '../sun-rows.js';
import { refractionDeg } from './refraction.js';

/** suncalc 2.0.2 as a reference library over a grid; it gives degrees and altitude with refraction (Meeus1998 eq. 16.4). */
export const source = 'suncalc';

const DAYS = ['2023-12-21', '2024-02-10', '2024-03-20', '2024-06-20', '2024-10-17', '2026-11-25'] as const;
const HOURS = [0, 3, 6, 9, 12, 15, 18, 21] as const;
const LATITUDES = [-78, -45, -10, 0, 25, 45, 60, 69.6, 82] as const;
const LONGITUDES = [-150, -72, 0, 30, 140] as const;
const instants = DAYS.flatMap((day) => HOURS.map((hour) => epochS(`${day}T${String(hour).padStart(2, '0')}:00:00Z`)));
const places = LATITUDES.flatMap((latitude) => LONGITUDES.map((longitude): SunPlace => ({ latitude, longitude })));

const positions = instants.flatMap((timeS) => places.map((place) => ({ timeS, place, name: `${new Date(timeS * 1000).toISOString()} ${place.latitude} ${place.longitude}` })));
const altitudes = positions.map(({ timeS, place, name }): PublishedRow => ({
  name,
  expected: getPosition(new Date(timeS * 1000), place.latitude, place.longitude).altitude,
  model: () => altitudeDeg(timeS, place) + refractionDeg(altitudeDeg(timeS, place)),
}));

/** Azimuth on the circle, weighted by the cosine of the altitude: near the zenith it means nothing. */
const azimuths = positions.map(({ timeS, place, name }): PublishedRow => ({
  name,
  expected: 0,
  model: () => {
    const difference = ((((azimuthDeg(timeS, place) - getPosition(new Date(timeS * 1000), place.latitude, place.longitude).azimuth) % 360) + 540) % 360) - 180;
    return difference * Math.cos((altitudeDeg(timeS, place) * Math.PI) / 180);
  },
}));

const SOLAR_NOON_S = 12 * 3600;
const localNoonS = (day: string, longitude: number): number => epochS(`${day}T00:00:00Z`) + SOLAR_NOON_S - (longitude / 15) * 3600;

/** Where the sun grazes the horizon the instant is ill defined: those days are compared by whether there is an event at all. */
const GRAZES_BELOW_DEG_PER_H = 3;
const sinks = (place: SunPlace, timeS: number): number => Math.abs(altitudeDeg(timeS + 600, place) - altitudeDeg(timeS - 600, place)) * 3;

const events = DAYS.flatMap((day) =>
  places.flatMap((place): PublishedRow[] => {
    const noonS = localNoonS(day, place.longitude);
    const times = getTimes(new Date(noonS * 1000), place.latitude, place.longitude);
    const eventRow = (name: string, theirs: Date | null, ours: () => number | null): PublishedRow[] => {
      if (theirs === null) return [{ name: `${day} ${place.latitude} ${place.longitude}: no ${name}`, expected: 0, model: () => (ours() === null ? 0 : Number.NaN) }];
      const theirsS = theirs.getTime() / 1000;
      if (sinks(place, theirsS) < GRAZES_BELOW_DEG_PER_H) return [];
      return [{ name: `${day} ${place.latitude} ${place.longitude}: ${name}`, expected: 0, model: () => (ours() ?? Number.NaN) - theirsS }];
    };
    return [
      ...eventRow('sunset', times.sunset, () => nextSunsetS(noonS, place)),
      ...eventRow('sunrise', times.sunrise, () => nextSunriseS(noonS - SOLAR_NOON_S, place)),
    ];
  }),
);

export const tables: readonly PublishedTable[] = [
  { source, title: 'grid: altitude with refraction', unit: 'degrees', tolerance: 0.02, toleranceReason: 'two low-precision theories of 0.01 degrees each', origin: 'library run', rows: altitudes },
  { source, title: 'grid: azimuth times cosine of altitude', unit: 'degrees', tolerance: 0.02, toleranceReason: 'two low-precision theories of 0.01 degrees each', origin: 'library run', rows: azimuths },
  { source, title: 'grid: sunrise and sunset, polar day and night', unit: 's', tolerance: 30, toleranceReason: 'where the sun sinks faster than 3 degrees an hour, 0.02 degrees are 24 s', origin: 'library run', rows: events },
];
