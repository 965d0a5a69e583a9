import { SettingError } from '../../../config/settings.js';
import type { Place } from '../../ports.js';
import { roundedCoordinate } from '../open-meteo/request.js';

const PUBLIC_HOST = 'https://api.met.no';
const SERVICE_PATH = '/weatherapi/locationforecast/2.0';
const PRODUCT = '/complete';

/** The address of the product under a base; one that names the service's path already is taken at its word. */
export function completeAddress(baseUrl: string | null): string {
  const base = (baseUrl ?? PUBLIC_HOST).replace(/\/+$/, '');
  if (!/^https?:\/\//.test(base) || !URL.canParse(base)) {
    throw new SettingError(`DUSKWARD_WEATHER2_URL: expected an address such as http://127.0.0.1:8760, got "${base}". Correct it or leave it out to use the public service.`);
  }
  if (base.endsWith(PRODUCT)) return base;
  return base.endsWith(SERVICE_PATH) ? base + PRODUCT : base + SERVICE_PATH + PRODUCT;
}

/** The service refuses more than four decimals; a place leaves the house with three, as for the first service. */
export function completeRequest(address: string, place: Place): string {
  const query = new URLSearchParams({ lat: roundedCoordinate(place.latitude), lon: roundedCoordinate(place.longitude) });
  if (place.elevationM !== null) query.set('altitude', String(Math.round(place.elevationM)));
  return `${address}?${query.toString()}`;
}
