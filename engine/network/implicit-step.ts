import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../constants.js';
import { heatOfStoreJ, slopeOfStoreJPerK, tempOfStoreK } from './enthalpy.js';
import type { Conductor, Network } from './network.js';
import { solveInPlace, type SparseSystem } from './sparse-system.js';

/** Heat put into each node from outside the network (sun, heater, condensing vapour), and how it changes with the node's own temperature. */
export interface Sources {
  readonly powerW: Float64Array;
  readonly slopeWPerK: Float64Array;
  /** Bands in which a source of a node switches, such as a thermostat's: no iteration may jump across one. */
  readonly bands: { readonly node: number; readonly lowK: number; readonly highK: number }[];
  /** How the heat of a node (row) falls as another (column) warms; the two must be coupled in the network already. Row-major as the system's matrix: objects here would cost more than the solution. */
  readonly crossFallWPerK: Float64Array;
}

export const emptySources = (size: number): Sources => ({ powerW: new Float64Array(size), slopeWPerK: new Float64Array(size), crossFallWPerK: new Float64Array(size * size), bands: [] });

export interface ImplicitStep {
  readonly network: Network;
  /** Temperatures of nodes, then boundaries. Nodes are overwritten; boundaries hold the values at the end of the step. */
  readonly tempsK: Float64Array;
  /** Temperatures of the nodes at the start of the step, where `tempsK` comes with a better guess of its end. */
  readonly startTempsK?: Float64Array;
  readonly stepS: number;
  /** Called before each iteration with the latest temperatures; fills `sources`. */
  readonly updateSources: (tempsK: Float64Array, sources: Sources) => void;
  readonly sources: Sources;
}

const CONVERGED_K = 1e-5;
const MOST_ITERATIONS = 80;
// Newton can leap to and fro over a kink (natural convection that turns round, vents that begin to open, a film that begins to dry):
// from here on each turn of the leading node halves the move, and each step on in the same direction lengthens it again, to a little less
// after each turn: else turn, step and step go round in a circle.
const DAMP_AFTER = 12;
const SHORTEN_BY = 0.5;
const LENGTHEN_BY = 1.5;
const LESS_AFTER_A_TURN = 0.9;
const LEAST_SHARE = 1 / 256;
/** A store that thaws may, with the heat of its ice, overshoot far beyond what its thawed body can take: no iterate leaps further than this. */
const LARGEST_LEAP_K = 25;

/**
 * One backward-Euler step of the network, iterated until temperatures, heat stores and the nonlinear fluxes agree.
 * Units: K, s, W.
 * Valid: any positive step; first order in the step, stable for every step.
 * Outside: returns the number of iterations used; throws when 80 do not converge.
 * Source: backward Euler with Newton iteration on sigma T^4; latent heat by updating heat first and temperature from it (Voller1990 idea).
 */
export function stepImplicit(step: ImplicitStep): number {
  const { network, tempsK, stepS, sources } = step;
  const size = network.nodes.length;
  const startTempsK = step.startTempsK ?? tempsK;
  const heatBeforeJ = network.nodes.map((node, i) => heatOfStoreJ(node.store, startTempsK[i]!));
  const steadyWPerK = steadyConductances(network, startTempsK);
  const lastChange = new Float64Array(size);
  let share = 1;
  let mostShare = 1;
  for (let iteration = 1; iteration <= MOST_ITERATIONS; iteration += 1) {
    sources.powerW.fill(0);
    sources.slopeWPerK.fill(0);
    sources.crossFallWPerK.fill(0);
    sources.bands.length = 0;
    step.updateSources(tempsK, sources);
    assemble(step, heatBeforeJ, steadyWPerK);
    const change = solveInPlace(network.system);
    if (iteration > DAMP_AFTER) {
      const turns = turnsRound(change, lastChange);
      if (turns) mostShare *= LESS_AFTER_A_TURN;
      share = turns ? Math.max(LEAST_SHARE, SHORTEN_BY * share) : Math.min(Math.max(LEAST_SHARE, mostShare), LENGTHEN_BY * share);
    }
    lastChange.set(change);
    let largest = 0;
    for (let i = 0; i < size; i += 1) {
      const before = tempsK[i]!;
      const after = stoppedInBand(sources, i, before, moved(network, i, { tempK: before, changeK: share * change[i]! }));
      tempsK[i] = after;
      largest = Math.max(largest, Math.abs(after - before));
    }
    // A shortened move that is small proves nothing: what counts is the whole move.
    if (largest < share * CONVERGED_K) return iteration;
    if (!Number.isFinite(largest)) break;
  }
  throw new Error(`The network of ${network.nodes.map((node) => node.name).join(', ')} did not settle within a step of ${stepS} s.`);
}

/** The node that moves most wants to go back to where it came from. */
function turnsRound(change: Float64Array, lastChange: Float64Array): boolean {
  let leader = 0;
  for (let i = 1; i < lastChange.length; i += 1) if (Math.abs(change[i]!) > Math.abs(change[leader]!)) leader = i;
  return change[leader]! * lastChange[leader]! < 0;
}

