import type { Clause, Quantity } from './clause.js';
import type { Fact, FilmSaid, LayersFact, ShapeFact, ShapeSaid, SizeSaid } from './house-fact.js';

const LENGTH = '(#[LN]\\d+)';
/** "about", "is", "are now": between a name and its number. */
const IS = '(?:is|are|was|be|of|about|around|now|roughly|only|just|really|at|to|should|it|that|exactly|actually|approximately|say|maybe|_|set)';
const TIMES = '(?:x|by)';

const THREE = new RegExp(` ${LENGTH}(?: wide)? ${TIMES} ${LENGTH}(?: long)? ${TIMES} ${LENGTH}(?: (?:tall|high|h))? `);
const WIDE_BY_LONG = new RegExp(` ${LENGTH} (?:wide|across) ${TIMES} ${LENGTH}(?: long)? `);
const LONG_BY_WIDE = new RegExp(` ${LENGTH} long ${TIMES} ${LENGTH}(?: (?:wide|across))? `);
const TWO = new RegExp(` ${LENGTH} ${TIMES} ${LENGTH} `);

const SIDE = [
  new RegExp(` ${LENGTH} (?:tall |high )?(?:at |to |on |for )?(?:the |both |each |its |straight |vertical )*@side(?: (?:walls?|height))? `),
  new RegExp(` @side (?:walls? |height )?(?:${IS} )*${LENGTH}(?: (?:tall|high))? `),
  new RegExp(` @anywall (?:${IS} )*${LENGTH}(?: (?:tall|high))? `),
  new RegExp(` ${LENGTH} (?:tall |high )?@anywall `),
  new RegExp(` ${LENGTH} (?:tall |high )?(?:at |to )(?:the )?(?:low @side|front|low end|low edge|lower @side|outer @anywall) `),
  new RegExp(` (?:low @side|front) (?:${IS} )*${LENGTH} `),
];
const HEIGHT = [
  new RegExp(` ${LENGTH} (?:tall|high|in height|of height|height|overhead|headroom)(?: (?:at|to|in) (?:the )?(?:peak|ridge|top|middle|center|centre|back|highest|crown|point|high @side|@anywall|@wall|@house))?(?: point)? `),
  new RegExp(` ${LENGTH} (?:at|to|in|up) (?:to )?(?:the )?(?:peak|ridge|top|middle|center|centre|back|crown|highest|high @side|high end|tallest|apex|@gable|@anywall|@wall|barn|garage|shed|@house)(?: point)?(?: @anywall)? `),
  new RegExp(` (?:height|headroom|clearance|peak|ridge|top|tallest point|highest point|high @side|back)(?: height)? (?:${IS} |: )*${LENGTH}(?: (?:tall|high|up|off the ground))? `),
  new RegExp(` ${LENGTH} (?:peak|ridge|headroom) `),
];
const WIDTH = [new RegExp(` ${LENGTH} (?:wide|across|deep|in width|of width|width) `), new RegExp(` (?:width|wide) (?:${IS} |: )*${LENGTH} `)];
const LONG = [new RegExp(` ${LENGTH} (?:long|in length|of length|length)(?! of) `), new RegExp(` (?:length|long) (?:${IS} |: )*${LENGTH} `)];

const first = (clause: Clause, patterns: readonly RegExp[]): Quantity | null => {
  for (const pattern of patterns) {
    const found = clause.take(pattern);
    if (found !== null) return clause.quantity(found[1]);
  }
  return null;
};

