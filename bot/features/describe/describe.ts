import type { GreenhouseFile } from '../../../engine/index.js';
import type { Outgoing } from '../../chat.js';
import type { Fact } from '../../language/house/house-fact.js';
import { readFacts } from '../../language/house/read-facts.js';
import { readSignal, type Signal } from '../../language/house/signals.js';
import type { FoundPlace, WeatherFailure } from '../../ports.js';
import { cautionText } from '../../text/caution-text.js';
import { problemText } from '../../text/describe-problem-text.js';
import * as say from '../../text/describe-text.js';
import { answerLater, notedText } from '../../text/describe-summary-text.js';
import { askedOf, fanAnswer, shortAnswer, stoneAnswer, yesOrNo } from './answers.js';
import { applyFacts, completeFile, type DescribeContext } from './apply.js';
import { chosen, withFound } from './choose-place.js';
import { missingFirst, nextAsk } from './next-ask.js';
import { needsSafety } from './put-heat.js';
import { isNightQuestion, isOfANight } from './telling.js';
import { joined, questionFor, readButton } from './reply.js';
import { besideOf, FRESH, type Ask, type Beside, type DescribeState } from './state.js';
import { steer } from './steer.js';
import { lineText, viewOf, summaryOf } from './summary.js';
import type { Taken } from './taken.js';

export type { DescribeContext } from './apply.js';
export { besideOf, readState, writeState, type Beside, type DescribeState, type Thermometer } from './state.js';

/** What the grower said, in one of the ways that a channel can bring; `places` is the answer to `look`. */
export interface Said {
  readonly text?: string;
  readonly location?: { readonly latitude: number; readonly longitude: number };
  /** Id of a pressed button. */
  readonly button?: string;
  readonly places?: { readonly town: string; readonly found: readonly FoundPlace[] } | { readonly town: string; readonly failure: WeatherFailure };
}

export interface DescribeStep {
  readonly state: DescribeState;
  /** To be sent, unless `look` is set: then the reply to the places that were found stands for both. */
  readonly reply: Outgoing;
  /** The greenhouse, once place, size, shape and layers are known. */
  readonly file?: GreenhouseFile;
  /** The greenhouse has just become complete: send the first advisory after the reply, and `after` behind it. */
  readonly isFirst: boolean;
  readonly after?: Outgoing;
  /** A town to look up; hand the places back with `said.places`. */
  readonly look?: { readonly town: string };
  /** What the file has no room for; to be kept with it. */
  readonly beside: Beside;
  /** Something of the message was understood. */
  readonly understood: boolean;
  /** Nothing is left to ask; the state need not be kept. */
  readonly isFinished: boolean;
}

/** First words of a new description; where one was begun, it goes on where it stopped. */
export function start(state: DescribeState | null, context: DescribeContext): DescribeStep {
  const isNew = state === null || state.asking === null;
  const begun = state ?? FRESH;
  return finishStep({ state: { ...begun, paused: false }, parts: isNew ? [say.INTRODUCTION] : [say.WELCOME_BACK], lines: [], problems: [], understood: true }, context);
}

/**
 * One message of the grower, and what to answer; null before the first one, who is then told who speaks. Pure: the caller
 * keeps the state, sends the reply and looks towns up.
 */
export function describeStep(before: DescribeState | null, said: Said, context: DescribeContext): DescribeStep {
  const state: DescribeState = { ...(before ?? FRESH), paused: false };
  const welcome = before === null ? [say.INTRODUCTION] : before.paused ? [say.WELCOME_BACK] : [];
  const taken = take(state, said, context);
  return finishStep({ ...taken, parts: [...welcome, ...taken.parts] }, context);
}

function take(state: DescribeState, said: Said, context: DescribeContext): Taken {
  if (said.places !== undefined) return withFound(state, said.places);
  if (said.location !== undefined) return takeFacts(state, [{ about: 'coordinates', ...said.location }], [], context);
  const pressed = said.button === undefined ? null : readButton(said.button);
  const asking = state.asking ?? nextAsk(state, context);
  if (pressed !== null) {
    // A button of an old question counts only where its words say all by themselves.
    const isOld = asking === null || pressed.topic !== asking.topic || pressed.detail !== asking.detail;
    return isOld && readSignal(pressed.says) !== null ? { state, parts: [], lines: [], problems: [], understood: false } : takeText(state, pressed.says, asking, context);
  }
  return takeText(state, said.text ?? '', asking, context);
}

/** Longer messages are read so far, and the grower is told: a description fits well into this. */
const MOST_CHARACTERS = 1200;

function takeText(state: DescribeState, said: string, ask: Ask | null, context: DescribeContext): Taken {
  const text = said.slice(0, MOST_CHARACTERS);
  const signal: Signal | null = readSignal(text);
  if (ask?.detail === 'choice') {
    const place = chosen(state, text, signal);
    if (place !== null) return place;
  }
  if (acknowledgesFlame(state, text)) return takeRead(state);
  if (signal !== null) {
    const facts = ask === null ? null : yesOrNo(ask, signal.kind, state);
    if (facts !== null) return takeFacts(state, facts, [], context);
    const steered = steer(state, signal, ask, context);
    if (steered !== null) return steered;
  }
  const place = state.file.place;
  const zone = place === undefined ? 'UTC' : context.zoneAt(place.latitude, place.longitude);
  const hearing = { atS: context.nowS, zone, units: state.file.grower?.units ?? 'C', crops: context.cropWords };
  const asks = isNightQuestion(text, hearing);
  if (asks && !state.announced) return { state, parts: [answerLater(missingFirst(state))], lines: [], problems: [], understood: false };
  const short = ask === null || asks ? null : shortAnswer(ask, text, state);
  if (short !== null) return takeFacts(state, short, [], context);
  const read = readFacts(text, { crops: context.cropWords, now: { atS: context.nowS, zone }, asked: ask === null ? null : askedOf(ask) });
  const foreign = asks || (state.announced && isOfANight(text, read.facts, { ...hearing, ask }));
  return takeFacts(state, foreign ? [] : redirected(read.facts, ask, state), said.length > MOST_CHARACTERS ? [...read.left, say.THE_REST] : read.left, context);
}

