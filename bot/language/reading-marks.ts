import type { Statistic } from './intent.js';
import type { Message } from './message.js';
import type { Piece } from './piece.js';

/** What a piece says about the number near it. */
export interface ReadingMark {
  readonly stat?: Statistic;
  /** Weaker than `stat`: "it is 31" is of now unless a low or high is said too. */
  readonly isNow?: true;
  readonly place?: string;
  readonly sun?: boolean;
}

const LOW = new Set(['low', 'l', 'minimum', 'lowest', 'coldest', 'bottomed', 'dropped', 'dipped', 'fell', 'sank', 'plunged', 'bottom', 'lowermost', 'down']);
const HIGH = new Set(['high', 'maximum', 'highest', 'hottest', 'warmest', 'peak', 'peaked', 'topped', 'hi', 'h']);
const NOW = new Set(['is', 'now', 'current', 'currently', 'reads', 'says', 'shows', 'showing', 'reading', 'sitting', 'holding', 'presently', 'present', 'moment', 'are']);
const PLACE_ITEMS: Readonly<Record<string, string>> = { '@cover': 'cover', '@water': 'water', '@stones': 'stones', '@tube': 'tube' };

const NONE: ReadingMark = {};
/** So far before its number stands "is". */
const VERB_REACH = 6;

/** The place that a symbol names, if it does. */
export const placeOf = (symbol: string, names: readonly string[]): string | null =>
  symbol.startsWith('&') ? symbol.slice(1) : symbol.startsWith('$') ? (names[Number(symbol.slice(1))] ?? null) : (PLACE_ITEMS[symbol] ?? null);

/** "28 in, 22 out": the short forms count only at the end of a stretch or right at a number. */
function shortPlace(pieces: readonly Piece[], at: number): string | null {
  const symbol = pieces[at]?.symbol;
  const before = pieces[at - 1]?.symbol ?? '';
  const next = pieces[at + 1]?.symbol ?? '';
  const after = next === ':' ? (pieces[at + 2]?.symbol ?? '') : next;
  if (symbol === 'out' && !/^(?:blowing|coming|putting|giving|puffing|blows|puts|blew|comes|came|bottomed|maxed|topped|levelled|leveled|bottom)$/.test(before) && (before.startsWith('#') || after.startsWith('#') || after === 'side')) return 'outside';
  if (symbol === 'in' && (before.startsWith('#') || /^#/.test(after)) && /^(?:|,|;|:|and|\/|#\d+|out|now|~\d+|at|right|today|this|last|overnight|currently|already|still|but|as|with|brr)$/.test(after)) return 'inside';
  return null;
}

export function readingMark(message: Message, at: number): ReadingMark {
  const { pieces } = message;
  const symbol = pieces[at]?.symbol ?? '';
  const before = pieces[at - 1]?.symbol ?? '';
  const after = pieces[at + 1]?.symbol ?? '';
  if (symbol === 'down' && !/^(?:to|at|as|#\d+)$/.test(after)) return NONE;
  // "Not been down to the tunnel yet".
  if (symbol === 'down' && after === 'to' && /^(?:the|my|our|&)/.test(pieces[at + 2]?.symbol ?? '')) return NONE;
  // "In the sun, so probably too high", "outside the greenhouse".
  if (before === 'too') return NONE;
  if (symbol === '&inside' && /(?:^| )&outside(?: of)? (?:the|my|our)$/.test(pieces.slice(Math.max(at - 3, 0), at).map((piece) => piece.symbol).join(' '))) return NONE;
  // "It is down to 1.5" tells of now.
  if (symbol === 'down' && /^(?:is|are|already|now)$/.test(before)) return { isNow: true };
  if (LOW.has(symbol)) return { stat: 'low' };
  if (HIGH.has(symbol)) return { stat: 'high' };
  if (symbol === 'up' && after === 'to' && pieces.slice(at, at + 6).some((piece) => piece.symbol === 'now')) return { isNow: true };
  if (symbol === 'up' && after === 'to' && /^(?:|;|,)$/.test(before) && message.said.includes(' today ')) return { stat: 'high' };
  if (symbol === 'up' && after === 'to' && /^(?:got|went|climbed|rose|warmed|back|right|heated|all|way)$/.test(before)) return { stat: 'high' };
  if (symbol === 'sun' || symbol === 'sunny' || symbol === 'sunshine' || symbol === 'sunlight') return { sun: true };
  if (symbol === 'shade' || symbol === 'shaded') return { sun: false };
  // "Here are my numbers of this morning".
  if (/^(?:is|are)$/.test(symbol) && before === 'here' && !after.startsWith('#')) return NONE;
  // "Reading for Tuesday night: 1.9".
  if (symbol === 'reading' && /^(?:for|of|from|:|on)$/.test(after)) return NONE;
  // "Coffee is on" is of no thermometer.
  if (/^(?:is|are)$/.test(symbol) && !pieces.slice(at + 1, at + 1 + VERB_REACH).some((piece) => piece.symbol.startsWith('#'))) return NONE;
  if (NOW.has(symbol)) return { isNow: true };
  const place = placeOf(symbol, message.names) ?? shortPlace(pieces, at);
  return place === null ? NONE : { place };
}
