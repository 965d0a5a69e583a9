import { assertInRange } from '../errors.js';
import { degreesToRadians } from '../units.js';

/** One sheet of a cover: what bends and what swallows sunlight. */
export interface Sheet {
  readonly refractiveIndex: number;
  /** Absorbed on the straight way through. */
  readonly absorbedShare: number;
}

/** Duffie2013 table 5.1.1 (from memory); 2 to 4 % absorbed in 150 micron polyethylene (from memory). */
export const POLYETHYLENE_SHEET: Sheet = { refractiveIndex: 1.51, absorbedShare: 0.03 };
/** Angle at which beam passes like isotropic diffuse light (Duffie2013 fig. 5.4.1, from memory). */
const DIFFUSE_INCIDENCE_RAD = degreesToRadians(60);
const MOST_SHEETS = 8;
/** Straighter than this, the formulas for the two polarisations are 0/0. */
const STRAIGHT_RAD = 1e-6;

/**
 * Share of beam sunlight that a stack of sheets passes, by Fresnel reflection and absorption.
 * Units: incidence angle in rad from the normal; result 0-1.
 * Valid: 0 to pi/2, one to eight sheets.
 * Outside: throws OutOfRangeError.
 * Source: Duffie2013 eq. 5.1.1-5.1.7 and 5.2.2 (from memory): each polarisation (1 - r)/(1 + (2N - 1) r), which for sheets of several kinds is 1/(1 + sum 2r/(1 - r)).
 */
export function stackTransmittance(incidenceRad: number, sheets: readonly Sheet[]): number {
  assertInRange('incidenceRad', incidenceRad, { lowest: 0, highest: Math.PI / 2 + 1e-9, unit: 'rad' });
  assertInRange('sheets.length', sheets.length, { lowest: 1, highest: MOST_SHEETS, unit: '' });
  let passed = 1;
  let acrossSum = 0;
  let alongSum = 0;
  for (const { refractiveIndex, absorbedShare } of sheets) {
    const refracted = Math.asin(Math.sin(incidenceRad) / refractiveIndex);
    passed *= (1 - absorbedShare) ** (1 / Math.cos(refracted));
    const { across, along } = surfaceReflectance(incidenceRad, refracted, refractiveIndex);
    if (across === 1 || along === 1) return 0;
    acrossSum += (2 * across) / (1 - across);
    alongSum += (2 * along) / (1 - along);
  }
  return (passed * (1 / (1 + acrossSum) + 1 / (1 + alongSum))) / 2;
}

function surfaceReflectance(incidenceRad: number, refractedRad: number, refractiveIndex: number): { across: number; along: number } {
  if (incidenceRad < STRAIGHT_RAD) {
    const r = ((refractiveIndex - 1) / (refractiveIndex + 1)) ** 2;
    return { across: r, along: r };
  }
  return {
    across: (Math.sin(refractedRad - incidenceRad) / Math.sin(refractedRad + incidenceRad)) ** 2,
    along: (Math.tan(refractedRad - incidenceRad) / Math.tan(refractedRad + incidenceRad)) ** 2,
  };
}

/** As stackTransmittance for equal films of polyethylene. Units: rad, count; 0-1. Valid: one to four films. Outside: throws OutOfRangeError. Source: Duffie2013 ch. 5 (from memory). */
export function beamTransmittance(incidenceRad: number, filmCount: number): number {
  assertInRange('filmCount', filmCount, { lowest: 1, highest: 4, unit: '' });
  return stackTransmittance(incidenceRad, Array.from({ length: filmCount }, () => POLYETHYLENE_SHEET));
}

/** Diffuse sunlight through a stack of sheets. Units: 0-1. Valid: one to eight sheets. Outside: throws OutOfRangeError. Source: Duffie2013 fig. 5.4.1: isotropic light behaves like beam at 60 degrees (from memory). */
export const stackDiffuseTransmittance = (sheets: readonly Sheet[]): number => stackTransmittance(DIFFUSE_INCIDENCE_RAD, sheets);

/**
 * Share of diffuse sunlight that a stack of equal films passes.
 * Units: count in; result 0-1.
 * Valid: one to four films.
 * Outside: throws OutOfRangeError.
 * Source: Duffie2013 fig. 5.4.1: isotropic light behaves like beam at 60 degrees (from memory).
 */
export const diffuseTransmittance = (filmCount: number): number => beamTransmittance(DIFFUSE_INCIDENCE_RAD, filmCount);