/** Width, length, height and side wall, in whatever order and words. */
export function readSize(clause: Clause): SizeSaid | null {
  const of = (symbol: string | undefined): Quantity => clause.quantity(symbol)!;
  const wideLong = clause.take(WIDE_BY_LONG);
  const longWide = wideLong === null ? clause.take(LONG_BY_WIDE) : null;
  const side = first(clause, SIDE);
  const three = clause.take(THREE);
  const two = three === null ? clause.take(TWO) : null;
  const height = first(clause, HEIGHT);
  const width = first(clause, WIDTH);
  const length = first(clause, LONG);
  const pair = three ?? two;
  const said: SizeSaid = {
    about: 'size',
    ...(pair === null ? {} : { floor: [of(pair[1]), of(pair[2])] as const }),
    ...(three === null ? {} : { height: of(three[3]) }),
    ...(wideLong === null ? {} : { width: of(wideLong[1]), length: of(wideLong[2]) }),
    ...(longWide === null ? {} : { length: of(longWide[1]), width: of(longWide[2]) }),
    ...(height === null ? {} : { height }),
    ...(width === null ? {} : { width }),
    ...(length === null ? {} : { length }),
    ...(side === null ? {} : { side }),
  };
  return Object.keys(said).length === 1 ? null : said;
}

const SHAPES: readonly (readonly [ShapeSaid, string])[] = [['lean-to', '@lean-to'], ['gothic', '@gothic'], ['gable', '@gable'], ['half-round', '@half-round']];

/** The shape of the cross-section. A shape that is said wins over a plain "tunnel". */
export function readShape(clause: Clause): ShapeFact | null {
  const words = (symbol: string): string => clause.pieces.find((piece) => piece.symbol === symbol)?.written ?? '';
  const dome = clause.has(/ @dome /);
  const said = SHAPES.find(([, symbol]) => clause.has(new RegExp(` ${symbol} `)));
  const hoops = clause.has(/ @hoops /);
  if (!dome && said === undefined && !hoops) return null;
  clause.takeAll(/ (?:@dome|@hoops|@half-round|@gothic|@gable|@lean-to) /);
  if (dome) return { about: 'shape', shape: null, general: false, words: words('@dome') };
  return said === undefined ? { about: 'shape', shape: 'half-round', general: true, words: words('@hoops') } : { about: 'shape', shape: said[0], general: false, words: words(said[1]) };
}

