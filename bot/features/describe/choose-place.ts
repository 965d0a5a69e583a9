import type { Signal } from '../../language/house/signals.js';
import type { FoundPlace, WeatherFailure } from '../../ports.js';
import { placeName } from '../../text/describe-text.js';
import { fitting, withPlace } from './apply.js';
import type { Problem } from './thing.js';
import type { Taken } from './taken.js';
import type { DescribeState } from './state.js';
import { habitsOfCountry, habitsOfZone } from './units-of-place.js';

/** More would be no choice but a list. */
const MOST_CHOICES = 5;

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim();

/** What came of looking a town up: one place is taken, several are offered, none is said. */
export function withFound(state: DescribeState, places: { readonly town: string; readonly found: readonly FoundPlace[] } | { readonly town: string; readonly failure: WeatherFailure }): Taken {
  const { town } = places;
  const base = { ...state, looking: null, owed: [] };
  const owed = state.owed;
  if ('failure' in places) return { state: base, parts: [], lines: owed, problems: [{ code: 'place-search', town, failure: places.failure }], understood: true };
  const [first] = places.found;
  if (first === undefined) return { state: base, parts: [], lines: owed, problems: [{ code: 'place-name', town }], understood: true };
  if (places.found.length === 1 && isMeant(first, town)) return placed(base, first, owed);
  return { state: { ...base, choices: places.found.slice(0, MOST_CHOICES) }, parts: [], lines: owed, problems: [], understood: true };
}

/** "Wexby, Vermont" found in Scotland is asked about; a code such as VT was narrowed by the search itself. */
function isMeant(place: FoundPlace, town: string): boolean {
  const regions = town.split(',').slice(1).map(plain).filter((part) => part.length > 2);
  const fields = [place.region, place.country, place.countryCode].map((field) => plain(field ?? ''));
  return regions.length === 0 || regions.some((region) => fields.some((field) => field.startsWith(region)));
}

function placed(state: DescribeState, place: FoundPlace, lines: Taken['lines']): Taken {
  const habits = place.countryCode === null ? habitsOfZone('') : habitsOfCountry(place.countryCode);
  const next = withPlace(state, { about: 'coordinates', latitude: place.latitude, longitude: place.longitude }, { name: placeName(place), habits });
  if ('problem' in next) return { state, parts: [], lines, problems: [next.problem], understood: true };
  const problems: Problem[] = [];
  return { state: fitting(next, problems), parts: [], lines: ['place', ...lines], problems, understood: true };
}

/** The place that an answer points at: its number, its region, or yes to the only one; null where the answer is something else. */
export function chosen(state: DescribeState, text: string, signal: Signal | null): Taken | null {
  const { choices } = state;
  const pick = (place: FoundPlace): Taken => placed({ ...state, choices: [] }, place, []);
  if (signal?.kind === 'number') {
    const place = choices[signal.number - 1];
    return place !== undefined ? pick(place) : { state, parts: [], lines: [], problems: [{ code: 'bad-choice', most: choices.length }], understood: true };
  }
  if (signal?.kind === 'yes' && choices.length === 1) return pick(choices[0]!);
  if (signal?.kind === 'no') return { state: { ...state, choices: [] }, parts: [], lines: [], problems: [], understood: true };
  const said = plain(text);
  const fits = choices.filter(({ region, country }) => [region, country].some((field) => field !== null && plain(field) !== '' && said.includes(plain(field))));
  return fits.length === 1 ? pick(fits[0]!) : null;
}
