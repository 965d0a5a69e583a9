import { cropsNamedBefore } from './crop-question.js';
import { isForetold as isForetoldIn } from './foretold.js';
import { meanings, unclear, type Intent, type IntentKind, type Meaning } from './intent.js';
import { withPieces, type Message } from './message.js';
import type { Piece } from './piece.js';
import { plainText } from './plain-text.js';
import { isQuestion } from './question.js';
import { isAllOfOther } from './numbers-of-others.js';
import { unknownWords } from './reading-talk.js';
import { isRemark } from './remarks.js';
import { wordings } from './wordings.js';

/** What must not be lost comes first; questions keep the order in which they were asked. */
const FIRST_TO_LAST: readonly IntentKind[] = ['reading', 'fix', 'did', 'condition', 'outcome', 'mark', 'settings', 'stop'];
const QUESTIONS: ReadonlySet<IntentKind> = new Set(['crop', 'advice', 'outlook', 'suppose', 'effect', 'next', 'why', 'record', 'history']);
/** More parts than this are no quick message: it is then taken as a whole. */
const MOST_PARTS = 8;

/**
 * A message is cut into the parts that together cost least: each part that is understood costs a little, so that nothing is
 * cut without need; a part that nobody understands costs more, and most of all a meaning that is lost in a longer part.
 */
const COST = { understood: 1, chat: 0.5, noise: 1.5, question: 2, doubtfulNumber: 4, lost: 3 } as const;

