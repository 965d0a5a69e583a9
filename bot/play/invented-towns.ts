import type { FoundPlace, PlaceFinder } from '../ports.js';

/** Invented towns at real coordinates, as a search would bring them. */
export const INVENTED_TOWNS: readonly FoundPlace[] = [
  { name: 'Alder Bench', region: 'Colorado', country: 'United States', countryCode: 'US', latitude: 39.83, longitude: -104.65 },
  { name: 'Alder Bench', region: 'Vermont', country: 'United States', countryCode: 'US', latitude: 44.3, longitude: -72.5 },
  { name: 'Wexby', region: 'Scotland', country: 'United Kingdom', countryCode: 'GB', latitude: 57.2, longitude: -3.8 },
  { name: 'Saltness', region: 'Newfoundland and Labrador', country: 'Canada', countryCode: 'CA', latitude: 48.9, longitude: -55.6 },
  { name: 'Val Brume', region: 'Jura', country: 'France', countryCode: 'FR', latitude: 46.7, longitude: 5.9 },
];

/** Finds towns by their whole name, narrowed by a region that begins so. */
export const inventedTowns: PlaceFinder = {
  placesCalled: (town) => {
    const [name = '', ...regions] = town.toLowerCase().split(',').map((part) => part.trim());
    const named = INVENTED_TOWNS.filter((place) => name === place.name.toLowerCase() || (name.startsWith(`${place.name.toLowerCase()} `) && regions.length === 0));
    const narrowed = named.filter((place) => regions.every((region) => [place.region, place.country].some((field) => field?.toLowerCase().startsWith(region))));
    return Promise.resolve(narrowed.length > 0 ? narrowed : named);
  },
};
