import { SECONDS_PER_HOUR, nextSunriseS } from '../../../engine/index.js';
import type { SunPlace } from '../sunlight.js';
import type { MetStep } from './wire.js';

export const COARSE_HOURS = 6;

// Local solar hours. Clear days are warmest two to three hours after noon (project estimate).
const WARMEST_SOLAR_HOUR = 14;
const HOURS_PER_TURN = 24;
const DEGREES_PER_HOUR = 15;
const MIDDLE_HOUR = COARSE_HOURS / 2;

interface Knot {
  readonly hour: number;
  readonly tempC: number;
}

/**
 * Temperatures (degrees C) at the five full hours between two steps that lie six hours apart.
 * Straight lines through both ends and, where the service says that the air gets colder or warmer in between than at either end,
 * through that low or high: a line from end to end would lose the low of the night. When it comes is not told:
 * the low is put at sunrise, the high at two in the afternoon by the sun, each in the middle where that falls outside.
 */
export function hoursBetween(from: MetStep, to: MetStep, place: SunPlace): readonly (number | null)[] {
  const inside = Array.from({ length: COARSE_HOURS - 1 }, (_, k) => k + 1);
  const startC = from.instant.air_temperature;
  const endC = to.instant.air_temperature;
  if (startC === null || endC === null) return inside.map(() => null);
  const { air_temperature_min: lowC, air_temperature_max: highC } = from.nextSixHours;
  const knots: Knot[] = [{ hour: 0, tempC: startC }, { hour: COARSE_HOURS, tempC: endC }];
  const lowHour = sunriseHour(from.timeS, place);
  if (lowC !== null && lowC < Math.min(startC, endC)) knots.push({ hour: lowHour, tempC: lowC });
  if (highC !== null && highC > Math.max(startC, endC)) {
    const highHour = warmestHour(from.timeS, place);
    const taken = knots.some(({ hour }) => hour === highHour);
    knots.push({ hour: taken ? highHour + (highHour < MIDDLE_HOUR ? 1 : -1) : highHour, tempC: highC });
  }
  return inside.map((hour) => along(knots, hour));
}

function along(knots: readonly Knot[], hour: number): number {
  const before = knots.filter((knot) => knot.hour <= hour).reduce((a, b) => (b.hour > a.hour ? b : a));
  const after = knots.filter((knot) => knot.hour >= hour).reduce((a, b) => (b.hour < a.hour ? b : a));
  if (after.hour === before.hour) return before.tempC;
  return before.tempC + ((after.tempC - before.tempC) * (hour - before.hour)) / (after.hour - before.hour);
}

/** An hour at either end moves to the nearest one inside: the ends have temperatures of their own. */
const insideOrMiddle = (hour: number): number => (hour >= 0 && hour <= COARSE_HOURS ? Math.min(COARSE_HOURS - 1, Math.max(1, hour)) : MIDDLE_HOUR);

function sunriseHour(startS: number, place: SunPlace): number {
  const sunriseS = nextSunriseS(startS, place);
  return insideOrMiddle(sunriseS === null ? Number.NaN : Math.round((sunriseS - startS) / SECONDS_PER_HOUR));
}

function warmestHour(startS: number, place: SunPlace): number {
  const solarHour = startS / SECONDS_PER_HOUR + place.longitude / DEGREES_PER_HOUR;
  const wait = (((WARMEST_SOLAR_HOUR - solarHour) % HOURS_PER_TURN) + HOURS_PER_TURN) % HOURS_PER_TURN;
  return insideOrMiddle(Math.round(wait));
}