/** The safety words are acknowledged in so many words, whenever that comes. */
const HAS_READ = /\bi(?:['’]ve| have)? read\b|\b(?:safety|cautions?)(?: words?)?(?: are| is| have been| were)? read\b|^\W*read(?: it| them| that)?\W*$/iu;

/** Whether a message acknowledges the safety words of a flame that waits for it. */
export const acknowledgesFlame = ({ file }: DescribeState, text: string): boolean => needsSafety(file) && HAS_READ.test(text);

export function takeRead(state: DescribeState): Taken {
  const { heater } = state.file;
  if (heater === undefined) return { state, parts: [], lines: [], problems: [], understood: false };
  return { state: { ...state, missed: 0, file: { ...state.file, heater: { ...heater, safetyRead: true } } }, parts: [], lines: ['heater'], problems: [], understood: true };
}

/** Figures that answer a question go to the thing that was asked about. */
function redirected(facts: readonly Fact[], ask: Ask | null, state: DescribeState): readonly Fact[] {
  if (ask?.detail === 'amount') return facts.map((fact) => stoneAnswer(fact, state));
  return ask?.detail === 'airflow' || ask?.detail === 'battery' ? facts.map((fact) => (fact.about === 'fan' ? fanAnswer(fact.fan, state) : fact)) : facts;
}

/** Puts facts into the description, for a message that was read elsewhere. */
export function takeFacts(state: DescribeState, facts: readonly Fact[], left: readonly string[], context: DescribeContext): Taken {
  if (facts.length === 0) return { state: { ...state, missed: state.missed + 1 }, parts: [say.NOT_UNDERSTOOD], lines: [], problems: [], understood: false };
  const applied = applyFacts(state, facts, context);
  const hung = state.asking?.detail === 'hang';
  const parts = left.length > 0 ? [say.leftOver(left)] : [];
  return { ...applied, state: { ...applied.state, missed: 0, ...(hung ? { hangAsked: true } : {}) }, parts, understood: applied.lines.length > 0 };
}

/** Tired of a question that is not understood: it is said how to pass it. */
const TIRED = 2;

/** What to answer, and what to ask next. */
export function finishStep(taken: Taken, context: DescribeContext): DescribeStep {
  const { lines, problems } = taken;
  if (taken.state.looking !== null && taken.isWhole !== true) {
    const { looking } = taken.state;
    const state = { ...taken.state, owed: [...new Set([...taken.state.owed, ...lines.filter((line) => line !== 'place')])] };
    return { state, reply: { text: joined([...taken.parts, ...problems.map(problemText)], { text: say.lookingFor(looking) }).text }, look: { town: looking }, isFirst: false, beside: besideOf(state), understood: true, isFinished: false };
  }
  const view = viewOf(taken.state);
  const shown = lines.map((line) => ({ line, words: lineText(line, view) }));
  const cautions = lines.includes('heater') && taken.state.file.heater?.kind === 'electric' ? [cautionText('heater-electric')] : [];
  const said = [...taken.parts.filter((part) => part !== say.NOT_UNDERSTOOD || problems.length === 0), ...problems.map(problemText), notedText(shown), ...cautions];
  const file = completeFile(taken.state);
  const common = { ...(file === null ? {} : { file }), beside: besideOf(taken.state), understood: taken.understood };
  if (taken.isWhole === true) return { ...common, state: taken.state, reply: joined(said, null), isFirst: false, isFinished: taken.state.asking === null && !taken.state.paused };
  // A question that was not answered stands, also one that was gone back to.
  const ask = taken.ask ?? (taken.understood ? null : taken.state.asking) ?? nextAsk(taken.state, context);
  const isFirst = file !== null && !taken.state.announced && taken.state.mode === 'set-up';
  const state: DescribeState = { ...taken.state, asking: ask, announced: taken.state.announced || isFirst };
  if (ask === null) {
    const ending = state.mode === 'change' ? (taken.understood && lines.length > 0 ? [say.CHANGED] : []) : [say.ALL_ASKED, summaryOf(viewOf(state))];
    return { ...common, state, reply: joined([...(state.mode === 'change' ? ending : []), ...said, ...(state.mode === 'change' ? [] : ending)], null), isFirst, isFinished: true };
  }
  const question = questionFor(ask, state);
  if (isFirst) return { ...common, state, reply: joined([...said, say.NOW_TONIGHT], null), isFirst, after: question, isFinished: false };
  const hint = state.missed >= TIRED && !['place', 'size', 'layers'].includes(ask.topic) ? [say.SAY_SKIP] : [];
  return { ...common, state, reply: joined([...said, ...hint], question), isFirst, isFinished: false };
}
