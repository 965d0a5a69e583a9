import { Clause } from './clause.js';
import type { Piece } from './house-text.js';

/** What a stretch of a description is about. "house" is the frame, film, ground and place, and the grower's own wishes. */
export type Subject = 'house' | 'beds' | 'water' | 'stones' | 'stone-box' | 'wall' | 'edge' | 'curtain' | 'vents' | 'tubes' | 'fan' | 'compost' | 'heater' | 'thermometer';

export interface Stretch {
  readonly subject: Subject;
  /** The thing itself is named, and not only answered about. */
  readonly isNamed: boolean;
  readonly clause: Clause;
  /** Said not to be there, or to be gone. */
  readonly denied: boolean;
}

const SOFT = new Set([',', 'and', 'with', 'plus', 'but', 'also', 'then', 'or', 'nor', 'while']);
const HARD = new Set([';', '?']);

/** "along the north wall": where something is, not what it is. */
const AT = '(?:behind|against|near|by|along|beside|between|around|above|below|at|on|next|from|under|over|to)(?: (?:to|the|my|our|a|an|each|every|both|north|south|east|west|middle|left|right|front|back))*';
const unplaced = (symbols: string): RegExp => new RegExp(`(?<! ${AT}) (?:${symbols}) `);

/** From the most particular to the most general: the first that is there names the stretch. */
const HEADS: readonly (readonly [Subject, RegExp])[] = [
  ['thermometer', / @thermometer /],
  ['edge', / @edge /],
  ['heater', / (?:@heater|@eheater|@gasheater|@propane|@kerosene|@wood|@candle|@naturalgas|unheated) | (?:no|any|without) heat | @(?:electric|gas) (?:#P\d+|_) | #P\d+ (?:of )?@(?:electric|gas) /],
  ['stone-box', / @stonebox /],
  ['stone-box', / (?:box|boxes|crate|bin) (?:\S+ ){0,3}?@(?:rock|gravel|brick) | @(?:rock|gravel|brick) (?:\S+ ){0,4}?(?:in|inside|under|behind) (?:\S+ ){0,2}?(?:box|crate|bin|@glass) /],
  ['compost', unplaced('@compost')],
  ['tubes', unplaced('@tube')],
  ['fan', / (?:@airfan|@fan) /],
  ['curtain', unplaced('@curtain')],
  ['wall', unplaced('@wall')],
  ['water', unplaced('@drum') ],
  ['water', / #V\d+ of @?water /],
  ['stones', unplaced('@rock|@gravel|@brick|@concrete')],
  ['vents', unplaced('@vent')],
  ['beds', / (?:@cover|@lowtunnel|%\d+) /],
  ['beds', unplaced('@bed')],
];

const FRAME = / (?:@hoops|@half-round|@gothic|@gable|@lean-to|@dome|@house|@two|@single|@layer|@second|@film|@thermal|@ir|@glass|@panels|@blower|@soil|@sand|@loam|@clay|@peat|@rich|@path|@eastwest|@northsouth|@tight|@leaky|@open|@wooded|@town|~\d+|fahrenheit|celsius|centigrade|metric|imperial|evening|morning|bedtime|near|called|named) /;
const LENGTHS = / #[LN]\d+ (?:wide|long|tall|high|deep|across) | #[LN]\d+ (?:feet )?(?:x|by) #[LN]\d+ | (?:width|length|height|peak|ridge) /;
/** What a length can belong to but the house. */
const HAS_LENGTHS: ReadonlySet<Subject> = new Set<Subject>(['tubes', 'wall', 'thermometer', 'edge', 'beds', 'stones', 'compost', 'vents', 'stone-box']);
const HOLDS_FAN: ReadonlySet<Subject> = new Set<Subject>(['tubes', 'compost', 'stone-box', 'heater', 'fan']);

/** A denial just before the thing itself: "no heater", "do not have any drums"; "heater without thermostat" denies no heater. */
const NO = '(?:no|not|without|never|neither|nor|none|zero)(?: (?:have|got|own|use|any|a|an|the|of|real|such|extra|water|row|more|used|using|need|yet))*';
const DENIED: Readonly<Record<Subject, RegExp>> = {
  house: / (?:no|not|without|never) (?:\S+ ){0,3}?(?:@blower|@second|@layer|@leaky|@tight) /,
  beds: new RegExp(` ${NO} (?:@(?:light|medium|heavy) )?(?:@cover|@lowtunnel|%\\d+|@bed) `),
  water: new RegExp(` ${NO} (?:@black )?(?:@drum|@water) `),
  stones: new RegExp(` ${NO} (?:@black )?(?:@rock|@gravel|@brick|@concrete) `),
  'stone-box': new RegExp(` ${NO} @stonebox `),
  wall: new RegExp(` ${NO} (?:@foam )?@wall `),
  edge: new RegExp(` ${NO} @edge `),
  curtain: new RegExp(` ${NO} @curtain `),
  vents: new RegExp(` ${NO} @vent `),
  tubes: new RegExp(` ${NO} @tube `),
  fan: new RegExp(` ${NO} (?:@airfan|@fan) `),
  compost: new RegExp(` ${NO} @compost `),
  heater: new RegExp(` ${NO} (?:@electric |@propane |@gas |@kerosene )?(?:@heater|@eheater|@gasheater|@candle|@wood|@propane|@kerosene|heat) | (?:unheated|not heated) `),
  thermometer: new RegExp(` ${NO} @thermometer `),
};
const GONE = / (?:took|taken|pulled|moved|hauled|carried|tore|ripped|dug) .*(?:out|down|away|apart|off) | (?:removed|remove|sold|scrapped|dismantled|got rid of|gave away|threw out|threw away|lost|delete|drop|is gone|are gone|gone|no longer|not any more|not anymore|no more|any more|anymore|without) /;

interface Mini {
  readonly pieces: readonly Piece[];
  readonly before: string;
}

function minis(pieces: readonly Piece[]): readonly Mini[] {
  const found: Mini[] = [];
  let part: Piece[] = [];
  let before = '';
  const close = (separator: string): void => {
    if (part.length > 0) found.push({ pieces: part, before });
    part = [];
    before = separator;
  };
  for (const piece of pieces) {
    if (HARD.has(piece.symbol)) close(';');
    else if (SOFT.has(piece.symbol)) close(piece.symbol === ',' && before !== '' && part.length === 0 ? before : piece.symbol);
    else part.push(piece);
  }
  close('');
  return found;
}

/** "No, it is 30 feet long": the no answers, and denies nothing of what follows. */
const ANSWERING = /^ (?:no|nope|nah|yes|yep|yeah|ok|actually|wait|sorry|oops|hm|hmm) (?=(?:it|the|its|that|this|we|i|make|there|now|my|our|#\S+) )/;
const withoutAnswer = (pieces: readonly Piece[]): readonly Piece[] => {
  let rest = pieces;
  while (ANSWERING.test(formOf(rest)) && !/^ no (?:the|my|our) /.test(formOf(rest))) rest = rest.slice(1);
  return rest;
};

const formOf = (pieces: readonly Piece[]): string => ` ${pieces.map(({ symbol }) => symbol).join(' ')} `;

function headOf(form: string): Subject | null {
  const head = HEADS.find(([, pattern]) => pattern.test(form));
  // "Compost in the soil" is soil.
  if (head?.[0] === 'compost' && / (?:@soil|@rich|@bed) /.test(form) && / (?:in|into|mixed|soil|full|lots|@soil) /.test(form) && !/ (?:heap|against|started) /.test(form)) return null;
  // "Raised beds full of compost" and "the beds are clay" too.
  if (head?.[0] === 'beds' && !/ (?:@cover|@lowtunnel|%\d+) /.test(form) && / @(?:soil|sand|loam|clay|peat|rich) /.test(form)) return null;
  return head?.[0] ?? null;
}

interface Open {
  subject: Subject;
  pieces: Piece[];
  denied: boolean;
}

/** Cuts a description where it goes from one thing to the next. `expected`: what a question just asked for. */
export function stretchesOf(pieces: readonly Piece[], expected: Subject | null): readonly Stretch[] {
  const open: Open[] = [];
  let hardBreak = true;
  for (const mini of minis(pieces).map((one) => ({ ...one, pieces: withoutAnswer(one.pieces) }))) {
    if (mini.before === ';') hardBreak = true;
    const form = formOf(mini.pieces);
    const previous = hardBreak ? null : (open.at(-1) ?? null);
    const subject = subjectOf(form, { head: headOf(form), previous: previous?.subject ?? null, expected });
    const denied = DENIED[subject].test(form) || GONE.test(form) || ((mini.before === 'or' || mini.before === 'nor') && previous?.denied === true);
    const joined = previous !== null && previous.subject === subject && joins(form, subject, previous);
    const separator: Piece = { symbol: ',', written: ',', start: mini.pieces[0]!.start, end: mini.pieces[0]!.start };
    if (joined) {
      // "Nothing at all, no heat": the second says what the first is about.
      previous.denied ||= denied && headOf(formOf(previous.pieces)) !== subject;
      previous.pieces.push(separator, ...mini.pieces);
    }
    else open.push({ subject, pieces: [...mini.pieces], denied });
    hardBreak = false;
  }
  return gathered(open).map(({ subject, pieces: own, denied }) => ({ subject, isNamed: headOf(formOf(own)) === subject, clause: new Clause(own), denied }));
}

function subjectOf(form: string, at: { readonly head: Subject | null; readonly previous: Subject | null; readonly expected: Subject | null }): Subject {
  const { head, previous, expected } = at;
  const before = previous ?? expected;
  if (head === 'fan' && previous !== null && HOLDS_FAN.has(previous) && !/ @airfan /.test(form)) return previous;
  if (head === 'vents' && previous === 'heater') return previous;
  if (expected === 'thermometer' && head === 'beds' && !/ %\d+ /.test(form)) return expected;
  if (head !== null) return head;
  // "Low tunnels, with plastic": the film is that of the cover.
  if (before === 'beds' && / @film /.test(form) && !/ (?:@layer|@two|@single|@double|@second|@hoops|@house) /.test(form)) return before;
  const framed = FRAME.test(form);
  const spans = LENGTHS.test(form);
  if (before !== null && before !== 'house' && !framed && (!spans || HAS_LENGTHS.has(before))) return before;
  return 'house';
}

const ANOTHER = /^ (?:#N\d+|another|the other|the second) /;

/** Whether the words go on about the same thing, or begin with another of its kind ("and 10 buckets"). */
function joins(form: string, subject: Subject, previous: Open): boolean {
  if (subject === 'house' || subject === 'beds') return true;
  if (subject === 'thermometer' && ANOTHER.test(form)) return false;
  const head = headOf(form);
  if (head !== subject) return true;
  return !/ #\w+ /.test(form) || !/ #\w+ /.test(formOf(previous.pieces));
}

/** All that is said of the frame is read as one: size, film and place may stand anywhere. */
function gathered(open: readonly Open[]): readonly Open[] {
  const house = open.filter(({ subject, denied }) => subject === 'house' && !denied);
  if (house.length <= 1) return open;
  const all: Open = { subject: 'house', denied: false, pieces: house.flatMap(({ pieces }, at) => (at === 0 ? pieces : [{ symbol: ',', written: ',', start: pieces[0]!.start, end: pieces[0]!.start }, ...pieces])) };
  return [all, ...open.filter((one) => !house.includes(one))];
}
