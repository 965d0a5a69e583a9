import { sunPosition } from '../../engine/sun/position.js';
import { radiansToDegrees } from '../../engine/units.js';
import type { PublishedRow } from './published-table.js';

export interface SunPlace {
  readonly latitude: number;
  readonly longitude: number;
}

export const epochS = (utc: string): number => Date.parse(utc) / 1000;

export const altitudeDeg = (timeS: number, place: SunPlace): number => radiansToDegrees(sunPosition(timeS, place).altitudeRad);
export const azimuthDeg = (timeS: number, place: SunPlace): number => radiansToDegrees(sunPosition(timeS, place).azimuthRad);

/** Geometric altitude and azimuth printed for one instant. */
export const positionRows = (utc: string, place: SunPlace, printed: { altitudeDeg: number; azimuthDeg: number }): PublishedRow[] => [
  { name: `${utc} at ${place.latitude}, ${place.longitude}: altitude`, expected: printed.altitudeDeg, model: () => altitudeDeg(epochS(utc), place) },
  { name: `${utc} at ${place.latitude}, ${place.longitude}: azimuth`, expected: printed.azimuthDeg, model: () => azimuthDeg(epochS(utc), place) },
];
