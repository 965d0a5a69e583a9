import { stackDiffuseTransmittance, stackTransmittance, type Sheet } from '../../../engine/cover/shortwave-transmittance.js';
import { degreesToRadians, radiansToDegrees } from '../../../engine/units.js';
import type { Glazing, Pane } from './box-case.js';

/** What glazing does with light: shares that pass, and that each pane takes (from outside to inside). */
export interface LightShares {
  readonly passed: number;
  readonly absorbed: readonly number[];
}

export interface GlazingOptics {
  readonly beam: (incidenceRad: number) => LightShares;
  readonly diffuseFromOutside: LightShares;
  readonly diffuseFromInside: LightShares;
}

type PanesGlazing = Extract<Glazing, { kind: 'panes' }>;
type UValueGlazing = Extract<Glazing, { kind: 'u-value' }>;

/** Isotropic light passes like beam at this angle (Duffie2013 fig. 5.4.1, as the engine's stackDiffuseTransmittance). */
const DIFFUSE_INCIDENCE_RAD = degreesToRadians(60);

export function glazingOptics(glazing: Glazing): GlazingOptics {
  return glazing.kind === 'panes' ? panesOptics(glazing) : tableOptics(glazing);
}

/** Index and absorption of a pane from what it passes and reflects straight on: the engine's pane formula solved backwards. */
export function sheetOf({ sun }: Pane): Sheet {
  if ('refractiveIndex' in sun) return sun;
  const { transmittance, reflectance } = sun;
  let passing = 1;
  let surface = 0;
  for (let round = 0; round < 100; round += 1) {
    surface = reflectance / (1 + passing * transmittance);
    passing = (transmittance * (1 - (surface * passing) ** 2)) / (1 - surface) ** 2;
  }
  const root = Math.sqrt(surface);
  return { refractiveIndex: (1 + root) / (1 - root), absorbedShare: 1 - passing };
}

function panesOptics({ panes }: PanesGlazing): GlazingOptics {
  const sheets = panes.map(sheetOf);
  const inward = [...sheets].reverse();
  const fromInside = absorbedByEach(DIFFUSE_INCIDENCE_RAD, inward);
  return {
    beam: (incidenceRad) => ({ passed: stackTransmittance(incidenceRad, sheets), absorbed: absorbedByEach(incidenceRad, sheets) }),
    diffuseFromOutside: { passed: stackDiffuseTransmittance(sheets), absorbed: absorbedByEach(DIFFUSE_INCIDENCE_RAD, sheets) },
    diffuseFromInside: { passed: stackDiffuseTransmittance(inward), absorbed: [...fromInside].reverse() },
  };
}

/** What each sheet of a stack absorbs, the first hit first: single sheets by the engine, added up with all reflections between them. */
function absorbedByEach(incidenceRad: number, sheets: readonly Sheet[]): readonly number[] {
  const single = sheets.map((sheet) => {
    const refracted = Math.asin(Math.sin(incidenceRad) / sheet.refractiveIndex);
    const absorbed = 1 - (1 - sheet.absorbedShare) ** (1 / Math.cos(refracted));
    const passed = stackTransmittance(incidenceRad, [sheet]);
    return { passed, absorbed: Math.min(absorbed, 1 - passed), reflected: Math.max(0, 1 - passed - absorbed) };
  });
  // Reflectance of each sheet together with all that lie behind it.
  const behind = single.map(({ reflected }) => reflected);
  for (let k = single.length - 2; k >= 0; k -= 1) behind[k] = single[k]!.reflected + (single[k]!.passed ** 2 * behind[k + 1]!) / (1 - single[k]!.reflected * behind[k + 1]!);
  let forward = 1;
  return single.map(({ passed, absorbed, reflected }, k) => {
    const next = k === single.length - 1 ? 0 : (forward * passed) / (1 - reflected * behind[k + 1]!);
    const taken = absorbed * (forward + next * (behind[k + 1] ?? 0));
    forward = next;
    return taken;
  });
}

/** Two faces: what is absorbed near the outside and near the inside. */
function tableOptics({ transmittance, absorbedOutside, absorbedInside }: UValueGlazing): GlazingOptics {
  const straight = transmittance[0]!.share;
  const passedAt = (incidenceRad: number): number => {
    const angle = Math.min(90, radiansToDegrees(incidenceRad));
    const next = Math.max(1, transmittance.findIndex(({ incidenceDeg }) => incidenceDeg >= angle));
    const [low, high] = [transmittance[next - 1]!, transmittance[next]!];
    return low.share + ((angle - low.incidenceDeg) / (high.incidenceDeg - low.incidenceDeg)) * (high.share - low.share);
  };
  // What does not pass at a slant is mostly reflected: absorption falls with what passes.
  const at = (passed: number): LightShares => ({ passed, absorbed: [absorbedOutside, absorbedInside].map((share) => (straight === 0 ? share : Math.min(share, (share * passed) / straight))) });
  const diffuse = at(hemisphericalMean(passedAt));
  return { beam: (incidenceRad) => at(passedAt(incidenceRad)), diffuseFromOutside: diffuse, diffuseFromInside: diffuse };
}

const SLICES = 90;
/** Mean over the half-sphere by the cosine law: integral of 2 sin cos. */
function hemisphericalMean(at: (incidenceRad: number) => number): number {
  let sum = 0;
  for (let i = 0; i < SLICES; i += 1) {
    const angle = ((i + 0.5) / SLICES) * (Math.PI / 2);
    sum += at(angle) * Math.sin(2 * angle) * (Math.PI / 2 / SLICES);
  }
  return sum;
}
