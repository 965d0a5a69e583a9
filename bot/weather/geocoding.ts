import { z } from 'zod';
import { SettingError } from '../../config/settings.js';
import { PlaceSearchError, type FoundPlace, type Log, type PlaceFinder } from '../ports.js';
import { ServiceCallError } from './open-meteo/errors.js';
import { roundedCoordinate } from './open-meteo/request.js';
import { Transport, type Reply } from './open-meteo/transport.js';
import { userAgent } from './user-agent.js';

/** The service filters after its limit, so that more is asked for than will be shown. */
const MOST_RESULTS = 20;
const BUDGET_MS = 15_000;
const HTTP_OK = 200;
const HTTP_TOO_MANY = 429;
const HTTP_SERVER_ERROR = 500;
/** Shorter names are refused by the service. */
const LEAST_LETTERS = 2;
const MOST_LETTERS = 100;
const CODE_LETTERS = 2;
const REASON_CHARACTERS = 160;

const text = z.string().trim().min(1);

/** Empty and zero fields are left out of the answer: a place on the equator has no latitude. */
const wirePlace = z.object({
  name: text,
  latitude: z.number().min(-90).max(90).default(0),
  longitude: z.number().min(-180).max(180).default(0),
  country_code: z.string().length(2).optional(),
  country: text.optional(),
  admin1: text.optional(),
});
const wireAnswer = z.object({ results: z.array(wirePlace).default([]) });
const wireError = z.object({ reason: z.string() });

type WirePlace = z.output<typeof wirePlace>;

export interface GeocodingOptions {
  /** One address under which every path hangs, or null for the public service. */
  readonly baseUrl: string | null;
  readonly apiKey?: string | null;
  readonly contact?: string | null;
  readonly log?: Log;
  readonly transport?: Pick<Transport, 'get' | 'close'>;
}

