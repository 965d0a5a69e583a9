import { assertInRange } from '../errors.js';

/**
 * Cloud over dry air is high, thin or broken, and at night has often gone by: it closes less of the gap to a black sky. Least squares on
 * Col de Porte by night and by day (Morin2012) and on an overcast day in Oklahoma (ARM-SGP), each set counted alike, gave 0.56
 * (0.89, 0.47 and 0.54 alone). Nights of SURFRAD-Bondville, which had no part in it, come out better too.
 */
const HUMIDITY_EXPONENT = 0.56;

/**
 * Share of its full effect on longwave that cloud has over air of a given humidity at screen height: 1 over saturated air.
 * Units: relative humidity over liquid water 0-1; result 0-1.
 * Valid: 0 to 1; fitted between 0.3 and 1.
 * Outside: throws OutOfRangeError.
 * Source: fitted by this project to measured longwave (Morin2012, ARM-SGP), tested on SURFRAD-Bondville; cloud there was known from sunlight, not from a forecast.
 */
export function cloudReach(relativeHumidityFraction: number): number {
  assertInRange('relativeHumidityFraction', relativeHumidityFraction, { lowest: 0, highest: 1, unit: '' });
  return relativeHumidityFraction ** HUMIDITY_EXPONENT;
}
