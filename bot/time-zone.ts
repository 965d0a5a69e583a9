import tzLookup from 'tz-lookup';
import { IANAZone } from 'luxon';
import type { Greenhouse } from '../engine/index.js';

/** The grower's zone: as given, else from the place. */
export function zoneOf(greenhouse: Greenhouse): string {
  const { timeZone, latitude, longitude } = greenhouse.place;
  if (timeZone === undefined) return tzLookup(latitude, longitude);
  if (!IANAZone.isValidZone(timeZone)) throw new Error(`place.timeZone: expected an IANA name such as "America/Toronto", got ${JSON.stringify(timeZone)}`);
  return timeZone;
}
