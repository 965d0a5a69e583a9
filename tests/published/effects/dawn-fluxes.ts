import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import type { HouseModel } from '../../../engine/night/house-model.js';
import type { HouseRunner, StepRecord } from '../../../engine/night/house-run.js';

/** Heat flows of a house, W for each m2 of its floor (the sky: of its cover), positive in the direction of the name. */
export interface DawnFluxes {
  readonly soilUp: number;
  readonly soilToAir: number;
  readonly soilLongwave: number;
  readonly soilEvaporation: number;
  readonly airToFilm: number;
  readonly leakage: number;
  readonly coverToSky: number;
  readonly outsideAirToCover: number;
  readonly frostOutside: number;
  readonly drums: number;
  readonly tubes: number;
  readonly heapToAir: number;
  readonly heapToSoil: number;
}

/** Heat from a to b through all that couples them by contact or convection, W. */
function conductedW({ network }: HouseModel, tempsK: Float64Array, a: number, b: number): number {
  return network.conductors.reduce((sum, { a: one, b: other, conductanceWPerK }) => {
    if (!((one === a && other === b) || (one === b && other === a))) return sum;
    return sum + conductanceWPerK(tempsK[one]!, tempsK[other]!) * (tempsK[a]! - tempsK[b]!);
  }, 0);
}

/** Longwave that a plane takes up less what it gives off, W. */
function longwaveW({ model }: HouseRunner, record: StepRecord, plane: number): number {
  const { count } = model.plane;
  const emitted = (m: number): number => STEFAN_BOLTZMANN_W_PER_M2K4 * record.tempsK[model.planeNodes[m]!]! ** 4;
  let gainW = 0;
  for (let m = 0; m < count; m += 1) gainW += record.exchange.areasM2[plane * count + m]! * (emitted(m) - emitted(plane));
  return gainW;
}

/** Flows at the end of a step; only inside the call of the observer, for conductances read the conditions of the step. */
export function fluxesOf(runner: HouseRunner, record: StepRecord): DawnFluxes {
  const { model } = runner;
  const { tempsK } = record;
  const { floorAreaM2, coverAreaM2 } = model.house.geometry;
  const flow = (a: number, b: number): number => conductedW(model, tempsK, a, b) / floorAreaM2;
  const overColumns = (value: (c: number) => number): number => model.columns.reduce((sum, _, c) => sum + value(c), 0);
  const plantAir = (c: number): number => (model.columns[c]!.underCoverAir >= 0 ? model.columns[c]!.underCoverAir : model.air);
  const outerFilm = model.films.at(-1)!;
  const all = model.network.nodes.map((_, n) => n);
  const given = (node: number): number => all.reduce((sum, other) => (other === node ? sum : sum + flow(node, other)), 0);
  return {
    soilUp: overColumns((c) => flow(model.columns[c]!.surface + 1, model.columns[c]!.surface)),
    soilToAir: overColumns((c) => flow(model.columns[c]!.surface, plantAir(c))),
    soilLongwave: -overColumns((c) => longwaveW(runner, record, model.plane.floor(c))) / floorAreaM2,
    soilEvaporation: -overColumns((c) => record.latentW[model.columns[c]!.surface]!) / floorAreaM2,
    airToFilm: flow(model.roofAir, model.films[0]!),
    leakage: flow(model.roofAir, model.outside),
    coverToSky: longwaveW(runner, record, model.plane.surroundings) / coverAreaM2,
    outsideAirToCover: flow(model.outside, outerFilm),
    frostOutside: (model.films.length > 1 ? record.latentW[outerFilm]! : 0) / floorAreaM2,
    drums: model.drums.reduce((sum, node) => sum + given(node), 0),
    tubes: model.tubes ? flow(model.tubes.rings[0]!, model.air) : 0,
    heapToAir: model.heap === null ? 0 : flow(model.heap, model.air),
    heapToSoil: model.heap === null ? 0 : given(model.heap) - flow(model.heap, model.air),
  };
}

export function meanFluxes(all: readonly DawnFluxes[]): DawnFluxes {
  const names = Object.keys(all[0]!) as (keyof DawnFluxes)[];
  return Object.fromEntries(names.map((name) => [name, all.reduce((sum, fluxes) => sum + fluxes[name], 0) / all.length])) as unknown as DawnFluxes;
}
