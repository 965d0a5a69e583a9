import { SettingError } from '../../../config/settings.js';
/** Where each family of paths of the weather service lives. */
export interface WeatherHosts {
  readonly forecast: string;
  readonly ensemble: string;
  readonly archive: string;
}

/** The public hosts; with an API key the service wants the same names behind "customer-". */
const publicHost = (name: string, withKey: boolean): string => `https://${withKey ? 'customer-' : ''}${name}.open-meteo.com`;

/** One address under which every path hangs (an own server, a stand-in), or the public hosts when none is set. */
export function weatherHosts(options: { readonly baseUrl: string | null; readonly withKey: boolean }): WeatherHosts {
  const { baseUrl, withKey } = options;
  if (baseUrl === null) {
    return { forecast: publicHost('api', withKey), ensemble: publicHost('ensemble-api', withKey), archive: publicHost('archive-api', withKey) };
  }
  const base = baseUrl.replace(/\/+$/, '');
  if (!/^https?:\/\//.test(base) || !URL.canParse(base)) {
    throw new SettingError(`DUSKWARD_WEATHER_URL: expected an address such as http://127.0.0.1:8750, got "${baseUrl}". Correct it or leave it out to use the public service.`);
  }
  return { forecast: base, ensemble: base, archive: base };
}
