/**
 * Every value of the second service that is read: its unit as the service spells it, and the values that can be true.
 * A value outside the range by no more than the slack is rounding and is set to the limit; farther out it counts as missing.
 */
export interface MetVariable {
  readonly unit: string;
  readonly lowest: number;
  readonly highest: number;
  readonly slack: number;
}

const inCelsius = (lowest: number, highest: number): MetVariable => ({ unit: 'celsius', lowest, highest, slack: 0 });
const ROUNDING = 0.1;

/** Values at the instant of a step. */
export const INSTANT_VARIABLES = {
  air_temperature: inCelsius(-60, 55),
  air_temperature_percentile_10: inCelsius(-65, 55),
  air_temperature_percentile_90: inCelsius(-60, 60),
  dew_point_temperature: inCelsius(-70, 35),
  // A dew point needs some humidity, so the least is 1 %.
  relative_humidity: { unit: '%', lowest: 1, highest: 100, slack: 1 },
  wind_speed: { unit: 'm/s', lowest: 0, highest: 60, slack: ROUNDING },
  cloud_area_fraction: { unit: '%', lowest: 0, highest: 100, slack: 1 },
  air_pressure_at_sea_level: { unit: 'hPa', lowest: 850, highest: 1090, slack: 0 },
} as const satisfies Record<string, MetVariable>;

/** Values of the period that begins with a step. */
export const PERIOD_VARIABLES = {
  precipitation_amount: { unit: 'mm', lowest: 0, highest: 500, slack: ROUNDING },
  air_temperature_min: inCelsius(-60, 55),
  air_temperature_max: inCelsius(-60, 55),
} as const satisfies Record<string, MetVariable>;

export type InstantName = keyof typeof INSTANT_VARIABLES;
export type PeriodName = keyof typeof PERIOD_VARIABLES;

/** The value if it can be true, the limit if it misses it by rounding, null otherwise. */
export function plausibleMet({ lowest, highest, slack }: MetVariable, value: unknown): number | null {
  if (typeof value !== 'number' || !(value >= lowest - slack && value <= highest + slack)) return null;
  return Math.min(highest, Math.max(lowest, value));
}
