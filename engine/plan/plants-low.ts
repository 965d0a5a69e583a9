import type { House } from '../greenhouse/house.js';
import type { ControlPlan, Controls } from '../night/controls.js';
import type { EveningState } from '../night/evening-state.js';
import type { Forcing } from '../night/forcing.js';
import type { NightSpan } from '../night/night-span.js';
import { runNight } from '../night/night-run.js';
import { NO_CHOICES, type NightChoices } from './action.js';
import { controlsOfChoices } from './controls-of-choices.js';

/** What a choice for the whole house is tried on: the evening's state and the middle weather. */
export interface TrialNight {
  readonly house: House;
  readonly night: NightSpan;
  readonly evening: EveningState;
  readonly standing: Controls;
  readonly central: Forcing;
  readonly nowS: number;
  /** Names of the beds whose plants count; without any, the air of the house does. */
  readonly plantedBeds: readonly string[];
}

/**
 * Low of the night where the plants are, mean over the planted beds, under some choices in the middle weather.
 * Units: K.
 * Valid: choices of the same house.
 * Outside: throws when a step does not settle.
 * Source: physics of engine/night.
 */
export function plantsLowK(trial: TrialNight, choices: Partial<NightChoices>): number {
  return lowUnderK(trial, controlsOfChoices(trial.house, trial.standing, { ...NO_CHOICES, ...choices }));
}

function lowUnderK(trial: TrialNight, controls: ControlPlan): number {
  const { evening, central, nowS, night } = trial;
  const run = runNight(evening, central, controls);
  const first = Math.max(0, Math.floor((Math.max(nowS, night.sunsetS) - central.startS) / central.stepS));
  const lows = run.places.flatMap(({ place, bed }, p) => ((trial.plantedBeds.length === 0 ? place === 'inside' : place === 'leaf' && trial.plantedBeds.includes(bed!)) ? [Math.min(...run.tempK[p]!.subarray(first))] : []));
  return lows.reduce((sum, low) => sum + low, 0) / lows.length;
}