const STOP = /^[;?]$/;
const JOINT = /^(?:,|-|and|but|also|plus|so|then|however|though|although|because|yet)$/;
/** "Did those barrels i put in do any good" is one question to its end. */
const OPENS_ASKING = /^ (?:did|does|do|has|have|is|are|was|were|will|would) (?:the|them|those|these|that|this|my|our|all|any|@\w+|%\d+|&\w+) /;
/** What a new thing may begin with: a question, or somebody who did or saw something, or a number. */
const ASKS = wordings`
  ^ (?:will (?:the|my|our|it|i|%\d+|they|everything)|should i|shall i|do i|can i|what (?:should|shall|do|if|is|will|about|now)|how (?:cold|is|will|low|
  much)|when (?:should|do|will|is)|is (?:the|it|my|there)|are (?:the|my|we)|any (?:frost|freeze)|why (?:did|do|is|are|should|was|does)) 
`;
const TELLS = wordings`
  ^ (?:covered|uncovered|closed|shut|picked|harvested) (?:the|both|all|my|everything|up) 
  ^ (?:the |my |our )?%\d+ (?:is|are|was|were|looks?|got|made|survived|died|seems?|has|have) 
  ^ (?:i|we) (?:have |had |just |already |also |forgot |did )*(?:covered|closed|shut|opened|turned|put|picked|harvested|forgot|did|lit|ran|pulled|left|
  took|got|added|installed|have|am) 
  ^ (?:it|that|there) (?:is|was|has|got|went|dropped|hit|says) 
  ^ (?:(?:low|high|minimum|maximum|inside|outside|&\w+) (?:was |is |of )?)?#\d+ 
`;
/** What goes on after a comma or an "and" without saying who. */
const GOES_ON = /^ (?:now|covered|closed|shut|opened|picked|turned|put|forgot|power|snow|frost) /;
/** Without a joint a new thing begins only after something that was said already: "wish I had covered" is one. */
const SAYS = /^(?:[#%@&=~$]|power$|electricity$|propane$|gas$|door$|thanks$|dead$)/;
/** After these all that follows up to the next stop is only supposed. */
const SUPPOSES = /^(?:if|suppose|supposing|imagine)$/;

/** Places between pieces where one thing may end and another begin, the ends of the message included. */
function places(pieces: readonly Piece[]): readonly number[] {
  const found = [0];
  let asks = false;
  let supposes = false;
  for (let at = 1; at < pieces.length; at++) {
    const before = pieces[at - 1]?.symbol ?? '';
    // "Since I added the barrels, has it become better?" is one.
    if (SUPPOSES.test(before) || (before === 'since' && pieces[at]?.symbol === 'i' && pieces.at(-1)?.symbol === '?')) supposes = true;
    if (STOP.test(before)) [asks, supposes] = [false, false];
    const rest = ` ${pieces.slice(at, at + 5).map(({ symbol }) => symbol).join(' ')} `;
    const sentence = pieces.slice(found.at(-1), at).map(({ symbol }) => symbol);
    asks ||= OPENS_ASKING.test(` ${sentence.join(' ')} `) || isQuestion(` ${sentence.join(' ')} `, ` ${sentence.join(' ')} `);
    const begins = ASKS.test(rest) || TELLS.test(rest);
    const cut = STOP.test(before) || (!supposes && (JOINT.test(before) ? !asks || begins || GOES_ON.test(rest) : !asks && begins && !/^ #/.test(rest) && sentence.some((symbol) => SAYS.test(symbol))));
    // A row of stops is one.
    if (cut && !STOP.test(pieces[at]?.symbol ?? '') && !JOINT.test(pieces[at]?.symbol ?? '')) {
      found.push(at);
      asks = false;
    }
  }
  return [...found, pieces.length];
}

interface Part {
  readonly from: number;
  readonly to: number;
  readonly intent: Intent;
  readonly hasNumber: boolean;
  /** Its number is of something that is none of ours: "two pies still to bake". */
  readonly isOfOther: boolean;
}

const isForetold = ({ intent }: Part): boolean => intent.kind === 'unclear' && intent.choices?.join() === 'reading,outlook';
const isQuestionLike = (kind: IntentKind): boolean => QUESTIONS.has(kind);

/** Whether a part says something that must not be lost in a longer one: no fragment that could be a word of anything. */
const isSure = ({ intent, hasNumber }: Part, message: Message): boolean => {
  if (intent.kind === 'unclear') return intent.asks !== 'what' && !hasNumber && intent.asks !== 'which-night';
  return FIRST_TO_LAST.includes(intent.kind) || (isQuestionLike(intent.kind) && message.asks);
};

/** Kinds that hold more than themselves. */
const HOLDING: readonly IntentKind[] = ['suppose', 'fix', 'unclear'];

/** Whether the longer part's meaning holds the shorter one's. */
const holds = (longer: IntentKind, shorter: IntentKind): boolean => longer === shorter || (longer === 'suppose' && shorter !== 'reading') || (longer === 'fix' && shorter === 'reading') || ((longer === 'unclear' || longer === 'crop' || longer === 'outcome' || longer === 'advice') && shorter === 'unclear');

function costOf(part: Part, lost: number): number {
  const { intent, hasNumber } = part;
  const own = intent.kind === 'chat' ? COST.chat : intent.kind !== 'unclear' ? COST.understood : isForetold(part) || part.isOfOther ? COST.noise : hasNumber ? COST.doubtfulNumber : intent.asks === 'what' ? COST.noise : COST.question;
  return own + lost * COST.lost;
}

const isOpenCrop = (intent: Meaning): boolean => intent.kind === 'unclear' && intent.asks === 'which-crop' && intent.word === undefined;
const ASKED_ALONE: ReadonlySet<IntentKind> = new Set(['help', 'start', 'erase', 'export']);

/** A story of so many words that are none of a thermometer makes a bare number beside it doubtful. */
const STORY_WORDS = 2;
const isBareAlone = (pieces: readonly Piece[], temps: Message['temps']): boolean => {
  const said = pieces.filter(({ symbol }) => !STOP.test(symbol));
  const temp = temps[Number(/^#(\d+)$/.exec(said[0]?.symbol ?? '')?.[1])];
  return said.length === 1 && temp !== undefined && temp.sign === 'none' && temp.unit === null && !temp.degree && temp.against === null;
};

/** A stretch of the message as a message of its own, with what it means. */
function partOf(message: Message, from: number, to: number, understood: (text: string) => Intent): Part {
  const pieces = message.pieces.slice(from, to);
  const source = plainText(message.text) === message.plain && message.plain.length === message.text.length ? message.text : message.plain;
  const words = source.slice(pieces[0]?.start ?? 0, pieces.at(-1)?.end ?? 0);
  const meant = understood(words);
  // What is a count or a row's name where it stands is no temperature when it is read by itself.
  const intent = !pieces.some(({ symbol }) => symbol.startsWith('#')) && meanings(meant).some(({ kind }) => kind === 'reading' || kind === 'fix') && /\d/.test(words) ? unclear('what') : meant;
  const ofBefore = (isOpenCrop(intent) || (intent.kind === 'outlook' && / will (?:it|they) (?:stand|survive|make|cope|live|take|handle) /.test(withPieces(message, pieces).said))) && message.hits.length > 0 ? cropsNamedBefore(withPieces(message, pieces), message) : null;
  // "-31 outside. Nope. Staying in bed" tells of no work.
  const isMereNo = intent.kind === 'did' && intent.done?.length === 0 && /^\W*(?:no|nope|nah|naw)\W*$/i.test(words);
  // "Help" and the like are asked for alone; in a longer message they are mostly only words.
  const isAlone = ASKED_ALONE.has(intent.kind);
  const told = ofBefore ?? (intent.kind === 'did' ? { ...intent, words: words.replace(/[\s,;.-]+(?:and|but)?\s*$/i, '').trim() } : intent);
  const symbols = pieces.map(({ symbol }) => symbol);
  const rest = [...message.pieces.slice(0, from), ...message.pieces.slice(to)].map(({ symbol }) => symbol);
  if (intent.kind === 'reading' && isBareAlone(pieces, message.temps) && unknownWords(rest) > STORY_WORDS) return { from, to, intent: unclear('which-reading', { word: words.trim() }), hasNumber: true, isOfOther: false };
  const hasNumber = symbols.some((symbol) => symbol.startsWith('#'));
  return { from, to, intent: isAlone || isMereNo ? unclear('what') : told, hasNumber, isOfOther: hasNumber && intent.kind === 'unclear' && isAllOfOther(withPieces(message, pieces)) };
}

/** One thermometer's numbers stay together: what was doubtful as a whole must not become sure by being cut. */
const isAllowed = (parts: readonly Part[]): boolean => {
  const writing = parts.filter(({ intent }) => meanings(intent).some(({ kind }) => kind === 'reading' || kind === 'fix'));
  const numbers = parts.filter(({ intent, hasNumber }) => hasNumber && intent.kind === 'unclear');
  return writing.length <= 1 && (writing.length === 0 || numbers.every((part) => part.isOfOther || isForetold(part)));
};

/** What somebody saw, beside a number that was foretold. */
const SEEN = / (?:&\w+|@cover|thermometer|actually|actual|got|reads|here|there|this morning|last night|overnight|low|minimum|it (?:was|went|hit|dropped|fell|only)) /;

/** The message as several things, where it says several; null where it is one. `understood` reads a text as one thing. */
export function severalThings(message: Message, whole: Intent, understood: (text: string) => Intent): Intent | null {
  const cuts = places(message.pieces);
  if (cuts.length < 3 || cuts.length > MOST_PARTS + 1) return null;
  const ends = cuts.slice(1);
  const atoms = ends.map((to, at) => partOf(message, cuts[at] ?? 0, to, understood));
  const isRegret = ({ intent }: Part): boolean => whole.kind === 'fix' && intent.kind === 'did' && intent.done?.length === 0;
  const sure = atoms.filter((atom) => !isRegret(atom) && isSure(atom, withPieces(message, message.pieces.slice(atom.from, atom.to))));
  // Numbers of one thermometer stay together, and a whole that holds all its parts needs no cutting.
  const isHeld = sure.every(({ intent }) => meanings(whole).some(({ kind }) => holds(kind, intent.kind)));
  if (isHeld || (sure.every(({ intent }) => intent.kind === 'reading') && !atoms.some(isForetold))) return null;
  const known = new Map<string, Part>();
  const part = (from: number, to: number): Part => {
    const key = `${from} ${to}`;
    const found = known.get(key) ?? (from === 0 && to === message.pieces.length ? { from, to, intent: whole, hasNumber: message.temps.length > 0, isOfOther: false } : undefined) ?? atoms.find((atom) => atom.from === from && atom.to === to) ?? partOf(message, from, to, understood);
    known.set(key, found);
    return found;
  };
  // What a run of parts costs at least, known before it is read: one meaning holds only so much.
  const leastCost = (from: number, to: number): number => {
    const inside = sure.filter((atom) => atom.from >= from && atom.to <= to).map(({ intent }) => intent.kind);
    const held = Math.max(0, ...[...new Set<IntentKind>([...inside, ...HOLDING])].map((kind) => inside.filter((one) => holds(kind, one)).length));
    return inside.length === 0 ? COST.chat : COST.understood + (inside.length - held) * COST.lost;
  };
  const lostIn = (one: Part): number => sure.filter((atom) => atom.from >= one.from && atom.to <= one.to && !(atom.from === one.from && atom.to === one.to) && !meanings(one.intent).some(({ kind }) => holds(kind, atom.intent.kind))).length;
  const prices = new Map<Part, number>();
  const best = cheapest(cuts, (from, to) => {
    const one = part(from, to);
    const cost = prices.get(one) ?? costOf(one, lostIn(one));
    prices.set(one, cost);
    return { part: one, cost };
  }, leastCost);
  if (best.length < 2) return null;
  const reads = best.filter(({ intent }) => intent.kind === 'reading');
  // What was foretold may hide in a part that is not understood: "the forecast for tonight, 25".
  const isDoubted = isForetoldIn(message) || best.some((one) => isForetold(one)) || (isForetold(part(0, message.pieces.length)) && best.some(({ intent }) => intent.kind === 'outlook' || (intent.kind === 'unclear' && intent.asks === 'what')));
  if (isDoubted && !reads.every(({ from, to }) => SEEN.test(` ${message.pieces.slice(from, to).map(({ symbol }) => symbol).join(' ')} `))) return null;
  const isTold = (one: Part): boolean => isRemark(withPieces(message, message.pieces.slice(one.from, one.to)), one.intent);
  const isMeant = (one: Part): boolean => !isTold(one) && one.intent.kind !== 'unclear' && one.intent.kind !== 'chat';
  const isBeside = (one: Part): boolean => (one.isOfOther || isForetold(one) ? best.some(({ intent }) => intent.kind !== 'unclear') : isTold(one) && best.some(isMeant));
  return inOrder(message.text, best.filter((one) => !isBeside(one)).flatMap(({ intent }) => meanings(intent)));
}

/** The allowed cutting of least cost; of two that cost the same the one with fewer parts. */
function cheapest(cuts: readonly number[], priced: (from: number, to: number) => { readonly part: Part; readonly cost: number }, leastCost: (from: number, to: number) => number): readonly Part[] {
  let best: { readonly parts: readonly Part[]; readonly cost: number } = { parts: [], cost: Number.POSITIVE_INFINITY };
  const inner = cuts.slice(1, -1);
  const last = cuts.at(-1) ?? 0;
  // The finest cutting comes first: its parts are known, and it shows which others need not be read.
  for (let chosen = 2 ** inner.length - 1; chosen >= 0; chosen--) {
    const edges = [0, ...inner.filter((_, at) => (chosen >> at) % 2 === 1), last];
    const parts: Part[] = [];
    let cost = 0;
    for (let at = 1; at < edges.length && cost <= best.cost; at++) {
      const [from, to] = [edges[at - 1] ?? 0, edges[at] ?? 0];
      if (cost + leastCost(from, to) > best.cost) break;
      const run = priced(from, to);
      parts.push(run.part);
      cost += run.cost;
    }
    if (parts.length === edges.length - 1 && (cost < best.cost || (cost === best.cost && parts.length <= best.parts.length)) && isAllowed(parts)) best = { parts, cost };
  }
  return best.parts;
}

const FINISHED = /^\W*(?:finally |just )?(?:finished|completed|built)\b/i;

type Did = Extract<Meaning, { kind: 'did' }>;

/** "Picked the lettuce, and I did not turn the heater on": deeds of one night that go together are one telling of it. */
function oneDeed(said: readonly Meaning[]): readonly Meaning[] {
  const deeds = said.filter((one): one is Did => one.kind === 'did');
  const [first, ...more] = deeds;
  if (first === undefined || more.length === 0 || deeds.some(({ rest, night, amounts }) => rest !== undefined || amounts !== undefined || night !== first.night)) return said;
  const done = [...new Set(deeds.flatMap((deed) => deed.done ?? []))];
  const not = [...new Set(deeds.flatMap((deed) => deed.not ?? []))];
  if (done.some((item) => not.includes(item)) || deeds.some((deed) => deed.done?.length === 0 || deed.not?.length === 0)) return said;
  const { done: _done, not: _not, words: _words, ...kept } = first;
  const words = deeds.flatMap((deed) => deed.words ?? []).join(', ');
  const whole: Meaning = { ...kept, ...(done.length === 0 ? {} : { done }), ...(not.length === 0 ? {} : { not }), ...(words === '' ? {} : { words }) };
  return said.flatMap((one): readonly Meaning[] => (one === first ? [whole] : one.kind === 'did' ? [] : [one]));
}

/** All that was said, the weightiest first; small talk and what was not understood only where there is nothing else. */
function inOrder(text: string, said: readonly Meaning[]): Intent | null {
  const all = oneDeed(said).map((one) => (one.kind === 'mark' ? { ...one, text: text.trim() } : one));
  const rank = ({ kind }: Meaning): number => (kind === 'unclear' ? FIRST_TO_LAST.length + 1 : FIRST_TO_LAST.includes(kind) ? FIRST_TO_LAST.indexOf(kind) : FIRST_TO_LAST.length);
  const isNightOf = (one: Meaning): boolean => one.kind === 'outlook' && one.place === undefined && all.some((other) => other.kind === 'crop' && other.night === one.night);
  // "Still got tomatoes hanging on, will they survive": how they are is why it is asked.
  const isAskedAbout = (one: Meaning): boolean => one.kind === 'outcome' && one.state === 'fine' && one.night === undefined && all.some((other) => other.kind === 'crop' && ('crop' in other ? [other.crop] : other.crops).includes(one.crop));
  const worth = all.filter((one) => one.kind !== 'chat' && !isAskedAbout(one) && !(one.kind === 'unclear' && one.asks === 'what') && !isNightOf(one) && !(isOpenCrop(one) && all.some(({ kind }) => kind !== 'unclear' && kind !== 'chat')));
  // Who wants no more messages is done with them, and not with the jobs; a number that came along is kept.
  const stop = worth.find(({ kind }) => kind === 'stop');
  const numbers = worth.filter(({ kind }) => kind === 'reading' || kind === 'unclear');
  if (stop !== undefined) return numbers.length === 0 ? stop : { ...stop, also: numbers };
  // "Finished it! I built a wall": what was finished is what was built.
  const built = worth.some(({ kind }) => kind === 'mark') ? worth.filter((one) => !(one.kind === 'did' && FINISHED.test(one.words ?? ''))) : worth;
  const different = built.filter((one, at) => built.findIndex((other) => JSON.stringify(other) === JSON.stringify(one)) === at);
  const [first, ...also] = different.map((one, at) => ({ one, at })).sort((a, b) => rank(a.one) - rank(b.one) || a.at - b.at).map(({ one }) => one);
  if (first === undefined) return null;
  return also.length === 0 ? first : { ...first, also };
}
