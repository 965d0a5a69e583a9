import { Clause } from './clause.js';

const WHICH = 'north|south|east|west|middle|center|centre|left|right|front|back|rear|first|second|third|fourth|long|short|inner|outer|big|little|small|near|far|upper|lower|end|top|bottom|herb|other';
const BED = new RegExp(` (?:(?:the|my|our) )?(?:(${WHICH}) (?:side )?@bed|@bed (?:number |no |nr )?(#N\\d+|[a-h])|(?:in|on|at|over) the (${WHICH})(?: (?:one|side|half))?(?= (?:[,;:_]|$)| *$)|(north|south|east|west|left|right) @side|(?<= (%\\d+) )@bed) `);

/** What is said of one bed; of the beds as a whole where none is named. */
export interface BedPart {
  readonly clause: Clause;
  readonly bed: string | null;
}

interface Named {
  readonly name: string;
  readonly first: number;
  readonly last: number;
}

function bedName(clause: Clause, found: RegExpExecArray): string {
  const [, which, label, place, half, crop] = found;
  if (crop !== undefined) return `the ${clause.piece(crop)!.written.toLowerCase()} bed`;
  const side = which ?? place ?? half;
  if (side !== undefined) return `the ${side} bed`;
  return `bed ${clause.quantity(label)?.value ?? label}`;
}

/** The beds that are named, in order, with the pieces that name them. */
function namesIn(clause: Clause): readonly Named[] {
  const names: Named[] = [];
  for (;;) {
    const before = new Set(clause.rest);
    const found = clause.take(BED);
    if (found === null) return names.sort((a, b) => a.first - b.first);
    const at = clause.pieces.flatMap((piece, i) => (before.has(piece) && clause.isTaken(piece) ? [i] : []));
    names.push({ name: bedName(clause, found), first: at[0]!, last: at.at(-1)! });
  }
}

const THING = /^(?:%|@cover|@lowtunnel)/;

/** Cuts "kale in the north bed, lettuce in the south bed" and "north bed: kale, south bed: lettuce" into a part for each bed. */
export function bedParts(clause: Clause): readonly BedPart[] {
  const names = namesIn(clause);
  const { pieces } = clause;
  const part = (from: number, until: number, bed: string | null): BedPart => ({ bed, clause: new Clause(pieces.slice(from, until).filter((piece) => !clause.isTaken(piece))) });
  if (names.length === 0) return [part(0, pieces.length, null)];
  const firstThing = pieces.findIndex(({ symbol }) => THING.test(symbol));
  const leads = firstThing < 0 || names[0]!.first < firstThing;
  const cuts = leads
    ? [part(0, names[0]!.first, null), ...names.map(({ name, last }, at) => part(last + 1, names[at + 1]?.first ?? pieces.length, name))]
    : [...names.map(({ name, first }, at) => part(at === 0 ? 0 : names[at - 1]!.last + 1, first, name)), part(names.at(-1)!.last + 1, pieces.length, names.at(-1)!.name)];
  return shared(cuts.filter(({ bed, clause: own }) => bed !== null || own.pieces.length > 0), leads);
}

/** "Lettuce in the north and the south bed": a bed without a thing of its own has what the other has. */
function shared(parts: readonly BedPart[], leads: boolean): readonly BedPart[] {
  const hasThing = ({ clause }: BedPart): boolean => clause.pieces.some(({ symbol }) => THING.test(symbol));
  return parts.map((part, at) => {
    if (hasThing(part) || part.bed === null || part.clause.pieces.some(({ measure }) => measure !== undefined)) return part;
    const neighbour = leads ? parts.slice(at + 1).find(hasThing) : parts.slice(0, at).reverse().find(hasThing);
    return neighbour === undefined || neighbour.bed === part.bed ? part : { bed: part.bed, clause: new Clause(neighbour.clause.pieces) };
  });
}