/** Newton's equations: stored heat and all fluxes linearised about the latest temperatures. */
function assemble(step: ImplicitStep, heatBeforeJ: readonly number[], steadyWPerK: Float64Array): void {
  const { network, tempsK, stepS, sources } = step;
  const { matrix, rightSide, size } = network.system;
  rightSide.fill(0);
  matrix.set(sources.crossFallWPerK);
  for (let i = 0; i < size; i += 1) {
    const { store } = network.nodes[i]!;
    matrix[i * size + i] = slopeOfStoreJPerK(store, tempsK[i]!) / stepS - sources.slopeWPerK[i]!;
    rightSide[i] = sources.powerW[i]! - (heatOfStoreJ(store, tempsK[i]!) - heatBeforeJ[i]!) / stepS;
  }
  for (let c = 0; c < network.conductors.length; c += 1) {
    const conductor = network.conductors[c]!;
    if (conductor.dependsOnTemps) addChanging(network, conductor, tempsK);
    else couple(network.system, conductor.a, conductor.b, steadyWPerK[c]! * (tempsK[conductor.b]! - tempsK[conductor.a]!), steadyWPerK[c]!, steadyWPerK[c]!);
  }
  for (const { a, b, exchangeAreaM2 } of network.radiators) {
    if (exchangeAreaM2 === 0) continue;
    const ta = tempsK[a]!;
    const tb = tempsK[b]!;
    // Products, not powers: this is the innermost line of the whole night.
    const cubeA = STEFAN_BOLTZMANN_W_PER_M2K4 * exchangeAreaM2 * ta * ta * ta;
    const cubeB = STEFAN_BOLTZMANN_W_PER_M2K4 * exchangeAreaM2 * tb * tb * tb;
    couple(network.system, a, b, cubeB * tb - cubeA * ta, 4 * cubeA, 4 * cubeB);
  }
}

const SLOPE_STEP_K = 1e-3;

/** Conductances that stay as they are within the step; zero where one changes with the temperatures. */
function steadyConductances({ conductors }: Network, tempsK: Float64Array): Float64Array {
  const steadyWPerK = new Float64Array(conductors.length);
  for (let c = 0; c < conductors.length; c += 1) {
    const { a, b, conductanceWPerK, dependsOnTemps } = conductors[c]!;
    if (!dependsOnTemps) steadyWPerK[c] = conductanceWPerK(tempsK[a]!, tempsK[b]!);
  }
  return steadyWPerK;
}

/** Flow through a conductor that changes with the temperatures (natural convection, vents), and its slopes by small differences. */
function addChanging({ system }: Network, { a, b, conductanceWPerK }: Conductor, tempsK: Float64Array): void {
  const tempAK = tempsK[a]!;
  const tempBK = tempsK[b]!;
  const flowToAW = conductanceWPerK(tempAK, tempBK) * (tempBK - tempAK);
  const warmerA = conductanceWPerK(tempAK + SLOPE_STEP_K, tempBK) * (tempBK - tempAK - SLOPE_STEP_K);
  const warmerB = conductanceWPerK(tempAK, tempBK + SLOPE_STEP_K) * (tempBK + SLOPE_STEP_K - tempAK);
  couple(system, a, b, flowToAW, (flowToAW - warmerA) / SLOPE_STEP_K, (warmerB - flowToAW) / SLOPE_STEP_K);
}

/** Adds a link; `slopeA` is how the flow to a falls with the temperature of a, `slopeB` how it rises with that of b. Numbers and no object: this runs for each link in each iteration. */
// eslint-disable-next-line max-params
function couple({ matrix, rightSide, size }: SparseSystem, a: number, b: number, flowToAW: number, slopeA: number, slopeB: number): void {
  if (a < size) {
    rightSide[a]! += flowToAW;
    matrix[a * size + a]! += slopeA;
    if (b < size) matrix[a * size + b]! -= slopeB;
  }
  if (b < size) {
    rightSide[b]! -= flowToAW;
    matrix[b * size + b]! += slopeB;
    if (a < size) matrix[b * size + a]! -= slopeA;
  }
}

/** An iterate that would jump across a switching band is stopped in the middle of it, where the slope is known. */
function stoppedInBand(sources: Sources, node: number, beforeK: number, afterK: number): number {
  for (const band of sources.bands) if (band.node === node && Math.min(beforeK, afterK) < band.lowK && Math.max(beforeK, afterK) > band.highK) return (band.lowK + band.highK) / 2;
  return afterK;
}

/** A store that freezes moves along its heat first: a large step cannot jump over the latent heat. */
function moved(network: Network, index: number, update: { tempK: number; changeK: number }): number {
  const { store } = network.nodes[index]!;
  const { tempK, changeK } = update;
  if (store.latentJ === 0) return tempK + changeK;
  const alongHeatK = tempOfStoreK(store, heatOfStoreJ(store, tempK) + slopeOfStoreJPerK(store, tempK) * changeK);
  return Math.min(tempK + LARGEST_LEAP_K, Math.max(tempK - LARGEST_LEAP_K, alongHeatK));
}
