import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import type { Controls } from '../../engine/night/controls.js';
import { forcingFor } from '../../engine/night/forcing.js';
import { houseRunner, runHouse } from '../../engine/night/house-run.js';
import { startState } from '../../engine/night/start-state.js';
import { CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, inventedWeather, plainControls, referenceHouse } from '../fixtures/houses.js';
import { timed, type Timing } from './timing.js';

const STEPS_A_NIGHT = 84;
const FROM_HOUR = -8;

export interface NightTiming extends Timing {
  readonly nodes: number;
  readonly stepUs: number;
  readonly iterationsAStep: number;
}

/** One night of 84 steps from the evening's state, for a house with some fields changed. */
export function timeNight(changes: Partial<GreenhouseFile>, atNight: Partial<Controls> = {}): NightTiming {
  const house = referenceHouse(changes);
  const runner = houseRunner(house);
  const weather = inventedWeather(house, CLEAR_COLD_NIGHT);
  const controls = plainControls(house, CLEAR_COLD_NIGHT, (timeS) => (timeS > hourOfLastNightS(CLEAR_COLD_NIGHT, FROM_HOUR) ? { coverOn: house.columns.map(({ rowCover }) => rowCover !== null), ...atNight } : {}));
  const eveningS = hourOfLastNightS(CLEAR_COLD_NIGHT, FROM_HOUR);
  const evening = runHouse(runner, startState(runner, weather, GROUND).state, forcingFor(house, weather, { fromS: weather.timeS[0]!, toS: eveningS }), controls);
  const forcing = forcingFor(house, weather, { fromS: eveningS, toS: eveningS + STEPS_A_NIGHT * 600 });
  let iterations = 0;
  runHouse(runner, evening, forcing, controls, (record) => (iterations += record.iterations));
  const timing = timed(() => void runHouse(runner, evening, forcing, controls), { warmUp: 30, measured: 60 });
  return { ...timing, nodes: runner.model.network.nodes.length, stepUs: (1000 * timing.medianMs) / STEPS_A_NIGHT, iterationsAStep: iterations / STEPS_A_NIGHT };
}
