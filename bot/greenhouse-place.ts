import { checkGreenhouse } from '../engine/index.js';
import { placeKey } from './weather/place-key.js';

/** Under which place the weather of a stored greenhouse file is kept; null when the file can no longer be read. */
export function placeKeyOf(greenhouseBody: string): string | null {
  const check = checkGreenhouse(jsonOf(greenhouseBody));
  if (!check.ok) return null;
  const { latitude, longitude, elevation } = check.greenhouse.place;
  return placeKey({ latitude, longitude, elevationM: elevation ?? null });
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}
