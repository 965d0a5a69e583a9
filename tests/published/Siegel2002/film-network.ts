import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import type { LongwaveOptics } from '../../../engine/cover/film-optics.js';
import { planeIndex, type LongwaveEnclosure } from '../../../engine/cover/longwave-enclosure.js';
import { longwaveExchangeAreasM2 } from '../../../engine/cover/longwave-exchange.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { createNetwork, steadyConductor } from '../../../engine/network/network.js';
import { MASSLESS } from '../../../engine/network/enthalpy.js';
import { celsiusToKelvin } from '../../../engine/units.js';

/** A steady cover over flat ground with air inside and outside; one square metre of cover over one of ground. */
export interface SteadyCover {
  /** From inside to outside. */
  readonly films: readonly LongwaveOptics[];
  readonly groundTempC: number;
  readonly insideTempC: number;
  readonly outsideTempC: number;
  readonly skyTempC: number;
  readonly hInsideWPerM2K: number;
  readonly hGapWPerM2K: number;
  readonly hOutsideWPerM2K: number;
}

export interface SteadyCoverResult {
  readonly filmTempsK: readonly number[];
  /** Longwave that the ground loses, and convection from the inside air to the film, W/m2. */
  readonly groundLossWPerM2: number;
  readonly convectionWPerM2: number;
}

const GROUND_EMISSIVITY = 0.95;

/** The engine's exchange areas and network, with massless films: one step of any length is the steady state. */
export function solveSteadyCover(cover: SteadyCover): SteadyCoverResult {
  const { films } = cover;
  const enclosure: LongwaveEnclosure = { coverAreaM2: 1, films, patches: [{ areaM2: 1, emissivity: GROUND_EMISSIVITY, covers: [] }] };
  const plane = planeIndex(enclosure);
  const areasM2 = longwaveExchangeAreasM2(enclosure);
  const count = films.length;
  const [ground, inside, outside, sky] = [count, count + 1, count + 2, count + 3];
  const nodeOfPlane = [ground, ...films.map((_, f) => f), sky];
  const radiators = nodeOfPlane.flatMap((a, n) => nodeOfPlane.slice(n + 1).map((b, k) => ({ a, b, exchangeAreaM2: areasM2[n * plane.count + n + 1 + k]! })));
  const network = createNetwork({
    nodes: films.map((_, f) => ({ name: `film ${f + 1}`, store: MASSLESS })),
    boundaries: ['ground', 'inside air', 'outside air', 'sky'],
    conductors: [
      steadyConductor(0, inside, cover.hInsideWPerM2K),
      ...(count === 2 ? [steadyConductor(0, 1, cover.hGapWPerM2K)] : []),
      steadyConductor(count - 1, outside, cover.hOutsideWPerM2K),
    ],
    radiators,
  });
  const tempsK = Float64Array.from([...films.map(() => cover.outsideTempC), cover.groundTempC, cover.insideTempC, cover.outsideTempC, cover.skyTempC].map(celsiusToKelvin));
  stepImplicit({ network, tempsK, stepS: 600, sources: emptySources(count), updateSources: () => undefined });
  const groundLossWPerM2 = nodeOfPlane.reduce((sum, node, m) => sum + areasM2[m]! * STEFAN_BOLTZMANN_W_PER_M2K4 * (tempsK[ground]! ** 4 - tempsK[node]! ** 4), 0);
  return { filmTempsK: films.map((_, f) => tempsK[f]!), groundLossWPerM2, convectionWPerM2: cover.hInsideWPerM2K * (tempsK[inside]! - tempsK[0]!) };
}
