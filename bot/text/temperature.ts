import { celsiusToFahrenheit, kelvinToFahrenheitDegrees } from '../../engine/index.js';

export type TempUnits = 'C' | 'F';

/** Numbers as growers read them: half degrees C or whole degrees F would hide the ranges, so one decimal C and whole F. */
export const degrees = (tempC: number, units: TempUnits): string => (units === 'F' ? String(Math.round(celsiusToFahrenheit(tempC)) + 0) : (Math.round(tempC * 10) / 10 + 0).toFixed(1).replace(/\.0$/u, ''));

export const temperature = (tempC: number, units: TempUnits): string => `${degrees(tempC, units)}${units}`;

export const temperatureDifference = (differenceK: number, units: TempUnits): string => (units === 'F' ? `${Math.round(kelvinToFahrenheitDegrees(differenceK))}F` : `${Math.round(differenceK * 10) / 10}C`);

/** "3C (0.5 to 5.5)" */
export const withRange = (low: { q10: number; q50: number; q90: number }, units: TempUnits): string => `${temperature(low.q50, units)} (${degrees(low.q10, units)} to ${degrees(low.q90, units)})`;

/** Numbers for examples, in the unit that a grower uses. */
export const EXAMPLE = { C: { inside: '"-2C inside"', low: '"low was -3C"', bare: '"-2C"' }, F: { inside: '"28F inside"', low: '"low was 26F"', bare: '"28F"' } } as const satisfies Record<TempUnits, unknown>;
