import type { House } from '../greenhouse/house.js';
import { SECONDS_PER_HOUR } from '../units.js';
import type { ControlPlan } from './controls.js';
import { forcingFor, STEP_S } from './forcing.js';
import { houseRunner, runHouse, type HouseRunner, type HouseState } from './house-run.js';
import { startState, type GroundBasis } from './start-state.js';
import type { GroundOutside, WeatherHours } from './weather.js';

/** The house as the past fortnight has left it. */
export interface EveningState {
  readonly runner: HouseRunner;
  readonly state: HouseState;
  readonly atS: number;
  readonly basis: GroundBasis;
  /** Hours of past weather that were run. */
  readonly warmUpHours: number;
  /** Hourly air temperature at the plants of each floor column, oldest first. */
  readonly plantAirTempK: readonly (readonly number[])[];
}

/**
 * Runs the house through the past weather up to an instant.
 * Units: epoch seconds, K.
 * Valid: weather that begins before the instant and reaches it.
 * Outside: throws RangeError when the instant lies outside the weather.
 * Source: network of this project; 15 past days because sunny or dark days before move the dawn low by 1.5 K.
 */
export function eveningState(input: { house: House; weather: WeatherHours; ground: GroundOutside; nowS: number; pastControls: ControlPlan }): EveningState {
  const runner = houseRunner(input.house);
  const start = startState(runner, input.weather, input.ground);
  const fromS = input.weather.timeS[0]!;
  const atS = fromS + Math.floor((input.nowS - fromS) / STEP_S) * STEP_S;
  if (atS < fromS) throw new RangeError(`the weather begins at ${fromS}, after the instant asked for, ${input.nowS} (epoch s)`);
  const plantAirTempK: number[][] = input.house.columns.map(() => []);
  const state = runHouse(runner, start.state, forcingFor(input.house, input.weather, { fromS, toS: atS }), input.pastControls, (record) => {
    if (record.timeS % SECONDS_PER_HOUR !== 0) return;
    runner.model.columns.forEach((column, c) => plantAirTempK[c]!.push(record.tempsK[column.underCoverAir >= 0 ? column.underCoverAir : runner.model.air]!));
  });
  return { runner, state, atS, basis: start.basis, warmUpHours: (atS - fromS) / SECONDS_PER_HOUR, plantAirTempK };
}
