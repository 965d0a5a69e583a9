import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { Mixture } from '../chance/mixture.js';
import { summedError } from '../chance/summed-error.js';
import type { ControlPlan } from '../night/controls.js';
import type { EveningState } from '../night/evening-state.js';
import { forcingsFor, STEP_S } from '../night/forcing.js';
import { runNight, type NightRun } from '../night/night-run.js';
import { forecastDoubt, weatherScenarios, type ForecastDoubt, type WeatherScenario } from '../night/scenarios.js';
import { nightSpan, type NightSpan } from '../night/night-span.js';
import type { PlaceKey } from '../night/places.js';
import type { WeatherHours } from '../night/weather.js';
import { SECONDS_PER_HOUR } from '../units.js';
import { built, POINTS, revivedState, runPoint, seriesValueK, slopesOf, stateBetween } from './house-points.js';
import type { LearnedHouse } from './learned-house.js';
import { cloudWeightAt, weatherAt } from './parameters.js';

const MORNING_IN_LOWS_S = 2 * SECONDS_PER_HOUR;
/** Outside is read by a thermometer and not by the house: soil and films bring no error there (project estimate). */
const OUTSIDE_SCALE_K = 0.4;

/** An evening of a learned house: its state now, and the weather as it will be at the house. */
export interface LearnedEvening {
  readonly evening: EveningState;
  readonly weather: WeatherHours;
  readonly doubt: ForecastDoubt;
  readonly scenarios: readonly WeatherScenario[];
  readonly night: NightSpan;
}

/** The learned house in the evening: goes on from the continuous run, at the most probable parameters. Units: SI. Valid: weather from where the run stands to the coming sunrise. Outside: throws RangeError. Source: stateBetween, forecastError. */
export function learnedEvening(input: { greenhouse: Greenhouse; weather: WeatherHours; nowS: number; weatherAgeS: number; pastControls: ControlPlan }, learned: LearnedHouse): LearnedEvening {
  const { z } = learned.calibration;
  const { greenhouse, nowS } = input;
  const atS = learned.stateAtS + Math.floor((nowS - learned.stateAtS) / STEP_S) * STEP_S;
  const run = runPoint({ greenhouse, weather: input.weather, controls: input.pastControls, fromS: learned.stateAtS, toS: atS }, z, stateBetween(learned.states, z));
  const { runner } = built(greenhouse, z);
  const plantAirTempK = runner.model.columns.map((_, c) => [...(learned.plantAirTempK[c] ?? []), ...(run.plantAirTempK[c] ?? [])]);
  const night = nightSpan(nowS, greenhouse.place);
  const weather = weatherAt(input.weather, z, runner.model.house.windShare);
  const error = learned.forecastError;
  const doubt = forecastDoubt(input.weather, night, { nowS, weatherAgeS: input.weatherAgeS }, error);
  const scenarios = weatherScenarios(doubt, nowS, cloudWeightAt(z));
  return { evening: { runner, state: revivedState(runner, run.state), atS, basis: 'soil-layers', warmUpHours: learned.warmUpHours, plantAirTempK }, weather, doubt, scenarios, night };
}

/** Standard deviation of a place's low that comes from what is not known of the house. Units: K. Valid: a night that the weather covers. Outside: throws RangeError. Source: J S J' with the covariance of the last calibration. */
export function parameterSdK(input: { greenhouse: Greenhouse; weather: WeatherHours; nowS: number; controls: ControlPlan }, learned: LearnedHouse): (key: PlaceKey) => number {
  const night = nightSpan(input.nowS, input.greenhouse.place);
  const toS = endOfNightS(learned.stateAtS, night, input.weather);
  const points = POINTS.map((z, p) => runPoint({ greenhouse: input.greenhouse, weather: input.weather, controls: input.controls, fromS: learned.stateAtS, toS }, z, learned.states[p]!));
  const { covariance } = learned.calibration;
  return (key) => {
    const at = points[0]!.places.findIndex(({ place, bed }) => (key.place === 'leaf' ? place === 'inside' : place === key.place && bed === key.bed));
    const { slopes } = slopesOf(points.map((series) => seriesValueK(series, at, { fromS: Math.max(input.nowS, night.sunsetS), toS, statistic: 'low' })));
    return Math.sqrt(Math.max(0, slopes.reduce((sum, a, k) => sum + a * slopes.reduce((inner, b, j) => inner + covariance[k]![j]! * b, 0), 0)));
  };
}

const endOfNightS = (fromS: number, night: NightSpan, weather: WeatherHours): number => fromS + Math.floor((Math.min(night.sunriseS + MORNING_IN_LOWS_S, weather.timeS.at(-1)!) - fromS) / STEP_S) * STEP_S;

export interface PlaceLow {
  readonly key: PlaceKey;
  readonly low: Mixture;
}

/** Lows of every place tonight under given controls, as distributions. Units: K. Valid: weather from where the run stands to the coming sunrise. Outside: throws RangeError. Source: scenarios through the physics, dressed with the residual and the doubt about the house. */
export function predictNight(input: { greenhouse: Greenhouse; weather: WeatherHours; nowS: number; weatherAgeS: number; controls: ControlPlan }, learned: LearnedHouse): readonly PlaceLow[] {
  const { evening, weather, scenarios, night } = learnedEvening({ ...input, pastControls: input.controls }, learned);
  const toS = endOfNightS(evening.atS, night, weather);
  const runs = forcingsFor(evening.runner.model.house, weather, { fromS: evening.atS, toS }, scenarios.map(({ departure }) => departure)).map((forcing) => runNight(evening, forcing, input.controls));
  const sdK = parameterSdK(input, learned);
  const first = Math.max(0, Math.floor((Math.max(input.nowS, night.sunsetS) - evening.atS) / STEP_S));
  const { residual } = learned.calibration;
  const low = (run: NightRun, p: number): number => Math.min(...run.tempK[p]!.subarray(first));
  return runs[0]!.places.map((key, p) => ({
    key,
    low: { valuesK: runs.map((run) => low(run, p)), weights: scenarios.map(({ weight }) => weight), ...summedError(key.place === 'outside' ? { ...residual, scaleK: OUTSIDE_SCALE_K } : residual, sdK(key)) },
  }));
}

