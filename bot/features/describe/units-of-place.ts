/** In what a grower most likely measures; "either" where both are in use, so that a plain number has to be asked about. */
export type LengthHabit = 'ft' | 'm' | 'either';

export interface Habits {
  readonly lengths: LengthHabit;
  readonly temperature: 'C' | 'F';
  readonly gallons: 'us' | 'imperial';
}

/** Countries that speak of weather in Fahrenheit (from memory). */
const FAHRENHEIT = new Set(['US', 'PR', 'GU', 'VI', 'AS', 'MP', 'LR', 'BS', 'BZ', 'KY', 'PW', 'FM', 'MH']);
/** Countries where sheds and tunnels are sold in feet as often as in metres (project estimate). */
const EITHER_LENGTH = new Set(['CA', 'GB', 'IE', 'IM', 'JE', 'GG', 'BS', 'BZ', 'KY', 'LR', 'PH', 'IN']);
const IMPERIAL_GALLONS = new Set(['GB', 'IE', 'IM', 'JE', 'GG']);

/** Zones of the same countries, for a place that was shared without a country (IANA zone names). */
const US_ZONE = /^(?:America\/(?:New_York|Detroit|Kentucky\/.*|Indiana\/.*|Chicago|Menominee|North_Dakota\/.*|Denver|Boise|Phoenix|Los_Angeles|Anchorage|Juneau|Sitka|Metlakatla|Yakutat|Nome|Adak|Puerto_Rico|St_Thomas)|Pacific\/(?:Honolulu|Guam|Pago_Pago|Saipan))$/u;
const CANADA_ZONE = /^America\/(?:Toronto|Vancouver|Edmonton|Winnipeg|Regina|Halifax|St_Johns|Moncton|Montreal|Glace_Bay|Goose_Bay|Thunder_Bay|Nipigon|Rainy_River|Swift_Current|Dawson|Dawson_Creek|Fort_Nelson|Creston|Whitehorse|Yellowknife|Inuvik|Iqaluit|Rankin_Inlet|Resolute|Cambridge_Bay|Pangnirtung|Atikokan|Blanc-Sablon)$/u;
const BRITISH_ZONE = /^Europe\/(?:London|Dublin|Belfast|Jersey|Guernsey|Isle_of_Man)$/u;

export function habitsOfCountry(code: string): Habits {
  const temperature = FAHRENHEIT.has(code) ? 'F' : 'C';
  const lengths = EITHER_LENGTH.has(code) ? 'either' : temperature === 'F' ? 'ft' : 'm';
  return { lengths, temperature, gallons: IMPERIAL_GALLONS.has(code) ? 'imperial' : 'us' };
}

export function habitsOfZone(zone: string): Habits {
  if (US_ZONE.test(zone)) return habitsOfCountry('US');
  if (CANADA_ZONE.test(zone)) return habitsOfCountry('CA');
  return BRITISH_ZONE.test(zone) ? habitsOfCountry('GB') : { lengths: 'm', temperature: 'C', gallons: 'us' };
}
