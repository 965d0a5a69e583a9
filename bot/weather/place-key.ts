import type { Place } from '../ports.js';
import { roundedCoordinate } from './open-meteo/request.js';

/** The place as it is stored and shared: to 3 decimals (about 100 m), never finer, and to the metre of elevation. */
export function placeKey(place: Place): string {
  const elevation = place.elevationM === null ? 'elevation-unknown' : `${Math.round(place.elevationM)}m`;
  return `${roundedCoordinate(place.latitude)},${roundedCoordinate(place.longitude)},${elevation}`;
}

/** Where weather that stands on the second service is stored: apart, so that the first can take up where it left off. */
export const secondPlaceKey = (place: Place): string => `met-norway ${placeKey(place)}`;
