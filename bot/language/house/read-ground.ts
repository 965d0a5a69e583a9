import type { Clause } from './clause.js';
import type { Fact, SiteFact, SoilFact, TimesFact, UnitsFact } from './house-fact.js';
import type { Piece } from './house-text.js';

const KINDS = [['@loam', 'loam'], ['@rich', 'compost-rich'], ['@peat', 'peat'], ['@clay', 'clay'], ['@sand', 'sand']] as const;
const MOISTURES = [['@dry', 'dry'], ['@moist', 'moist'], ['@wet', 'wet']] as const;

/** What the beds are filled with and how wet it is; paths apart where they are named. */
function readSoil(clause: Clause): SoilFact | null {
  const path = clause.take(/ @path (?:\S+ ){0,3}?@(dry|moist|wet) /) ?? clause.take(/ @(dry|moist|wet) @path /);
  const kind = KINDS.find(([symbol]) => clause.has(new RegExp(` ${symbol} `)));
  const moisture = MOISTURES.find(([symbol]) => clause.has(new RegExp(` ${symbol} `)));
  clause.takeAll(/ (?:@soil|@loam|@rich|@peat|@clay|@sand|@dry|@moist|@wet) /);
  if (kind === undefined && moisture === undefined && path === null) return null;
  return {
    about: 'soil',
    ...(kind === undefined ? {} : { kind: kind[1] }),
    ...(moisture === undefined ? {} : { moisture: moisture[1] }),
    ...(path === null ? {} : { pathMoisture: path[1] as 'dry' | 'moist' | 'wet' }),
  };
}

const FACES = / (?:faces|facing|face|looks|looking) (?:to |towards )?(?:the )?(north|south|east|west) /;
const ACROSS = { north: 'east-west', south: 'east-west', east: 'north-south', west: 'north-south' } as const;

function readSite(clause: Clause, name: string | null): SiteFact | null {
  const runs = clause.take(/ @(eastwest|northsouth) /);
  const faces = runs === null ? clause.take(FACES) : null;
  const tight = clause.takes(/ @tight /);
  const leaky = !tight && clause.takes(/ @leaky /);
  const around = clause.take(/ @(open|wooded|town) /);
  if (runs === null && faces === null && !tight && !leaky && around === null && name === null) return null;
  const ridge = runs !== null ? (runs[1] === 'eastwest' ? 'east-west' : 'north-south') : faces !== null ? ACROSS[faces[1] as keyof typeof ACROSS] : null;
  return {
    about: 'site',
    ...(ridge === null ? {} : { ridge }),
    ...(tight || leaky ? { leakage: tight ? 'tight' : 'leaky' } : {}),
    ...(around === null ? {} : { surroundings: around[1] as 'open' | 'wooded' | 'town' }),
    ...(name === null ? {} : { name }),
  };
}

const NAMES = / (?:call it|called|named|name it|name is|its name is|we call it|goes by) /;
const MOST_NAME_WORDS = 5;

/** "call it Wren Hollow": the words that follow, as they were written, up to the next mark. */
function readName(clause: Clause): string | null {
  const found = clause.take(NAMES);
  if (found === null) return null;
  const at = clause.pieces.findIndex((piece, i) => i > 0 && clause.isTaken(clause.pieces[i - 1]!) && !clause.isTaken(piece));
  const words: Piece[] = [];
  for (const piece of clause.pieces.slice(at < 0 ? clause.pieces.length : at, at + MOST_NAME_WORDS)) {
    if (/^[,;?]$/.test(piece.symbol)) break;
    words.push(piece);
  }
  for (const word of words) clause.take(new RegExp(` ${word.symbol.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')} `));
  return words.length === 0 ? null : words.map(({ written }) => written).join(' ');
}

