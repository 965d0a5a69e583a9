import { celsiusToKelvin } from '../../../engine/units.js';

/** Hours of one temperature after another, as [hours, °C], in kelvin. */
export const hoursK = (...spells: readonly (readonly [hours: number, tempC: number])[]): number[] =>
  spells.flatMap(([hours, tempC]) => Array<number>(hours).fill(celsiusToKelvin(tempC)));

export const days = (count: number, dayK: readonly number[]): number[] => Array.from({ length: count }, () => dayK).flat();