function searchHost(baseUrl: string | null, withKey: boolean): string {
  if (baseUrl === null) return `https://${withKey ? 'customer-' : ''}geocoding-api.open-meteo.com`;
  const base = baseUrl.replace(/\/+$/, '');
  if (!/^https?:\/\//.test(base) || !URL.canParse(base)) throw new SettingError(`DUSKWARD_WEATHER_URL: expected an address such as http://127.0.0.1:8750, got "${baseUrl}".`);
  return base;
}

/** Looks towns up in the geocoding service; close it to let the process end. */
export function geocoder(options: GeocodingOptions): PlaceFinder & { close(): Promise<void> } {
  const { baseUrl, apiKey = null, contact = null, log, transport = new Transport() } = options;
  const host = searchHost(baseUrl, apiKey !== null);
  const headers = { accept: 'application/json', 'user-agent': userAgent(contact), ...(apiKey === null ? {} : { 'x-api-key': apiKey }) };
  const search = async (name: string): Promise<readonly WirePlace[]> => {
    if (name.length < LEAST_LETTERS) return [];
    const query = new URLSearchParams({ name: name.slice(0, MOST_LETTERS), count: String(MOST_RESULTS), language: 'en', format: 'json' });
    try {
      return read(await transport.get(`${host}/v1/search?${query.toString()}`, headers, BUDGET_MS));
    } catch (error) {
      const failed = error instanceof ServiceCallError ? new PlaceSearchError(error.kind, error.message, { cause: error }) : error;
      if (failed instanceof PlaceSearchError) log?.warn('place search failed', { failure: failed.failure, cause: failed.message });
      throw failed;
    }
  };
  return {
    placesCalled: async (town) => {
      for (const spelling of spellings(town)) {
        const found = narrowed(await search(spelling.qualifier === null ? spelling.name : `${spelling.name}, ${spelling.qualifier}`), spelling);
        if (found.length > 0) return found.map(asPlace);
      }
      return [];
    },
    close: () => transport.close(),
  };
}

interface Spelling {
  readonly name: string;
  readonly qualifier: string | null;
  /** The region is our own reading of the words: a place elsewhere is then none. */
  readonly guessed: boolean;
}

/** As written first; then with the last words as the region ("Alder Bench Vermont"); then the name alone, narrowed by us. */
function spellings(town: string): readonly Spelling[] {
  const clean = town.trim().replace(/\s+/g, ' ');
  const [head = '', ...rest] = clean.split(',').map((part) => part.trim());
  if (rest.length > 0) return [rest.join(', '), ...(rest.length > 1 ? [rest[0]!] : [])].map((qualifier) => ({ name: head, qualifier, guessed: false }));
  const words = clean.split(' ');
  const cut = (count: number): Spelling => ({ name: words.slice(0, -count).join(' '), qualifier: words.slice(-count).join(' '), guessed: true });
  return [{ name: clean, qualifier: null, guessed: false }, ...(words.length > 1 ? [cut(1)] : []), ...(words.length > 2 ? [cut(2)] : [])];
}

const plain = (name: string): string => name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim();

/** The search matches beginnings of names: what is called exactly so goes before what only begins so; a region that matches narrows. */
function narrowed(found: readonly WirePlace[], { name, qualifier, guessed }: Spelling): readonly WirePlace[] {
  const exact = found.filter((place) => plain(place.name) === plain(name));
  const named = exact.length > 0 ? exact : found;
  if (qualifier === null) return named;
  const wanted = qualifier.split(',').map(plain).filter((part) => part !== '');
  const matches = (place: WirePlace): number => wanted.filter((part) => [place.admin1, place.country, place.country_code].some((field) => field !== undefined && plain(field) === part)).length;
  // "Vermont, USA": what fits best, as the country has more names than one.
  const most = Math.max(0, ...named.map(matches));
  const fits = most === 0 ? [] : named.filter((place) => matches(place) === most);
  // A code such as VT is narrowed by the service itself.
  return fits.length > 0 || (guessed && qualifier.length > CODE_LETTERS) ? fits : named;
}

const asPlace = (place: WirePlace): FoundPlace => ({
  name: place.name,
  region: place.admin1 ?? null,
  country: place.country ?? null,
  countryCode: place.country_code ?? null,
  latitude: Number(roundedCoordinate(place.latitude)),
  longitude: Number(roundedCoordinate(place.longitude)),
});

function read(reply: Reply): readonly WirePlace[] {
  const what = 'place search';
  const reason = reasonOf(reply);
  if (reply.status === HTTP_TOO_MANY) throw new PlaceSearchError('limited', `${what}: too many requests: "${reason}"`);
  if (reply.status >= HTTP_SERVER_ERROR) throw new PlaceSearchError('server', `${what}: expected status 200, got ${reply.status} "${reason}", also after retries`);
  if (reply.status !== HTTP_OK) throw new PlaceSearchError('refused', `${what}: expected status 200, got ${reply.status} "${reason}". Check DUSKWARD_WEATHER_URL and DUSKWARD_WEATHER_KEY.`);
  if (!/\bjson\b/i.test(reply.contentType)) throw new PlaceSearchError('not-json', `${what}: expected JSON, got ${reply.contentType || 'no content type'}. Check DUSKWARD_WEATHER_URL, and whether a login page stands between.`);
  const answer = wireAnswer.safeParse(parsed(reply.text));
  if (!answer.success) throw new PlaceSearchError('unusable', `${what}: expected a list of places, got ${answer.error.issues[0]?.path.join('.') ?? 'something else'}: ${answer.error.issues[0]?.message ?? ''}`);
  return answer.data.results;
}

function parsed(body: string): unknown {
  try {
    return JSON.parse(body) as unknown;
  } catch (cause) {
    throw new PlaceSearchError('cut-off', `place search: expected whole JSON, got ${body.length} characters`, { cause });
  }
}

function reasonOf({ text: body }: Reply): string {
  try {
    return wireError.parse(JSON.parse(body)).reason;
  } catch {
    return body.slice(0, REASON_CHARACTERS).replace(/\s+/g, ' ').trim();
  }
}
