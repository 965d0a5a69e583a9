import { checkGreenhouse } from '../../../engine/greenhouse/check.js';
import type { Greenhouse, GreenhouseFile } from '../../../engine/greenhouse/greenhouse.js';
import { toHouse } from '../../../engine/greenhouse/to-house.js';
import type { House } from '../../../engine/greenhouse/house.js';

/** The least that a file must say; place and size are invented. */
export const LEAST_FILE: GreenhouseFile = { place: { latitude: 45.1, longitude: -72.2 }, size: { width: 4, length: 8, height: 2.4 }, layers: [{ film: 'standard' }] };

/** The least file with some fields changed, right or wrong. */
export const fileWith = (changes: Readonly<Record<string, unknown>>): unknown => ({ ...LEAST_FILE, ...changes });

export function checked(changes: Partial<GreenhouseFile> = {}): Greenhouse {
  const check = checkGreenhouse(fileWith(changes));
  if (!check.ok) throw new Error(check.faults.map(({ field, message }) => `${field}: ${message}`).join('; '));
  return check.greenhouse;
}

export const houseWith = (changes: Partial<GreenhouseFile> = {}): House => toHouse(checked(changes));

/** Field and message of each fault; empty for a right file. */
export function faultsOf(file: unknown): readonly { readonly field: string; readonly message: string }[] {
  const check = checkGreenhouse(file);
  return check.ok ? [] : check.faults;
}
