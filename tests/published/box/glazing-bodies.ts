import { GRAVITY_M_PER_S2, STANDARD_PRESSURE_PA } from '../../../engine/constants.js';
import { steadyConductor } from '../../../engine/network/network.js';
import { addBody, addLayeredWall, type BoxBodies, type Faces } from './box-bodies.js';
import type { Glazing } from './box-case.js';

// EN-673: dry air at 10 degrees C and 1013 hPa (from memory); density goes with the pressure of the place.
const AIR_CONDUCTIVITY_W_PER_MK = 0.02496;
const AIR_VISCOSITY_PA_S = 1.761e-5;
const AIR_DENSITY_KG_PER_M3 = 1.232;
const AIR_HEAT_CAPACITY_J_PER_KGK = 1008;
// EN-673 for upright glazing: Nu = 0.035 (Gr Pr)^0.38, at least 1 (from memory).
const NUSSELT_FACTOR = 0.035;
const NUSSELT_EXPONENT = 0.38;

/** Still or turning air between two upright panes, without radiation, W/(m2 K). */
export function gapConvectionWPerM2K(gap: { widthM: number; pressurePa: number }, tempAK: number, tempBK: number): number {
  const densityKgPerM3 = (AIR_DENSITY_KG_PER_M3 * gap.pressurePa) / STANDARD_PRESSURE_PA;
  const grashof = (GRAVITY_M_PER_S2 * gap.widthM ** 3 * Math.abs(tempAK - tempBK) * densityKgPerM3 ** 2) / (((tempAK + tempBK) / 2) * AIR_VISCOSITY_PA_S ** 2);
  const prandtl = (AIR_VISCOSITY_PA_S * AIR_HEAT_CAPACITY_J_PER_KGK) / AIR_CONDUCTIVITY_W_PER_MK;
  return (Math.max(1, NUSSELT_FACTOR * (grashof * prandtl) ** NUSSELT_EXPONENT) * AIR_CONDUCTIVITY_W_PER_MK) / gap.widthM;
}

/** Bodies of a window: its two outermost faces, and the faces that share what each pane absorbs. */
export interface GlazingBodies extends Faces {
  readonly panes: readonly Faces[];
}

/** Panes, coupled across each gap by convection and longwave. */
export function addGlazing(bodies: BoxBodies, window: { name: string; areaM2: number; glazing: Glazing; pressurePa: number }): GlazingBodies {
  const { name, areaM2, glazing, pressurePa } = window;
  if (glazing.kind === 'u-value') {
    const outside = addBody(bodies, `${name} outside`);
    const inside = addBody(bodies, `${name} inside`);
    const { insideWPerM2K, outsideWPerM2K } = glazing.filmsIncluded;
    bodies.conductors.push(steadyConductor(outside, inside, areaM2 / (1 / glazing.uValueWPerM2K - 1 / insideWPerM2K - 1 / outsideWPerM2K)));
    return { outside, inside, panes: [{ outside, inside: outside }, { outside: inside, inside }] };
  }
  const panes = glazing.panes.map((pane, p) => addLayeredWall(bodies, { name: `${name} pane ${p + 1}`, areaM2, layers: [{ name: 'glass', ...pane }] }));
  glazing.gaps.forEach((gap, g) => {
    const [a, b] = [panes[g]!.inside, panes[g + 1]!.outside];
    if ('conductanceWPerM2K' in gap) return void bodies.conductors.push(steadyConductor(a, b, areaM2 * gap.conductanceWPerM2K));
    const { widthM } = gap;
    const [emittanceA, emittanceB] = [glazing.panes[g]!.longwaveEmittance, glazing.panes[g + 1]!.longwaveEmittance];
    bodies.conductors.push({ a, b, conductanceWPerK: (tempAK, tempBK) => areaM2 * gapConvectionWPerM2K({ widthM, pressurePa }, tempAK, tempBK), dependsOnTemps: true });
    bodies.radiators.push({ a, b, exchangeAreaM2: areaM2 / (1 / emittanceA + 1 / emittanceB - 1) });
  });
  return { outside: panes[0]!.outside, inside: panes.at(-1)!.inside, panes };
}
