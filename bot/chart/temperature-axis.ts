import { scaleLinear } from 'd3-scale';
import { celsiusToFahrenheit, fahrenheitToCelsius } from '../../engine/index.js';
import type { TempUnits } from '../text/temperature.js';

/** Temperature up the picture, with ticks at round numbers of the grower's own unit. */
export interface TemperatureAxis {
  readonly lowestC: number;
  readonly highestC: number;
  yOf(tempC: number): number;
  readonly ticks: readonly { readonly tempC: number; readonly y: number; readonly written: string }[];
}

const TICKS = 6;

export function temperatureAxis(range: { readonly lowestC: number; readonly highestC: number; readonly units: TempUnits }, upright: { readonly topY: number; readonly bottomY: number }): TemperatureAxis {
  const { lowestC, highestC, units } = range;
  const [toUnit, toCelsius] = units === 'F' ? [celsiusToFahrenheit, fahrenheitToCelsius] : [(tempC: number): number => tempC, (tempC: number): number => tempC];
  const scale = scaleLinear().domain([toUnit(lowestC), toUnit(highestC)]).range([upright.bottomY, upright.topY]);
  const yOf = (tempC: number): number => scale(toUnit(tempC));
  // Fractions of a degree would promise more than a forecast holds.
  const ticks = scale.ticks(TICKS).filter(Number.isInteger).map((written) => ({ tempC: toCelsius(written), y: scale(written), written: String(written + 0) }));
  return { lowestC, highestC, yOf, ticks };
}
