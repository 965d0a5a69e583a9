import { brierPartsOf, brierScore, type BrierParts, type StatedChance } from './brier.js';

/** A chance and the word it was spoken in. Cases of one night hang on the same miss of its forecast. */
export interface SpokenChance<Spoken extends string> extends StatedChance {
  readonly spokenAs: Spoken;
  readonly night: string;
}

/** How one word held. */
export interface WordReliability<Spoken extends string> {
  readonly spokenAs: Spoken;
  readonly cases: number;
  readonly nights: number;
  readonly meanChance: number;
  readonly happened: number;
  /** Counts between which nine in ten lie where the chances are sound. */
  readonly soundFrom: number;
  readonly soundTo: number;
  /** Chance of so few or fewer, and of so many or more, where the chances are sound. */
  readonly chanceOfSoFew: number;
  readonly chanceOfSoMany: number;
}

export interface ReliabilityTable<Spoken extends string> {
  /** In the order of the words; those that were never spoken are left out. */
  readonly words: readonly WordReliability<Spoken>[];
  /** Of the words that were spoken often enough, which are its bins; null where none was. */
  readonly brier: { readonly cases: number; readonly score: number; readonly parts: BrierParts } | null;
}

/** A bin with fewer cases says nothing of its rate (decisions reference 2.5: five bins at most, of ten cases at least). */
const LEAST_CASES = 10;
const TAIL = 0.05;

/**
 * What came of chances, by the word in which they were spoken.
 * Units: counts; probabilities 0-1.
 * Valid: any number of cases; words in the order in which they are wanted.
 * Outside: throws OutOfRangeError for what is no probability.
 * Source: Murphy1973 for score and parts; range of a sound count from the chances themselves (see countChances).
 */
export function reliabilityTable<Spoken extends string>(cases: readonly SpokenChance<Spoken>[], words: readonly Spoken[]): ReliabilityTable<Spoken> {
  const spoken = words.map((word) => cases.filter(({ spokenAs }) => spokenAs === word)).filter(({ length }) => length > 0);
  const often = spoken.filter(({ length }) => length >= LEAST_CASES);
  return {
    words: spoken.map(reliabilityOf),
    brier: often.length === 0 ? null : { cases: often.flat().length, score: brierScore(often.flat()), parts: brierPartsOf(often) },
  };
}

function reliabilityOf<Spoken extends string>(cases: readonly SpokenChance<Spoken>[]): WordReliability<Spoken> {
  const happened = cases.filter((one) => one.happened).length;
  const byNight = [...new Set(cases.map(({ night }) => night))].map((night) => cases.filter((one) => one.night === night).map(({ probability }) => probability));
  const chances = countChances(byNight);
  const upTo = (count: number): number => chances.slice(0, count + 1).reduce((sum, chance) => sum + chance, 0);
  const from = (count: number): number => chances.slice(count).reduce((sum, chance) => sum + chance, 0);
  return {
    spokenAs: cases[0]!.spokenAs,
    cases: cases.length,
    nights: byNight.length,
    meanChance: cases.reduce((sum, { probability }) => sum + probability, 0) / cases.length,
    happened,
    soundFrom: chances.findIndex((_, count) => upTo(count) > TAIL),
    soundTo: chances.findLastIndex((_, count) => from(count) > TAIL),
    chanceOfSoFew: Math.min(1, upTo(happened)),
    chanceOfSoMany: Math.min(1, from(happened)),
  };
}

/**
 * Chance of every count of events, from none to all, where the chances that were given are true.
 * Units: probabilities 0-1.
 * Valid: chances of each night; nights apart from each other.
 * Outside: not checked.
 * Source: definition. Within a night the events go together, the likelier coming with every less likely one, as one miss of the low moves all
 * plants; over nights the counts add up independently. With one event a night it is the binomial distribution of unequal chances.
 */
export function countChances(byNight: readonly (readonly number[])[]): readonly number[] {
  return byNight.reduce<readonly number[]>((before, night) => {
    const falling = [1, ...[...night].sort((a, b) => b - a), 0];
    const ofNight = falling.slice(0, -1).map((atLeast, count) => atLeast - falling[count + 1]!);
    const sums = new Array<number>(before.length + night.length).fill(0);
    before.forEach((chance, count) => ofNight.forEach((more, added) => (sums[count + added]! += chance * more)));
    return sums;
  }, [1]);
}
