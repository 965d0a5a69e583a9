import type { Clause, Quantity } from './clause.js';
import type { CurtainFact, FanFact, TubesFact, VentsFact } from './house-fact.js';
import { readFan } from './read-fan.js';

/** Wider than this is no tube, but its length. */
const WIDEST_TUBE_IN = 24;
const WIDEST_TUBE_CM = 60;

const isThin = ({ value, unit }: Quantity): boolean => (unit === 'in' && value <= WIDEST_TUBE_IN) || unit === 'mm' || (unit === 'cm' && value <= WIDEST_TUBE_CM);

/** Tubes in the ground: how many, how long, how wide, how deep, and their fan. */
export function tubesFact(clause: Clause): TubesFact {
  const of = (...patterns: readonly RegExp[]): Quantity | null => {
    for (const pattern of patterns) {
      const found = clause.take(pattern);
      if (found !== null) return clause.quantity(found[1]);
    }
    return null;
  };
  const fan = readFan(clause);
  const depth = of(/ (#[LN]\d+) (?:deep|down|underground|below|under|depth|beneath) /, / (?:depth|deep|buried|down)(?: (?:of|is|at|about))* (#[LN]\d+) /);
  const diameter = of(/ (#[LN]\d+) (?:diameter|in diameter|across|wide|round|dia) /, / (?:diameter|dia)(?: (?:of|is|about))* (#[LN]\d+) /);
  const length = of(/ (#[LNY]\d+) (?:long|in length|runs?|each|length) /, / (?:length|long)(?: (?:of|is|about))* (#[LNY]\d+) /);
  const others = clause.takeAll(/ (#[LY]\d+) /).flatMap(([, symbol]) => clause.quantity(symbol) ?? []);
  const thin = diameter ?? others.find(isThin) ?? null;
  const long = length ?? others.find((one) => !isThin(one)) ?? null;
  const counted = clause.quantity(clause.take(/ (#N\d+)(?: of)? /)?.[1]);
  const one = clause.has(/ (?:a|an|one|single|@single) (?:\S+ ){0,3}?@tube /) && clause.pieces.some(({ symbol, written }) => symbol === '@tube' && !/s\b/i.test(written));
  const count = counted?.value ?? (one ? 1 : null);
  clause.takeAll(/ @tube /);
  return { about: 'tubes', ...(count === null ? {} : { count }), ...(long === null ? {} : { length: long }), ...(thin === null ? {} : { diameter: thin }), ...(depth === null ? {} : { depth }), ...(fan === null ? {} : { fan }) };
}

/** A fan that stirs the air of the house. */
export const fanFact = (clause: Clause): FanFact => ({ about: 'fan', fan: readFan(clause) ?? {} });

export function curtainFact(clause: Clause): CurtainFact {
  const kind = clause.takes(/ @foil /) ? 'foil' : clause.takes(/ @film /) ? 'film' : clause.takes(/ @cover /) ? 'fabric' : null;
  clause.takeAll(/ @curtain /);
  return { about: 'curtain', ...(kind === null ? {} : { kind }) };
}

/** Vents: how big they are fully open, and who opens them. */
export function ventsFact(clause: Clause): VentsFact {
  const area = clause.quantity(clause.take(/ (#A\d+) /)?.[1]);
  const sides = clause.take(/ (#[LN]\d+) (?:x|by) (#[LN]\d+) /);
  const [one, two] = [clause.quantity(sides?.[1]), clause.quantity(sides?.[2])] as const;
  const openAbove = clause.quantity(clause.take(/ (?:above|at|over) (#T\d+) /)?.[1]);
  const count = clause.takes(/ (?:both|each side|two) /) ? 2 : (clause.quantity(clause.take(/ (#N\d+) /)?.[1])?.value ?? null);
  const opener = clause.takes(/ @opener /);
  clause.takeAll(/ (?:@vent|@side|@opener) /);
  return {
    about: 'vents',
    ...(area === null ? {} : { area }),
    ...(one && two ? { opening: [one, two] as const } : {}),
    ...(count === null ? {} : { count }),
    ...(opener ? { opener } : {}),
    ...(openAbove === null ? {} : { openAbove }),
  };
}
