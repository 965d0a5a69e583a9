/**
 * Every hourly column that is asked for or read: its unit as the service spells it, and the values that can be true.
 * A value outside the range by no more than the slack is rounding and is set to the limit; farther out it counts as missing.
 */
export interface WireVariable {
  readonly unit: string;
  readonly lowest: number;
  readonly highest: number;
  readonly slack: number;
}

const inCelsius = (lowest: number, highest: number): WireVariable => ({ unit: '°C', lowest, highest, slack: 0 });
// A dew point needs some humidity, so the least is 1 %.
const HUMIDITY: WireVariable = { unit: '%', lowest: 1, highest: 100, slack: 20 };
const CLOUD: WireVariable = { unit: '%', lowest: 0, highest: 100, slack: 20 };
// The service is known to print -0.2 W/m² at night.
const SUNLIGHT: WireVariable = { unit: 'W/m²', lowest: 0, highest: 1400, slack: 5 };

export const WIRE_VARIABLES = {
  temperature_2m: inCelsius(-60, 55),
  dew_point_2m: inCelsius(-70, 35),
  relative_humidity_2m: HUMIDITY,
  wind_speed_10m: { unit: 'm/s', lowest: 0, highest: 60, slack: 0 },
  wind_gusts_10m: { unit: 'm/s', lowest: 0, highest: 90, slack: 0 },
  cloud_cover: CLOUD,
  cloud_cover_low: CLOUD,
  cloud_cover_mid: CLOUD,
  cloud_cover_high: CLOUD,
  shortwave_radiation: SUNLIGHT,
  direct_radiation: SUNLIGHT,
  diffuse_radiation: SUNLIGHT,
  surface_pressure: { unit: 'hPa', lowest: 450, highest: 1080, slack: 0 },
  precipitation: { unit: 'mm', lowest: 0, highest: 300, slack: 0.1 },
  snowfall: { unit: 'cm', lowest: 0, highest: 20, slack: 0.1 },
  soil_temperature_18cm: inCelsius(-60, 70),
  soil_temperature_54cm: inCelsius(-60, 70),
  temperature_2m_spread: inCelsius(0, 20),
} as const satisfies Record<string, WireVariable>;

export type WireVariableName = keyof typeof WIRE_VARIABLES;

/** The value if it can be true, the limit if it misses it by rounding, null otherwise. */
export function plausible(name: WireVariableName, value: number | null): number | null {
  const { lowest, highest, slack }: WireVariable = WIRE_VARIABLES[name];
  if (value === null || !Number.isFinite(value) || value < lowest - slack || value > highest + slack) return null;
  return Math.min(highest, Math.max(lowest, value));
}