const FILMS: Readonly<Record<string, FilmSaid>> = { '@thermal': 'thermal', '@ir': 'ir-barrier', '@glass': 'glass', '@panels': 'twin-wall', '@film': 'standard' };
const FILM_SYMBOLS = Object.keys(FILMS).join('|');
const ADDED = / (?:added|add|adding|put|installed|got|have|has|now|new|hung|pulled|fitted|with|bought) .*@second | @second (?:on |in |now |up |too |over |went |is |added|inside) /;
const LOST = / (?:took|taken|removed|lost|tore|ripped|without|no|pulled) .*(?:@second|(?:one|a|#N\d+) (?:@layer|@film) (?:off|away|down|out)|one @layer|a @layer) | (?:@second) (?:\S+ ){0,3}?(?:off|gone|down|away|removed|tore) /;

/** How many films, of what, and whether a blower keeps them apart. */
export function readLayers(clause: Clause, said: { readonly denied: boolean; readonly asked: boolean }): LayersFact | null {
  const { denied, asked } = said;
  const noBlower = clause.take(/ (?:no|not|without|never)(?: (?:a|any|the|have|been))* @blower /) !== null;
  const blower = !noBlower && clause.takes(/ @blower /);
  clause.takeAll(/ @blower /);
  const lost = LOST.test(clause.form);
  const added = !lost && ADDED.test(clause.form);
  if (lost) clause.take(/ #N\d+ (?=@film )/);
  const films: FilmSaid[] = [];
  const reversed = new RegExp(` (?:inner|inside)(?: (?:one|@layer|is))* (?:${FILM_SYMBOLS}) .*(?:outer|outside|@outside) `).test(clause.form);
  const count = countOf(clause) ?? (asked ? bareCount(clause) : null);
  const doubled = clause.has(new RegExp(` @double (?:_ )*(?:${FILM_SYMBOLS}) `)) && clause.takes(/ @double /);
  for (let found = clause.take(new RegExp(` (${FILM_SYMBOLS}) `)); found !== null; found = clause.take(new RegExp(` (${FILM_SYMBOLS}) `))) films.push(FILMS[found[1]!]!);
  takeThickness(clause);
  const kinds = kindsOf(films, clause.has(/ (?:inner|outer|inside|@outside) /));
  const change = added && count === null ? 1 : lost || (denied && clause.has(/ @second /)) ? -1 : null;
  clause.takeAll(/ (?:@second|@layer|@two|@single) /);
  const total = count ?? (doubled ? 2 : null);
  if (total === null && kinds.length === 0 && change === null && !blower && !noBlower) return null;
  return {
    about: 'layers',
    films: reversed ? [...kinds].reverse() : kinds,
    ...(total === null || change !== null ? {} : { count: total }),
    ...(change === null ? {} : { change }),
    ...(blower || noBlower ? { blower } : {}),
  };
}

function countOf(clause: Clause): number | null {
  if (clause.takes(/ @two(?: @layer)? /)) return 2;
  const numbered = clause.take(/ (#N\d+) (?:(?:separate|full|whole|of|clear|good|more) )*@layer /) ?? clause.take(/ @layer (?:x |of |, )?(#N\d+) /) ?? clause.take(new RegExp(` (#N\\d+) (?:${FILM_SYMBOLS}) @layer `));
  if (numbered !== null) return clause.quantity(numbered[1])!.value;
  // "Two films": one of them would be the film of a house whose length stands before it.
  const films = clause.pieces.some(({ symbol, written }) => symbol === '@film' && /s$/iu.test(written)) ? clause.take(/ (#N\d+) (?=@film )/) : null;
  if (films !== null) return clause.quantity(films[1])!.value;
  if (clause.takes(/ @double @layer /)) return 2;
  if (clause.takes(/ (?:@single|just a @layer|only a @layer|one @layer|a @layer|a single @layer) (?:@layer )?/)) return 1;
  return null;
}

/** "Two", where nothing but the number of layers was asked. */
const bareCount = (clause: Clause): number | null => clause.quantity(clause.take(/ (#N\d+) /)?.[1])?.value ?? (clause.takes(/ @double /) ? 2 : null);

/** How thick a film or panel is, and how far two films are apart, makes no difference here. */
function takeThickness(clause: Clause): void {
  clause.takeAll(/ (?:(?:with|a|small|air|gap|of) )*#L\d+ (?:apart|between|gap|air gap|of air)(?: (?:them|with|a|small|big|air|gap))* /);
  clause.takeAll(/ #X\d+ (?:thick )?/);
  for (const [, symbol] of clause.form.matchAll(/ (#L\d+)(?= )/g)) if (clause.quantity(symbol)?.unit === 'mm') clause.take(new RegExp(` ${symbol} `));
}

/** "Plastic" beside a particular film only says that it is film, unless it is said which of them is the inner one. */
function kindsOf(films: readonly FilmSaid[], placed: boolean): readonly FilmSaid[] {
  const each = films.filter((film, at) => films.indexOf(film) === at);
  return placed || each.length === 1 ? each : each.filter((film) => film !== 'standard');
}

/** Several bare numbers in a row answer the question for the size: "20 48 9". */
function bareSize(clause: Clause): SizeSaid | null {
  const numbers = clause.takeAll(/ (#[LN]\d+) /).flatMap(([, symbol]) => clause.quantity(symbol) ?? []);
  return numbers.length === 0 ? null : { about: 'size', bare: numbers };
}

/** Size, shape and film. `asked`: what a bare number answers. */
export const frameFacts = (clause: Clause, said: { readonly denied: boolean; readonly asked: 'size' | 'layers' | null }): readonly Fact[] => {
  const { denied, asked } = said;
  const named = denied ? null : readSize(clause);
  const layers = readLayers(clause, { denied, asked: asked === 'layers' });
  const shape = denied ? null : readShape(clause);
  const size = named ?? (asked === 'size' && layers === null && !denied ? bareSize(clause) : null);
  return [size, shape, layers].filter((fact) => fact !== null);
};
