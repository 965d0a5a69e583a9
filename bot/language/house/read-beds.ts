import type { CropNames } from '../crop-names.js';
import { ORDINARY_WORDS } from '../ordinary-words.js';
import { nearestWord } from '../spelling.js';
import { bedParts, type BedPart } from './bed-parts.js';
import type { Clause, Quantity } from './clause.js';
import type { BedFact, CoverFact, CropSaid, Fact } from './house-fact.js';
import { FUNCTION_WORDS, type Piece } from './house-text.js';

/** Grams on a square metre, as trade names of thickness are mostly meant (rows of the engine's cover table). */
export const FABRIC_WEIGHTS_GSM = { light: 17, medium: 30, heavy: 50 } as const;

const EVERYWHERE = / (?:all|every|each|both|whole|everything|entire) /;
const HARDINESS = / (tender|half hardy|very hardy|hardy) /;
const MOST_WORDS_OF_A_NAME = 3;

/** Names as the crop table has them: a plain crop by its id, a variety by its own words. */
function knownCrops(clause: Clause): readonly CropSaid[] {
  return clause.takeAll(/ (%\d+) /).flatMap(([, symbol]) => {
    const hit = clause.piece(symbol)?.crop;
    if (hit === undefined) return [];
    const [id] = hit.ids;
    return [{ name: hit.ids.length === 1 && id !== undefined && !id.includes('_') ? id : hit.words, known: true }];
  });
}

/** Words between marks that are no everyday words: names of crops that the table does not know. */
function strangeCrops(clause: Clause, names: CropNames): readonly CropSaid[] {
  const hardiness = clause.take(HARDINESS)?.[1]?.replace('half hardy', 'half-hardy') as CropSaid['hardiness'];
  const groups: Piece[][] = [[]];
  for (const piece of clause.rest) {
    if (/^[a-z]{3,}$/.test(piece.symbol) && !ORDINARY_WORDS.has(piece.symbol) && !FUNCTION_WORDS.has(piece.symbol)) groups.at(-1)!.push(piece);
    else groups.push([]);
  }
  const strange = groups.filter((words) => words.length > 0 && words.length <= MOST_WORDS_OF_A_NAME);
  for (const { symbol } of strange.flat()) clause.take(new RegExp(` ${symbol} `));
  return strange.map((words) => {
    const name = words.map(({ written }) => written.toLowerCase()).join(' ');
    // "Pac choy" lies near one crop only.
    const meant = nearestWord(name, names.idsByPhrase.keys(), (phrase) => names.idsByPhrase.get(phrase)?.join(' ') ?? phrase);
    return meant !== null ? { name: meant, known: true } : { name, known: false, ...(hardiness === undefined ? {} : { hardiness }) };
  });
}

function coverIn({ clause, bed }: BedPart, crops: readonly CropSaid[]): CoverFact | null {
  if (clause.takes(/ (?:no|without|not|never)(?: (?:a|any|under|@light|@medium|@heavy))* (?:@cover|@lowtunnel|covered|cover) /)) return null;
  const hoops = clause.has(/ (?:@hoops|@lowtunnel|hooped|wire|arcs) /);
  const film = clause.has(/ @lowtunnel /) || (hoops && clause.has(/ @film /)) || clause.has(/ @film (?:over|on|covers?|sheet|@cover) /);
  const fabric = clause.has(/ @cover /);
  if (!film && !fabric) return null;
  const doubled = clause.takes(/ (?:@two|@double|#N\d+ @layer|@second|two @cover) /) || (film && fabric);
  const weight = clause.quantity(clause.take(/ (#G\d+) /)?.[1]) ?? bareWeight(clause);
  const word = clause.take(/ @(light|medium|heavy) /);
  const on = clause.takes(/ (?:already on|are on|on already|on now|is on|in place|laid) /) ? true : clause.takes(/ (?:are off|off now|not on|folded|rolled up|in the shed) /) ? false : null;
  clause.takeAll(/ (?:@cover|@lowtunnel|@hoops|@film|@layer|@double|@two) /);
  return {
    about: 'cover',
    kind: film && !fabric ? 'film-tunnel' : 'fabric',
    beds: bed === null ? [] : [bed],
    crops: crops.map(({ name }) => name),
    ...(weight !== null ? { weight } : word === null ? {} : { weightGsm: FABRIC_WEIGHTS_GSM[word[1] as keyof typeof FABRIC_WEIGHTS_GSM] }),
    ...(doubled ? { second: film ? ('film-tunnel' as const) : ('fabric' as const) } : {}),
    ...(on === null ? {} : { on }),
  };
}

/** Fabric is sold by the number of its grams on a square metre: "row cover 30". */
const SOLD_GSM = { least: 10, most: 80 } as const;
function bareWeight(clause: Clause): Quantity | null {
  const bare = clause.quantity((/ @cover (#N\d+) /.exec(clause.form) ?? / (#N\d+) @cover /.exec(clause.form))?.[1]);
  if (bare === null || bare.value < SOLD_GSM.least || bare.value > SOLD_GSM.most) return null;
  clause.take(/ @cover #N\d+ | #N\d+ (?=@cover )/);
  return { value: bare.value, unit: 'g/m2' };
}

function areaIn(clause: Clause): Pick<BedFact, 'area' | 'sides'> {
  const area = clause.quantity(clause.take(/ (#A\d+) /)?.[1]);
  if (area !== null) return { area };
  const sides = clause.take(/ (#[LN]\d+)(?: wide)? (?:x|by|,) (#[LN]\d+)(?: long)? /);
  const [one, two] = [clause.quantity(sides?.[1]), clause.quantity(sides?.[2])] as const;
  return one && two ? { sides: [one, two] } : {};
}

/** Beds, what grows in them and what covers them; and the pieces that no rule understood. */
export function bedFacts(whole: Clause, said: { readonly denied: boolean; readonly asked: 'covers' | 'crops' | null; readonly names: CropNames }): { readonly facts: readonly Fact[]; readonly rest: readonly Piece[] } {
  const everywhere = whole.takes(EVERYWHERE);
  // How many there are is no fact of any of them.
  whole.takeAll(/ #N\d+ (?:\S+ )?@bed(?= ) /);
  const deniesCovers = said.denied && whole.has(/ (?:@cover|@lowtunnel|covers) /);
  const parts = bedParts(whole);
  const named = parts.flatMap(({ bed }) => bed ?? []);
  if (deniesCovers) return { facts: [{ about: 'none', thing: 'covers', ...(named.length > 0 && !everywhere ? { beds: named } : {}) }], rest: [] };
  const facts = parts.flatMap((part): Fact[] => {
    const known = knownCrops(part.clause);
    const cover = coverIn(part, known);
    const size = areaIn(part.clause);
    const crops = [...known, ...(said.asked === 'crops' && !said.denied ? strangeCrops(part.clause, said.names) : [])];
    const alone = part.bed !== null && cover === null && parts.filter(({ bed }) => bed === part.bed).length === 1;
    const isBed = crops.length > 0 || Object.keys(size).length > 0 || alone;
    return [
      ...(isBed ? [{ about: 'bed', bed: part.bed, crops, ...size, ...(said.denied ? { gone: true } : {}) } satisfies BedFact] : []),
      ...(cover === null ? [] : [everywhere ? { ...cover, beds: [], crops: [] } : cover]),
    ];
  });
  const once = facts.filter((fact, at) => facts.findIndex((other) => JSON.stringify(other) === JSON.stringify(fact)) === at);
  return { facts: once, rest: parts.flatMap(({ clause }) => clause.rest) };
}
