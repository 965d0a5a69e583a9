import type { Clause, Quantity } from './clause.js';
import type { EdgeFact, Fact, FanSaid, Side, StoneBoxFact, StoneSaid, StonesFact, WallFact, WaterFact } from './house-fact.js';
import { readFan } from './read-fan.js';

const STONES: readonly (readonly [RegExp, StoneSaid])[] = [[/ @gravel /, 'pale gravel'], [/ @brick /, 'brick'], [/ @concrete /, 'concrete'], [/ @rock /, 'rock']];

export const stoneIn = (clause: Clause): StoneSaid | null => STONES.find(([symbol]) => clause.has(symbol))?.[1] ?? null;

/** Whether the sun reaches it, where that was said. */
const sunIn = (clause: Clause): { sunny?: boolean } => {
  if (clause.takes(/ (?:@shade|(?:no|not|without|never|little)(?: \S+){0,2} @sun|under (?:the |a |my )*(?:@bed|benches)|behind) /)) return { sunny: false };
  return clause.takes(/ @sun /) ? { sunny: true } : {};
};

/** Drums: how many, and how much water is in one or in all. */
export function waterFact(clause: Clause): WaterFact {
  const of = (symbol: string | undefined): Quantity | null => clause.quantity(symbol);
  const more = clause.has(/ (?:more|another|extra|additional|add|added|adding) /);
  const times = clause.take(/ (#N\d+) x (#V\d+) /);
  const total = times === null ? (clause.take(/ (#V\d+) (?:in total|total|altogether|in all|all together) /) ?? clause.take(/ (?:total|altogether|in all)(?: of)? (#V\d+) /) ?? clause.take(/ (#V\d+) (?:of )?@water (?=in #N|, in #N|$)/)) : null;
  const volume = times?.[2] ?? (total === null ? clause.take(/ (#V\d+)(?: (?:each|apiece|per @drum|a piece))? /)?.[1] : undefined);
  const count = times?.[1] ?? clause.take(/ (#N\d+)(?: (?:of them|more|extra|of|big|black|blue|full|steel|plastic|new|old))* /)?.[1];
  const one = clause.has(/ (?:a|an|one|another|the) (?:\S+ ){0,3}?@drum /) && clause.pieces.some(({ symbol, written }) => symbol === '@drum' && !/s$/i.test(written));
  const number = of(count)?.value ?? (one ? 1 : null);
  const touching = clause.takes(/ @touching /);
  const sunny = sunIn(clause);
  clause.takeAll(/ (?:@drum|@water|@black|@film) /);
  const [each, inAll] = [of(volume), of(total?.[1])];
  return { about: 'water', ...(number === null ? {} : { count: number }), ...(each === null ? {} : { each }), ...(inAll === null ? {} : { inAll }), ...(more ? { more } : {}), ...(touching ? { touching } : {}), ...sunny };
}

/** Stones that stand or lie free. */
export function stonesFact(clause: Clause): StonesFact {
  const kind = stoneIn(clause) ?? 'rock';
  const amount = clause.quantity(clause.take(/ (#[VMY]\d+)(?: of)? /)?.[1]);
  const exposed = clause.quantity(clause.take(/ (#A\d+)(?: (?:exposed|of face|face|surface|showing|visible))? /)?.[1]);
  const blackened = clause.takes(/ @black /);
  const sunny = sunIn(clause);
  clause.takeAll(/ (?:@rock|@gravel|@brick|@concrete) /);
  return { about: 'stones', kind, ...(amount === null ? {} : { amount }), ...(exposed === null ? {} : { exposed }), ...(blackened ? { blackened } : {}), ...sunny };
}

/** Stones under glass in a box, with or without a fan. */
export function stoneBoxFact(clause: Clause): StoneBoxFact {
  const fan: FanSaid | null = readFan(clause);
  const kind = stoneIn(clause);
  const amount = clause.quantity(clause.take(/ (#[VMY]\d+)(?: of)? /)?.[1]);
  const glazed = clause.quantity(clause.take(/ (#A\d+)(?: (?:of )?@glass)? /)?.[1]) ?? glassIn(clause);
  clause.takeAll(/ (?:@stonebox|@rock|@gravel|@brick|@concrete|@glass|@black|box|boxes|crate|bin) /);
  return { about: 'stone-box', ...(kind === null ? {} : { kind }), ...(amount === null ? {} : { amount }), ...(glazed === null ? {} : { glazed }), ...(fan === null ? {} : { fan }) };
}

/** A pane told by its sides: "1 by 2 m behind glass". */
function glassIn(clause: Clause): Quantity | null {
  const sides = clause.take(/ (#[LN]\d+) (?:x|by) (#L\d+)(?: (?:of|behind|under|with) (?:\S+ )?@glass)? /);
  const [one, two] = [clause.quantity(sides?.[1]), clause.quantity(sides?.[2])];
  if (one === null || two === null || (two.unit !== 'm' && two.unit !== 'ft') || (one.unit !== null && one.unit !== two.unit)) return null;
  return { value: one.value * two.value, unit: two.unit === 'm' ? 'm2' : 'sq ft' };
}

/** A solid wall along one long side: height, insulation, masonry, the side it stands on. */
export function wallFact(clause: Clause): WallFact {
  const wallWords = clause.pieces.find(({ symbol }) => symbol === '@wall')?.written.toLowerCase() ?? '';
  const of = (...patterns: readonly RegExp[]): Quantity | null => {
    for (const pattern of patterns) {
      const found = clause.take(pattern);
      if (found !== null) return clause.quantity(found[1]);
    }
    return null;
  };
  const made = stoneIn(clause);
  const foam = of(/ (#[LN]\d+)(?: (?:thick|@heavy|of|rigid|inch))* @foam /, / @foam (?:(?:is|of|about|with) )*(#[LN]\d+)(?: (?:thick|@heavy))? /);
  const masonry = of(/ (#[LN]\d+)(?: (?:thick|@heavy|of|solid))* (?:@rock|@brick|@concrete|@gravel|masonry) /, / (?:@rock|@brick|@concrete) (?:(?:is|of|about|wall|@wall|,) )*(#[LN]\d+)(?: (?:thick|@heavy))? /, / (#[LN]\d+) (?:thick|@heavy) /);
  const height = of(/ (#[LN]\d+) (?:tall|high) /, / (?:tall|high|height)(?: of| is)? (#[LN]\d+) /);
  const behind = of(/ (#T\d+) /);
  const stone = made ?? (/brick/.test(wallWords) ? 'brick' : /stone|masonry/.test(wallWords) ? 'rock' : /block/.test(wallWords) ? 'concrete' : null);
  const faces = (/north|south|east|west/.exec(wallWords)?.[0] ?? clause.take(/ (?:on|to|along|faces|facing) (?:the )?(north|south|east|west)(?: side)? /)?.[1]) as Side | undefined;
  const blackened = clause.takes(/ @black /);
  clause.takeAll(/ (?:@wall|@foam|@rock|@brick|@concrete|@gravel) /);
  return {
    about: 'wall',
    ...(foam === null ? {} : { foam }),
    ...(masonry === null ? {} : { masonry }),
    ...(height === null ? {} : { height }),
    ...(stone === null ? {} : { stone }),
    ...(faces === undefined ? {} : { faces }),
    ...(behind === null ? {} : { behind }),
    ...(blackened ? { blackened } : {}),
  };
}

/** Foam let into the ground along the walls. */
export function edgeFact(clause: Clause): EdgeFact {
  const depth = clause.quantity((clause.take(/ (#[LN]\d+) (?:deep|down|into the @soil|below|depth) /) ?? clause.take(/ (?:depth|deep|down)(?: of| to| is)? (#[LN]\d+) /))?.[1]);
  const thickness = clause.quantity((clause.take(/ (#[LN]\d+)(?: (?:thick|@heavy|of))* (?:@foam|@edge) /) ?? clause.take(/ (#[LN]\d+) (?:thick|@heavy) /))?.[1]);
  const other = depth === null ? clause.quantity(clause.take(/ (#[LN]\d+) /)?.[1]) : null;
  clause.takeAll(/ (?:@edge|@foam) /);
  return { about: 'edge', ...(depth ?? other ? { depth: (depth ?? other)! } : {}), ...(thickness === null ? {} : { thickness }) };
}

export const storeFacts = { water: waterFact, stones: stonesFact, 'stone-box': stoneBoxFact, wall: wallFact, edge: edgeFact } as const satisfies Record<string, (clause: Clause) => Fact>;
