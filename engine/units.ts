/**
 * Conversions between the units that growers and services print and the SI units that the engine works in.
 * The only place where 273.15, 5/9 and 3.6 may stand. Exact by definition (BIPM2019, NIST-SP811) unless said otherwise.
 */

/** 0 degrees Celsius in kelvin (exact, BIPM2019). */
export const ZERO_CELSIUS_K = 273.15;

const KELVIN_PER_FAHRENHEIT_DEGREE = 5 / 9;
const ZERO_CELSIUS_F = 32;

export const SECONDS_PER_MINUTE = 60;
export const SECONDS_PER_HOUR = 3600;
export const HOURS_PER_DAY = 24;
export const SECONDS_PER_DAY = HOURS_PER_DAY * SECONDS_PER_HOUR;

/** Metres in one foot (exact, NIST-SP811). */
export const METRES_PER_FOOT = 0.3048;
/** Metres in one inch (exact, NIST-SP811). */
export const METRES_PER_INCH = 0.0254;
/** Litres in one US gallon (exact, NIST-SP811: 231 cubic inches). */
export const LITRES_PER_US_GALLON = 3.785411784;
/** Watts in one Btu per hour (NIST-SP811, international table Btu). */
export const WATTS_PER_BTU_PER_HOUR = 1055.05585262 / SECONDS_PER_HOUR;
/** Joules in one kilowatt-hour (exact). */
export const JOULES_PER_KWH = 3_600_000;
/** Kilograms per square metre in one ounce per square yard (NIST-SP811). */
export const KG_PER_M2_PER_OUNCE_PER_YARD2 = 0.0339057475;

/** Units: degrees C in, K out. Valid: any number. Outside: not applicable. Source: BIPM2019, definition of the degree Celsius. */
export const celsiusToKelvin = (tempC: number): number => tempC + ZERO_CELSIUS_K;
/** Units: K in, degrees C out. Valid: any number. Outside: not applicable. Source: BIPM2019, definition of the degree Celsius. */
export const kelvinToCelsius = (tempK: number): number => tempK - ZERO_CELSIUS_K;
/** Units: degrees F in, degrees C out. Valid: any number. Outside: not applicable. Source: NIST-SP811, exact. */
export const fahrenheitToCelsius = (tempF: number): number => (tempF - ZERO_CELSIUS_F) * KELVIN_PER_FAHRENHEIT_DEGREE;
/** Units: degrees C in, degrees F out. Valid: any number. Outside: not applicable. Source: NIST-SP811, exact. */
export const celsiusToFahrenheit = (tempC: number): number => tempC / KELVIN_PER_FAHRENHEIT_DEGREE + ZERO_CELSIUS_F;
/** A difference of temperatures, without offset. Units: K in, Fahrenheit degrees out. Valid: any number. Outside: not applicable. Source: NIST-SP811, exact. */
export const kelvinToFahrenheitDegrees = (differenceK: number): number => differenceK / KELVIN_PER_FAHRENHEIT_DEGREE;
/** Units: degrees of arc in, radians out. Valid: any number. Outside: not applicable. Source: definition (BIPM2019). */
export const degreesToRadians = (degrees: number): number => (degrees * Math.PI) / 180;
/** Units: radians in, degrees of arc out. Valid: any number. Outside: not applicable. Source: definition (BIPM2019). */
export const radiansToDegrees = (radians: number): number => (radians * 180) / Math.PI;
