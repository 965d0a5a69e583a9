import { dayPhrases } from '../day-phrases.js';
import type { Clause } from './clause.js';
import type { CompostFact, Fuel, HeaterFact } from './house-fact.js';
import { readFan } from './read-fan.js';

const FUELS: readonly (readonly [Fuel, RegExp])[] = [
  ['candles', / @candle /],
  ['wood', / (?:@wood|wood|pellets?) /],
  ['propane', / @propane /],
  ['kerosene', / @kerosene /],
  ['gas', / @naturalgas /],
  ['electric', / (?:@electric|@eheater|electricity|plug in|@mains) /],
];

/** What burns or glows, how strong, with or without a flue. */
export function heaterFact(clause: Clause): HeaterFact {
  const fuel = FUELS.find(([, words]) => clause.has(words))?.[0];
  const fuelUnsure = fuel === undefined && clause.has(/ (?:@gas|@gasheater) /);
  const unvented = clause.takes(/ @unvented /) || clause.takes(/ (?:no|not|without)(?: (?:a|any))* (?:@vented|@vent) /);
  const vented = !unvented && clause.takes(/ (?:@vented|@vent) /);
  const noThermostat = clause.takes(/ (?:no|without|not)(?: (?:a|any|have|on))* @thermostat /);
  const thermostat = !noThermostat && clause.takes(/ @thermostat /);
  const price = clause.quantity(clause.take(/ (#C\d+)(?: (?:a|per|for a|each))?(?: (?:kwh|#E\d+|kg|kilo|litre|liter|gallon|unit))? /)?.[1]);
  const power = clause.quantity(clause.take(/ (#P\d+)(?: each)? /)?.[1]);
  const set = clause.quantity((clause.take(/ (?:at|to|on) (#T\d+) /) ?? clause.take(/ (#T\d+) /))?.[1]);
  const count = clause.quantity((clause.take(/ (#N\d+)(?: (?:of|of them|little|big|small|lit))* /) ?? clause.take(/ (#N\d+) /))?.[1])?.value;
  const on = clause.takes(/ (?:already on|running now|on now|is on|is running|already running) /);
  clause.takeAll(/ (?:@heater|@eheater|@gasheater|@electric|@propane|@kerosene|@gas|@naturalgas|@wood|@candle|@mains|@fan) /);
  return {
    about: 'heater',
    ...(fuel === undefined ? {} : { fuel }),
    ...(fuelUnsure ? { fuelUnsure } : {}),
    ...(vented || unvented ? { vented } : {}),
    ...(noThermostat || thermostat ? { thermostat } : {}),
    ...(price === null ? {} : { price: price.value }),
    ...(power === null ? {} : { power }),
    ...(set === null ? {} : { set }),
    ...(count === undefined ? {} : { count }),
    ...(on ? { on } : {}),
  };
}

/** When it is now, so that "three weeks ago" is a date. */
export interface Now {
  readonly atS: number;
  readonly zone: string;
}

const DAYS_OF = { day: 1, week: 7, month: 30, year: 365 } as const;
const SECONDS_PER_DAY = 86_400;

/** A heap: how big, since when, where, whether air is blown through it. */
export function compostFact(clause: Clause, plain: string, now: Now): CompostFact {
  const fan = readFan(clause);
  const piped = clause.takes(/ @piped /) || clause.takes(/ (?:@tube|pipes?|coils?) /) || fan !== null;
  const volume = clause.quantity(clause.take(/ (#[VY]\d+)(?: of)? /)?.[1]);
  const dims = volume === null ? (clause.take(/ (#[LN]\d+) (?:x|by) (#[LN]\d+) (?:x|by) (#[LN]\d+) /) ?? clause.take(/ (#[LN]\d+)(?: \S+)? (?:x|by) (#[LN]\d+)(?: \S+)? , (#[LN]\d+) (?:high|tall|deep) /)) : null;
  const sides = (dims?.slice(1) ?? []).flatMap((symbol) => clause.quantity(symbol) ?? []);
  const against = clause.take(/ (?:the |my |our )?(north|south|east|west|middle|left|right|front|back) @bed /)?.[1];
  const age = clause.take(/ (#D\d+) (?:ago|old|back) /);
  const since = clause.quantity(age?.[1]);
  const started = since !== null && since.unit !== null && since.unit in DAYS_OF ? dateBefore(now, since.value * DAYS_OF[since.unit as keyof typeof DAYS_OF]) : dateIn(clause, plain, now);
  clause.takeAll(/ (?:@compost|@tube) /);
  return {
    about: 'compost',
    ...(volume === null ? {} : { volume }),
    ...(sides.length === 3 ? { sides } : {}),
    ...(started === null ? {} : { started }),
    ...(against === undefined ? {} : { against: `the ${against} bed` }),
    ...(piped ? { piped } : {}),
    ...(fan === null ? {} : { fan }),
  };
}

const isoDate = (timeS: number): string => new Date(timeS * 1000).toISOString().slice(0, 10);
const dateBefore = (now: Now, days: number): string => isoDate(now.atS - days * SECONDS_PER_DAY);

/** The one day that the stretch names, in the past. */
function dateIn(clause: Clause, plain: string, now: Now): string | null {
  const [first] = clause.pieces;
  const last = clause.pieces.at(-1);
  if (first === undefined || last === undefined) return null;
  const [day] = dayPhrases(plain.slice(first.start, last.end), { ...now, direction: 'past' }, []).filter(({ date }) => date !== null);
  if (day === undefined || day.date === null) return null;
  for (const piece of clause.rest) if (piece.start - first.start < day.end && piece.end - first.start > day.start) clause.take(new RegExp(` ${piece.symbol} `));
  return day.date > isoDate(now.atS) ? `${Number(day.date.slice(0, 4)) - 1}${day.date.slice(4)}` : day.date;
}
