import { celsiusToKelvin } from '../units.js';
import { explanationsOf, typedTempK, type ExpectedTemp, type Explanation, type TypedReading } from './reading-gate-explanations.js';

/** What is known of the thermometer that was read. */
export interface ThermometerPast {
  /** Settled lows of the nights before, the last first. */
  readonly lowsK: readonly number[];
  /** The coldest that was ever settled on it; null before the first. */
  readonly coldestK: number | null;
  /** What it showed at other times of the same night: no low can be above that. */
  readonly shownThatNightK: readonly number[];
}

export const NEW_THERMOMETER: ThermometerPast = { lowsK: [], coldestK: null, shownThatNightK: [] };

/** `bound`: the night was no colder than this. `ask`: nothing is learned from it until the grower has answered. */
export type GateOutcome = 'accept' | 'bound' | 'ask';

/** Why it is asked: the number cannot be, contradicts what the same thermometer showed, or is far from what was expected. */
export type GateReason = 'impossible' | 'contradicts' | 'unlikely';

export interface GateVerdict {
  readonly outcome: GateOutcome;
  readonly tempK: number;
  readonly reason?: GateReason;
  /** Scales of the expected temperature from its centre; null where nothing was expected. */
  readonly deviation: number | null;
  /** Everything that may be behind the number, likeliest first; empty where nothing was expected. */
  readonly explanations: readonly Explanation[];
  /** What to offer, likeliest first: other numbers and the sun, never what was typed. */
  readonly suggestions: readonly Explanation[];
  /** The first suggestion is likely enough to be asked for by itself. */
  readonly isSuggestionLikely: boolean;
}

/** Temperatures that a house or its garden can have (decision rule of this project). */
const POSSIBLE_C = { lowest: -45, highest: 60 } as const;
/** Farther off than this is asked: one of twenty-five good readings at most, where the expectation is as sharp as it says (project estimate). */
const ASK_BEYOND = 3;
/** A named error this likely is asked about even nearer by: a needless question costs a word, a wrong sign a week of learning (project estimate). */
const ASK_FROM = 0.15;
/** A suggestion this likely, and this many times as likely as what was typed, is asked for by itself (decision rule of this project). */
const LIKELY = 0.3;
const TIMES_AS_TYPED = 3;
/** A low that was not reset is taken as a bound without a question from here on (project estimate): as a bound it does no harm. */
const BOUND_FROM = 0.3;
/** How far a low may stand above what the same thermometer showed that night (decision rule of this project). */
const SAME_THERMOMETER_K = 0.5;
/** Weaker suggestions only confuse, and more than these nobody reads (project estimate). */
const LEAST_SUGGESTED = 0.03;
const MOST_SUGGESTED = 3;
/** So much colder than anything checked, an expectation is worth less (decision rule of this project). */
const BEYOND_CHECKED_K = 3;
const BEYOND_CHECKED_WIDENS = 1.3;

/**
 * An expectation that lies far below every low that was ever checked is widened: a record night is no error of the grower.
 * Units: K.
 * Valid: any.
 * Outside: not applicable.
 * Source: decision rule of this project.
 */
export function widenedBeyondChecked(expected: ExpectedTemp, coldestCheckedK: number | null): ExpectedTemp {
  const isBeyond = coldestCheckedK !== null && expected.meanK < coldestCheckedK - BEYOND_CHECKED_K;
  return isBeyond ? { ...expected, scaleK: expected.scaleK * BEYOND_CHECKED_WIDENS } : expected;
}

/**
 * Whether a typed reading is learned from, taken as a bound, or asked about, and what to offer then. Nothing is dropped and nothing corrected unasked.
 * Units: as typed, K.
 * Valid: any number; an expectation with a scale above 0, or null where nothing was expected: then only what cannot be is asked.
 * Outside: throws RangeError for a scale of 0 or less.
 * Source: decision rule of this project on explanationsOf; checks of internal consistency as in Durre2010.
 */
export function judgeReading(reading: TypedReading, expected: ExpectedTemp | null, past: ThermometerPast = NEW_THERMOMETER): GateVerdict {
  const tempK = typedTempK(reading.value, reading.unit);
  const isImpossible = tempK < celsiusToKelvin(POSSIBLE_C.lowest) || tempK > celsiusToKelvin(POSSIBLE_C.highest);
  const contradicts = reading.statistic === 'low' && past.shownThatNightK.some((shownK) => tempK > shownK + SAME_THERMOMETER_K);
  const wide = expected === null ? null : widenedBeyondChecked(expected, past.coldestK);
  const explanations = wide === null ? [] : explanationsOf(reading, wide, past.lowsK);
  const deviation = wide === null ? null : (tempK - wide.meanK) / wide.scaleK;
  const suggestions = suggestionsOf(explanations);
  const [best] = suggestions;
  const isSuggestionLikely = best !== undefined && best.probability >= LIKELY && best.probability >= TIMES_AS_TYPED * chanceOf(explanations, 'as-typed');
  const isFar = deviation !== null && Math.abs(deviation) > ASK_BEYOND;
  const reason: GateReason | null = isImpossible ? 'impossible' : contradicts ? 'contradicts' : isFar || suggestions.some(({ kind, probability }) => kind !== 'not-reset' && probability >= ASK_FROM) ? 'unlikely' : null;
  const common = { tempK, deviation, explanations, suggestions, isSuggestionLikely };
  if (!isImpossible && chanceOf(explanations, 'not-reset') >= BOUND_FROM) return { ...common, outcome: 'bound' };
  return reason === null ? { ...common, outcome: 'accept' } : { ...common, outcome: 'ask', reason };
}

const chanceOf = (explanations: readonly Explanation[], kind: Explanation['kind']): number => explanations.find((one) => one.kind === kind)?.probability ?? 0;

const suggestionsOf = (explanations: readonly Explanation[]): readonly Explanation[] =>
  explanations.filter(({ kind, probability }) => kind !== 'as-typed' && kind !== 'unusual' && probability >= LEAST_SUGGESTED).slice(0, MOST_SUGGESTED);
