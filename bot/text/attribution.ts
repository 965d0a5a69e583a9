/** The weather data's licence asks for this wherever its data are shown. */
export const WEATHER_ATTRIBUTION = 'Weather data by Open-Meteo.com (https://open-meteo.com/), CC BY 4.0 (https://creativecommons.org/licenses/by/4.0/); changed by our own model of the greenhouse.';
/** The second service stands in when the first fails. */
export const SECOND_WEATHER_ATTRIBUTION = 'When that service fails: weather data from MET Norway (https://api.met.no/), CC BY 4.0, changed in the same way.';
/** Towns come from the geocoding service, which stands on this. */
export const PLACE_ATTRIBUTION = 'Place names: GeoNames.org, CC BY 4.0.';
