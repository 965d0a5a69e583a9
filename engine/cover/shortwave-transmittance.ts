import { assertInRange } from '../errors.js';
import { degreesToRadians } from '../units.js';

/** Refractive index of polyethylene (Duffie2013 table 5.1.1, from memory). */
const POLYETHYLENE_INDEX = 1.51;
/** Sunlight absorbed in one film at normal incidence (from memory: 2 to 4 % for 150 micron polyethylene). */
const ABSORBED_IN_FILM = 0.03;
/** Angle at which beam passes like isotropic diffuse light (Duffie2013 fig. 5.4.1, from memory). */
const DIFFUSE_INCIDENCE_RAD = degreesToRadians(60);

/**
 * Share of beam sunlight that a stack of equal films passes, by Fresnel reflection and absorption.
 * Units: incidence angle in rad from the normal; result 0-1.
 * Valid: 0 to pi/2, one to four films.
 * Outside: throws OutOfRangeError.
 * Source: Duffie2013 eq. 5.1.1-5.1.7 and 5.2.2 (from memory): each polarisation (1 - r)/(1 + (2N - 1) r).
 */
export function beamTransmittance(incidenceRad: number, filmCount: number): number {
  assertInRange('incidenceRad', incidenceRad, { lowest: 0, highest: Math.PI / 2 + 1e-9, unit: 'rad' });
  assertInRange('filmCount', filmCount, { lowest: 1, highest: 4, unit: '' });
  const refracted = Math.asin(Math.sin(incidenceRad) / POLYETHYLENE_INDEX);
  const pathShare = 1 / Math.cos(refracted);
  const absorption = (1 - ABSORBED_IN_FILM) ** (filmCount * pathShare);
  return absorption * fresnelStack(incidenceRad, refracted, filmCount);
}

function fresnelStack(incidenceRad: number, refractedRad: number, filmCount: number): number {
  if (incidenceRad < 1e-6) {
    const r = ((POLYETHYLENE_INDEX - 1) / (POLYETHYLENE_INDEX + 1)) ** 2;
    return (1 - r) / (1 + (2 * filmCount - 1) * r);
  }
  const across = (Math.sin(refractedRad - incidenceRad) / Math.sin(refractedRad + incidenceRad)) ** 2;
  const along = (Math.tan(refractedRad - incidenceRad) / Math.tan(refractedRad + incidenceRad)) ** 2;
  return [across, along].reduce((sum, r) => sum + (1 - r) / (1 + (2 * filmCount - 1) * r), 0) / 2;
}

/**
 * Share of diffuse sunlight that a stack of equal films passes.
 * Units: count in; result 0-1.
 * Valid: one to four films.
 * Outside: throws OutOfRangeError.
 * Source: Duffie2013 fig. 5.4.1: isotropic light behaves like beam at 60 degrees (from memory).
 */
export const diffuseTransmittance = (filmCount: number): number => beamTransmittance(DIFFUSE_INCIDENCE_RAD, filmCount);
