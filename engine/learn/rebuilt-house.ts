import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { ControlPlan } from '../night/controls.js';
import type { GroundOutside, WeatherHours } from '../night/weather.js';
import { SECONDS_PER_DAY } from '../units.js';
import { firstState, runPoint, type StoredState } from './house-points.js';
import type { LearnedHouse } from './learned-house.js';

/** A house as it is and as it might be, and the past that both are taken through. */
export interface Rebuilding {
  readonly standing: Greenhouse;
  readonly supposed: Greenhouse;
  readonly weather: WeatherHours;
  readonly ground: GroundOutside;
  /** What was covered, shut and lit in the past, in each of both. */
  readonly controls: { readonly standing: ControlPlan; readonly supposed: ControlPlan };
}

/** So long both are run beside each other: what water, stones and the upper soil remember. */
const PAST_S = 15 * SECONDS_PER_DAY;

/**
 * What was learned of a house, carried over to the same house otherwise built: soil, water and stones as if it had stood so for the
 * past fortnight, for a store that begins as warm as the noon air would give all night what it never took.
 * Units: SI.
 * Valid: weather from before where the learned run stands; a shorter past than a fortnight is taken as it is.
 * Outside: throws RangeError when the weather does not reach.
 * Source: difference of two runs from the same start at the most probable parameters, added to the learned state (first-order expansion).
 */
export function rebuiltHouse(learned: LearnedHouse, { standing, supposed, weather, ground, controls }: Rebuilding): LearnedHouse {
  const { z } = learned.calibration;
  const recent = hoursFrom(weather, learned.stateAtS - PAST_S);
  const after = (greenhouse: Greenhouse, past: ControlPlan): StoredState => runPoint({ greenhouse, weather: recent, controls: past, fromS: recent.timeS[0]!, toS: learned.stateAtS }, z, firstState(greenhouse, { weather: recent, ground })).state;
  const [before, otherwise] = [after(standing, controls.standing), after(supposed, controls.supposed)];
  const carried = (state: StoredState): StoredState => ({
    // A store that only one of both has is as that one's own past made it.
    tempsK: { ...state.tempsK, ...Object.fromEntries(Object.entries(otherwise.tempsK).map(([name, tempK]) => [name, name in before.tempsK && name in state.tempsK ? state.tempsK[name]! + (tempK - before.tempsK[name]!) : tempK])) },
    humidity: state.humidity.length === otherwise.humidity.length ? state.humidity : otherwise.humidity,
    waterKgPerM2: state.waterKgPerM2.length === otherwise.waterKgPerM2.length ? state.waterKgPerM2 : otherwise.waterKgPerM2,
  });
  return { ...learned, states: learned.states.map(carried) };
}

function hoursFrom(weather: WeatherHours, fromS: number): WeatherHours {
  const first = Math.max(0, weather.timeS.findIndex((timeS) => timeS >= fromS));
  return Object.fromEntries(Object.entries(weather).map(([name, column]) => [name, (column as readonly unknown[]).slice(first)])) as unknown as WeatherHours;
}
