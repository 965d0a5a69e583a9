import type { ControlPlan } from './controls.js';
import type { EveningState } from './evening-state.js';
import type { Forcing } from './forcing.js';
import { runHouse } from './house-run.js';
import { placesOf, placeTempK, type PlaceKey } from './places.js';

/** One night of one plan in one weather: the temperature of every place at the end of each step. */
export interface NightRun {
  readonly places: readonly PlaceKey[];
  readonly startS: number;
  readonly stepS: number;
  /** By place, then step. */
  readonly tempK: readonly Float64Array[];
  readonly heaterJ: number;
}

/**
 * Runs a plan from the evening's state through a forcing.
 * Units: K, J.
 * Valid: a forcing that begins at the evening's instant.
 * Outside: throws when a step does not settle.
 * Source: network of this project.
 */
export function runNight(evening: EveningState, forcing: Forcing, controls: ControlPlan): NightRun {
  const places = placesOf(evening.runner);
  const tempK = places.map(() => new Float64Array(forcing.outsideAirTempK.length));
  let heaterJ = 0;
  runHouse(evening.runner, evening.state, forcing, controls, (record) => {
    places.forEach((place, p) => (tempK[p]![record.stepIndex] = placeTempK(evening.runner, record, place)));
    heaterJ += record.heaterW * forcing.stepS;
  });
  return { places, startS: forcing.startS, stepS: forcing.stepS, tempK, heaterJ };
}

/** Index of a place in a run; -1 when the house does not have it. */
export const placeIndex = (places: readonly PlaceKey[], key: PlaceKey): number => places.findIndex((place) => place.place === key.place && place.bed === key.bed);
