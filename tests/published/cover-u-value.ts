import { FILM_GAP_W_PER_M2K, outsideConvectionWPerM2K } from '../../engine/cover/convection.js';
import type { LongwaveOptics } from '../../engine/cover/film-optics.js';
import { solveSteadyCover } from './Siegel2002/film-network.js';

/**
 * A heated house on a winter night as the makers of heat-loss tables had it in mind: 15 °C inside, -10 outside, sky 3 K below the air
 * (mostly cloudy), warm floor. None of the tables says; all of this is assumed.
 */
const INSIDE_C = 15;
const OUTSIDE_C = -10;
const SKY_C = -13;
/** Design wind of 15 mph stands for about this at the cover of a low house. */
export const DESIGN_WIND_M_PER_S = 4;
const INSIDE_CONVECTION_W_PER_M2K = 3.5;

/** Heat-loss coefficient of a cover, inside air to outside air, conduction, convection and longwave, W/(m2 K). Films from inside to outside. */
export function coverUValue(films: readonly LongwaveOptics[], options: { windMPerS?: number; gapWPerM2K?: number } = {}): number {
  const { groundLossWPerM2, convectionWPerM2 } = solveSteadyCover({
    films,
    groundTempC: INSIDE_C,
    insideTempC: INSIDE_C,
    outsideTempC: OUTSIDE_C,
    skyTempC: SKY_C,
    hInsideWPerM2K: INSIDE_CONVECTION_W_PER_M2K,
    hGapWPerM2K: options.gapWPerM2K ?? FILM_GAP_W_PER_M2K,
    hOutsideWPerM2K: outsideConvectionWPerM2K(options.windMPerS ?? DESIGN_WIND_M_PER_S),
  });
  return (groundLossWPerM2 + convectionWPerM2) / (INSIDE_C - OUTSIDE_C);
}

/** Between curtain and film lies the air of the roof: two faces of about 3 W/(m2 K) in series, and what leaks past the curtain. */
const ROOF_AIR_W_PER_M2K = 1.5;
export const curtainGapWPerM2K = (curtain: { readonly leakWPerM2K: number }): number => ROOF_AIR_W_PER_M2K + curtain.leakWPerM2K;

/** Share of the loss that a change of cover saves. */
export const saving = (before: number, after: number): number => 1 - after / before;
