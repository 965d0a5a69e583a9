import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { celsiusToKelvin, kelvinToCelsius, SECONDS_PER_HOUR } from '../../../engine/units.js';
import type { BoxCase } from './box-case.js';
import { boxModel } from './box-model.js';
import { boxWeatherAt } from './box-weather.js';
import { lightOfHour } from './sun-clock.js';
import { HOURS_PER_YEAR, type WeatherYear } from './weather-year.js';

/** Step of backward Euler; README.md says what a shorter one changes. */
export const BOX_STEP_S = 600;
/** The end of the year is run before its beginning, so that the start is forgotten. */
const WARM_UP_HOURS = 30 * 24;
const START_C = 15;

export interface BoxRun {
  /** Means of the air temperature over each hour of the year. */
  readonly hourlyMeanC: Float64Array;
  readonly stepS: number;
  /** Sunlight that passed the windows in the year. */
  readonly passedSunKWh: number;
}

/** Runs a free-floating box through a year. */
export function runBox(boxCase: BoxCase, year: WeatherYear, options: { stepS?: number; cellM?: number } = {}): BoxRun {
  const stepS = options.stepS ?? BOX_STEP_S;
  const steps = Math.round(SECONDS_PER_HOUR / stepS);
  const meanPressurePa = year.pressurePa.reduce((sum, value) => sum + value, 0) / HOURS_PER_YEAR;
  const model = boxModel(boxCase, meanPressurePa, options.cellM);
  const { network, air, firstBoundary } = model;
  const size = network.nodes.length;
  const tempsK = new Float64Array(size + network.boundaries.length).fill(celsiusToKelvin(START_C));
  if (boxCase.floor.underside.kind === 'ground') tempsK[firstBoundary + 3] = celsiusToKelvin(boxCase.floor.underside.tempC);
  const sources = emptySources(size);
  const hourlyMeanC = new Float64Array(HOURS_PER_YEAR);
  const powerW = new Float64Array(size);
  let passedSunWh = 0;
  for (let hour = -WARM_UP_HOURS; hour < HOURS_PER_YEAR; hour += 1) {
    const index = (hour + HOURS_PER_YEAR) % HOURS_PER_YEAR;
    const lights = lightOfHour(boxCase, year, index, steps);
    let sumK = 0;
    for (let k = 0; k < steps; k += 1) {
      const weather = boxWeatherAt(year, index + (k + 1) / steps);
      model.setHour(weather, index % 24);
      tempsK.set([weather.outsideAirTempK, weather.aboveRoofK, weather.beforeWallK], firstBoundary);
      powerW.set(model.gainsW);
      const passedW = lights ? model.sun.absorb(lights[k]!, powerW) : 0;
      if (hour >= 0) passedSunWh += passedW / steps;
      const beforeK = tempsK[air]!;
      stepImplicit({ network, tempsK, stepS, sources, updateSources: (_, out) => void out.powerW.set(powerW) });
      sumK += (beforeK + tempsK[air]!) / 2;
    }
    if (hour >= 0) hourlyMeanC[hour] = kelvinToCelsius(sumK / steps);
  }
  return { hourlyMeanC, stepS, passedSunKWh: passedSunWh / 1000 };
}
