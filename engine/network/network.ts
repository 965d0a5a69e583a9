import type { HeatStore } from './enthalpy.js';
import { sparseSystem, type SparseSystem } from './sparse-system.js';

/** A body with one temperature that the network solves for. */
export interface NetworkNode {
  readonly name: string;
  readonly store: HeatStore;
}

/**
 * Heat flow between two bodies by contact or convection: G (Tb - Ta). The law may depend on both temperatures, as natural
 * convection does; it must be continuous.
 */
export interface Conductor {
  readonly a: number;
  readonly b: number;
  readonly conductanceWPerK: (tempAK: number, tempBK: number) => number;
  /** The conductance changes with the temperatures: its slope is then part of the linearisation. */
  readonly dependsOnTemps: boolean;
}

/** Longwave exchange between two bodies: area x sigma (Tb^4 - Ta^4). Areas are set anew when optical properties change. */
export interface Radiator {
  readonly a: number;
  readonly b: number;
  exchangeAreaM2: number;
}

/**
 * Bodies and what couples them. Indices below nodes.length are solved for; those from nodes.length on are boundaries whose
 * temperatures are given (outside air, surroundings, deep ground). Knows nothing of growing.
 */
export interface Network {
  readonly nodes: readonly NetworkNode[];
  readonly boundaries: readonly string[];
  readonly conductors: readonly Conductor[];
  readonly radiators: readonly Radiator[];
  readonly system: SparseSystem;
}

export function createNetwork(parts: Omit<Network, 'system'>): Network {
  const size = parts.nodes.length;
  const inside = [...parts.conductors, ...parts.radiators].filter(({ a, b }) => a < size && b < size);
  return { ...parts, system: sparseSystem(size, inside.map(({ a, b }) => [a, b] as const)) };
}

/** A conductor that does not depend on temperature. */
export function steadyConductor(a: number, b: number, conductanceWPerK: number): Conductor {
  return { a, b, conductanceWPerK: () => conductanceWPerK, dependsOnTemps: false };
}
