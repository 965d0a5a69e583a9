import { summedError } from '../chance/summed-error.js';
import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import { toHouse } from '../greenhouse/to-house.js';
import type { ForecastError } from '../learn/forecast-error.js';
import { cloudWeightAt } from '../learn/parameters.js';
import { learnedEvening, parameterSdK } from '../learn/predict-night.js';
import type { LearnedHouse } from '../learn/learned-house.js';
import type { ControlPlan, Controls } from '../night/controls.js';
import { eveningState, type EveningState } from '../night/evening-state.js';
import type { NightSpan } from '../night/night-span.js';
import { forecastDoubt, weatherScenarios, type ForecastDoubt, type WeatherScenario } from '../night/scenarios.js';
import type { GroundOutside, WeatherHours } from '../night/weather.js';
import { CLOUD_LONGWAVE_WEIGHT } from '../sky/downwelling-longwave.js';
import { usualControls } from './controls-of-choices.js';
import { residualFor, type ResidualError } from './outlook.js';

/** What an evening's beginning is worked out from. */
export interface BeginningInput {
  readonly greenhouse: Greenhouse;
  readonly weather: WeatherHours;
  readonly ground: GroundOutside;
  readonly nowS: number;
  readonly weatherAgeS: number;
  readonly pastControls?: ControlPlan;
  readonly learned?: LearnedHouse;
}

/** House, state and doubt that an evening begins with. */
export interface EveningBeginning {
  readonly house: House;
  readonly evening: EveningState;
  /** As it will be at the house. */
  readonly weather: WeatherHours;
  readonly doubt: ForecastDoubt;
  readonly scenarios: readonly WeatherScenario[];
  readonly residual: ResidualError;
  /** What the forecasts of this place were worth; null before there is anything to learn from. */
  readonly forecastError: ForecastError | null;
  readonly cloudWeight: number;
}

/**
 * An evening as this house's readings taught it, where the run of what was learned meets the weather at hand; as the priors have it otherwise.
 * Units: SI.
 * Valid: weather from before now.
 * Outside: throws RangeError when the weather does not reach.
 * Source: learnedEvening, or eveningState with the priors.
 */
export function eveningBeginning(input: BeginningInput, night: NightSpan): EveningBeginning {
  const { greenhouse, weather, nowS, learned } = input;
  const described = toHouse(greenhouse);
  const pastControls = input.pastControls ?? ((): Controls => usualControls(greenhouse, described));
  if (learned && learned.stateAtS >= weather.timeS[0]! && learned.stateAtS <= nowS) {
    const { residual } = learned.calibration;
    const known = learnedEvening({ ...input, pastControls }, learned);
    const sdK = parameterSdK({ ...input, controls: pastControls }, learned)({ place: 'inside' });
    return { ...known, house: known.evening.runner.model.house, residual: summedError(residual, sdK), forecastError: learned.forecastError, cloudWeight: cloudWeightAt(learned.calibration.z) };
  }
  const evening = eveningState({ house: described, weather, ground: input.ground, nowS, pastControls });
  const doubt = forecastDoubt(weather, night, input);
  return { house: described, evening, weather, doubt, scenarios: weatherScenarios(doubt, nowS), residual: residualFor(evening.warmUpHours), forecastError: null, cloudWeight: CLOUD_LONGWAVE_WEIGHT };
}
