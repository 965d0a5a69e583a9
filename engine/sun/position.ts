import { assertInRange } from '../errors.js';
import { degreesToRadians, SECONDS_PER_DAY, SECONDS_PER_MINUTE } from '../units.js';

export interface SunPosition {
  /** Geometric altitude above the horizon, without refraction. */
  readonly altitudeRad: number;
  /** Clockwise from north. */
  readonly azimuthRad: number;
  /** Distance to the sun, astronomical units. */
  readonly distanceAu: number;
}

const UNIX_EPOCH_JULIAN_DAY = 2440587.5;
const J2000_JULIAN_DAY = 2451545;
const DAYS_PER_JULIAN_CENTURY = 36525;
const MINUTES_PER_DEGREE = 4;
const MINUTES_PER_DAY = 1440;

/**
 * Position of the sun.
 * Units: timeS in epoch seconds (UTC), latitude and longitude in degrees (north and east positive); result in radians.
 * Valid: years 1901 to 2099, latitude -90 to 90, longitude -180 to 180.
 * Outside: throws OutOfRangeError.
 * Source: Meeus1998 ch. 25 in the low-precision form published by NOAA's solar calculator (from memory). Accuracy about 0.01 degrees.
 */
export function sunPosition(timeS: number, place: { latitude: number; longitude: number }): SunPosition {
  assertInRange('timeS', timeS, { lowest: -2177452800, highest: 4102444799, unit: 's' });
  assertInRange('latitude', place.latitude, { lowest: -90, highest: 90, unit: 'degrees' });
  assertInRange('longitude', place.longitude, { lowest: -180, highest: 180, unit: 'degrees' });
  const { declinationRad, equationOfTimeMin, distanceAu } = sunCoordinates(timeS);
  const utcMinutes = (((timeS % SECONDS_PER_DAY) + SECONDS_PER_DAY) % SECONDS_PER_DAY) / SECONDS_PER_MINUTE;
  const solarMinutes = utcMinutes + equationOfTimeMin + MINUTES_PER_DEGREE * place.longitude;
  const hourAngle = degreesToRadians((solarMinutes % MINUTES_PER_DAY) / MINUTES_PER_DEGREE - 180);
  const latitude = degreesToRadians(place.latitude);
  const sinAltitude = Math.sin(latitude) * Math.sin(declinationRad) + Math.cos(latitude) * Math.cos(declinationRad) * Math.cos(hourAngle);
  const east = -Math.cos(declinationRad) * Math.sin(hourAngle);
  const north = Math.sin(declinationRad) * Math.cos(latitude) - Math.cos(declinationRad) * Math.sin(latitude) * Math.cos(hourAngle);
  const azimuthRad = Math.atan2(east, north);
  return {
    altitudeRad: Math.asin(Math.min(1, Math.max(-1, sinAltitude))),
    azimuthRad: azimuthRad < 0 ? azimuthRad + 2 * Math.PI : azimuthRad,
    distanceAu,
  };
}

/** Apparent declination, equation of time and distance; polynomials in Julian centuries since J2000 (Meeus1998 ch. 22, 25, 28). */
function sunCoordinates(timeS: number): { declinationRad: number; equationOfTimeMin: number; distanceAu: number } {
  const t = (timeS / SECONDS_PER_DAY + UNIX_EPOCH_JULIAN_DAY - J2000_JULIAN_DAY) / DAYS_PER_JULIAN_CENTURY;
  const meanLongitude = degreesToRadians((280.46646 + t * (36000.76983 + t * 0.0003032)) % 360); // 25.2
  const meanAnomaly = degreesToRadians(357.52911 + t * (35999.05029 - 0.0001537 * t)); // 25.3
  const eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t); // 25.4
  const equationOfCentre = degreesToRadians(
    Math.sin(meanAnomaly) * (1.914602 - t * (0.004817 + 0.000014 * t)) +
      Math.sin(2 * meanAnomaly) * (0.019993 - 0.000101 * t) +
      Math.sin(3 * meanAnomaly) * 0.000289,
  );
  const node = degreesToRadians(125.04 - 1934.136 * t);
  const apparentLongitude = meanLongitude + equationOfCentre - degreesToRadians(0.00569 + 0.00478 * Math.sin(node)); // 25.8
  const meanObliquityDeg = 23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 60) / 60; // 22.2
  const obliquity = degreesToRadians(meanObliquityDeg + 0.00256 * Math.cos(node));
  const y = Math.tan(obliquity / 2) ** 2;
  const equationOfTimeRad = // 28.3 (Smart)
    y * Math.sin(2 * meanLongitude) -
    2 * eccentricity * Math.sin(meanAnomaly) +
    4 * eccentricity * y * Math.sin(meanAnomaly) * Math.cos(2 * meanLongitude) -
    0.5 * y * y * Math.sin(4 * meanLongitude) -
    1.25 * eccentricity * eccentricity * Math.sin(2 * meanAnomaly);
  return {
    declinationRad: Math.asin(Math.sin(obliquity) * Math.sin(apparentLongitude)), // 25.7
    equationOfTimeMin: (MINUTES_PER_DEGREE * equationOfTimeRad * 180) / Math.PI,
    distanceAu: (1.000001018 * (1 - eccentricity ** 2)) / (1 + eccentricity * Math.cos(meanAnomaly + equationOfCentre)), // 25.5
  };
}