/** "Metric" and "imperial" speak of both; the other words of one. A letter alone only answers the question. */
function readUnits(clause: Clause, expected: boolean): UnitsFact | null {
  if (clause.takes(/ metric /)) return { about: 'units', temperature: 'C', lengths: 'm' };
  if (clause.takes(/ imperial /)) return { about: 'units', temperature: 'F', lengths: 'ft' };
  const temperature = clause.takes(/ fahrenheit /) || (expected && clause.takes(/ f /)) ? 'F' : clause.takes(/ (?:celsius|centigrade) /) || (expected && clause.takes(/ c /)) ? 'C' : null;
  const speak = expected ? '' : '(?:in |use |speak |prefer )';
  const lengths = clause.takes(new RegExp(` ${speak}(?:feet|foot|ft) `)) ? 'ft' : clause.takes(new RegExp(` ${speak}(?:metres|meters|metre|meter|m) `)) ? 'm' : null;
  return temperature === null && lengths === null ? null : { about: 'units', ...(temperature === null ? {} : { temperature }), ...(lengths === null ? {} : { lengths }) };
}

const MINUTES_PER_HOUR = 60;
const NOON_MINUTES = 12 * MINUTES_PER_HOUR;

export const clockText = (minutes: number): string => `${String(Math.floor(minutes / MINUTES_PER_HOUR)).padStart(2, '0')}:${String(minutes % MINUTES_PER_HOUR).padStart(2, '0')}`;

/** A clock time in the half of the day that is meant: "at 5" for an evening message is 17:00. */
export function clockIn(clock: { readonly hour: number; readonly minute: number; readonly exact: boolean }, half: 'morning' | 'evening'): string {
  const minutes = clock.hour * MINUTES_PER_HOUR + clock.minute;
  return clockText(!clock.exact && half === 'evening' && minutes < NOON_MINUTES ? minutes + NOON_MINUTES : minutes);
}

function readTimes(clause: Clause, expected: boolean): TimesFact | null {
  const of = (pattern: RegExp, half: 'morning' | 'evening'): string | null => {
    const found = clause.take(pattern);
    const clock = clause.piece(found?.[1])?.clock;
    const hour = clause.quantity(found?.[1]);
    if (clock !== undefined) return clockIn(clock, half);
    // "18.30"
    const point = /^(\d{1,2})\.([0-5]\d)$/.exec(clause.piece(found?.[1])?.measure?.text ?? '');
    if (point !== null) return clockIn({ hour: Number(point[1]), minute: Number(point[2]), exact: Number(point[1]) > 12 }, half);
    // "1630"
    if (hour !== null && hour.unit === null && /^[01]?\d[0-5]\d$|^2[0-3][0-5]\d$/.test(clause.piece(found?.[1])?.measure?.text ?? '')) return clockIn({ hour: Math.floor(hour.value / 100), minute: hour.value % 100, exact: hour.value >= 1300 }, half);
    return hour !== null && hour.unit === null && Number.isInteger(hour.value) && hour.value >= 1 && hour.value <= 23 ? clockIn({ hour: hour.value, minute: 0, exact: hour.value > 12 }, half) : null;
  };
  const bedtime = of(/ (?:bedtime|bed time|bed|sleep|asleep|turn in)(?: \S+){0,3}? (~\d+|#N\d+) /, 'evening');
  const morning = of(/ morning(?: \S+){0,4}? (~\d+|#N\d+) /, 'morning') ?? of(/ (~\d+) (?:in the )?morning /, 'morning');
  const evening = of(/ (?:evening|evenings|message|messages|advice|text|afternoon)(?: (?!_)\S+){0,4}? (~\d+|#N\d+)(?: o'?clock)? /, 'evening') ?? of(/ (~\d+)(?: in)?(?: the)? (?:evening|evenings|afternoon) /, 'evening') ?? (expected ? of(/ (~\d+|#N\d+) /, 'evening') : null);
  if (bedtime === null && morning === null && evening === null) return null;
  return { about: 'times', ...(evening === null ? {} : { evening }), ...(morning === null ? {} : { morning }), ...(bedtime === null ? {} : { bedtime }) };
}

/** Ground, site, times and units. `expected`: what was just asked, which a bare time or letter answers. */
export function groundFacts(clause: Clause, expected: 'time' | 'units' | null): readonly Fact[] {
  const name = readName(clause);
  return [readTimes(clause, expected === 'time'), readSoil(clause), readSite(clause, name), readUnits(clause, expected === 'units')].filter((fact) => fact !== null);
}
