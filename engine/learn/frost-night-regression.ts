/** A radiation-frost night of one site: two hours after sunset, and its low. */
export interface FrostNight {
  readonly eveningAirTempK: number;
  readonly eveningDewPointK: number;
  readonly lowK: number;
}

/** Line of a site: low = intercept + perAirTemp x air + perDewPoint x dew point, both two hours after sunset, in K. */
export interface FrostNightLine {
  readonly interceptK: number;
  readonly perAirTemp: number;
  readonly perDewPoint: number;
}

const LEAST_NIGHTS = 3;

/**
 * Fits the evening rule of a site in two steps: the low on the air temperature, then what is left on the dew point.
 * A bound for the plausible, not a forecast: its coefficients belong to the site that they were fitted on.
 * Units: K; dimensionless slopes.
 * Valid: three or more nights without cloud, fog or wind above 2 m/s, with evening temperatures that differ.
 * Outside: throws RangeError.
 * Source: Snyder2005 ch. 5, as documented with an implementation of it.
 */
export function fitFrostNights(nights: readonly FrostNight[]): FrostNightLine {
  if (nights.length < LEAST_NIGHTS) throw new RangeError(`${nights.length} nights: expected at least ${LEAST_NIGHTS}`);
  const onAir = line(nights.map((night) => [night.eveningAirTempK, night.lowK]));
  const onDewPoint = line(nights.map((night) => [night.eveningDewPointK, night.lowK - onAir.intercept - onAir.slope * night.eveningAirTempK]));
  return { interceptK: onAir.intercept + onDewPoint.intercept, perAirTemp: onAir.slope, perDewPoint: onDewPoint.slope };
}

/** The low that the line of a site leads to. Units: K. Valid: radiation-frost nights of that site. Outside: not checked. Source: Snyder2005 ch. 5. */
export const frostNightLowK = (site: FrostNightLine, evening: { eveningAirTempK: number; eveningDewPointK: number }): number =>
  site.interceptK + site.perAirTemp * evening.eveningAirTempK + site.perDewPoint * evening.eveningDewPointK;

/** Ordinary least squares of one variable. */
function line(points: readonly (readonly [x: number, y: number])[]): { slope: number; intercept: number } {
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanX, meanY] = [mean(points.map(([x]) => x)), mean(points.map(([, y]) => y))];
  const varianceX = mean(points.map(([x]) => (x - meanX) ** 2));
  if (varianceX === 0) throw new RangeError('all evenings alike: expected temperatures that differ');
  const slope = mean(points.map(([x, y]) => (x - meanX) * (y - meanY))) / varianceX;
  return { slope, intercept: meanY - slope * meanX };
}
