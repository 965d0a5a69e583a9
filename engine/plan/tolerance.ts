import { MOST_TRIPS, type Greenhouse } from '../greenhouse/greenhouse.js';
import { coverEffort } from './candidates.js';
import { bedStakes } from './bed-stakes.js';

type Grower = Greenhouse['grower'];

/** How an evening weighs work against loss. */
export interface Tolerance {
  /** What an hour of work outside is worth, with the weight that calls which were left have given it. */
  readonly hourWorth: number;
  readonly hassle: number;
  readonly lossWeight: number;
}

/** What the grower's own nights say: on how many a call was left, and after how many without a call a crop was harmed. */
export interface ToleranceNights {
  readonly left: number;
  readonly lost: number;
}

const NO_TOLERANCE_NIGHTS: ToleranceNights = { left: 0, lost: 0 };

/** Needless trips that one saved bed is worth, by how careful a grower is (decision rule of this project). */
const TRIPS_PER_SAVED_BED = { relaxed: 3, normal: 5, careful: 10, 'never-lose-it': 20 } as const;
/** A word for how careful to be. */
export type CareWord = keyof typeof TRIPS_PER_SAVED_BED;
/** What a trip weighs beside the bed that it saves, before the grower has said how many trips that is worth: so that five weigh as much as its worth says. */
const USUAL_TRIP_SHARE = 1 / (TRIPS_PER_SAVED_BED.normal + 1);
const HASSLE = { easy: 1, annoying: 1.5, awful: 2.5 } as const satisfies Record<Grower['trip'], number>;
const [LEAST_WEIGHT, MOST_WEIGHT] = [0.5, 4];
const GROWS_WITH_CALL_LEFT = 1.1;
const GROWS_WITH_LOSS = 1.25;

const bounded = (weight: number): number => Math.min(MOST_WEIGHT, Math.max(LEAST_WEIGHT, weight));

const tripsFor = (careful: Grower['careful']): number => (typeof careful === 'number' ? careful : TRIPS_PER_SAVED_BED[careful]);

/**
 * Weight of losses against effort for a grower to whom one saved bed makes up for so many needless trips; 1 for the normal grower.
 * Units: dimensionless.
 * Valid: what a trip costs as a share of what its bed is worth, above 0.
 * Outside: held between 0.5 and 4.
 * Source: decision rule of this project, (1 + N) C/L: then a trip of that share pays from a chance of 1/(1 + N).
 */
export const lossWeightFor = (careful: Grower['careful'], tripShare = USUAL_TRIP_SHARE): number => bounded((1 + tripsFor(careful)) * tripShare);

/**
 * What the grower's trip to the main bed costs as a share of what that bed is worth; null where no bed with crops has a cover, or nothing is worth anything.
 * Where nobody has said how many needless trips a saved bed makes up for it turns the weight into that number, and the first word keeps it: taken
 * anew each evening it would cancel what is said of worth and trip later.
 * Units: dimensionless.
 * Valid: a checked greenhouse; the cover is taken to save all of the bed.
 * Outside: null.
 * Source: decision rule of this project, C/L of the covered bed of most worth.
 */
export function tripShareOf(greenhouse: Greenhouse): number | null {
  const [main] = bedStakes(greenhouse).filter(({ coverMinutes, crops }) => coverMinutes !== null && crops.length > 0).sort((a, b) => b.worth - a.worth);
  if (main === undefined || main.worth <= 0) return null;
  const { hourWorth, trip } = greenhouse.grower;
  return coverEffort({ minutes: main.coverMinutes!, hourWorth, hassle: HASSLE[trip] }) / main.worth;
}

/**
 * How to weigh an evening: what was set, moved by what the nights since then say.
 * Units: money an hour, dimensionless.
 * Valid: nights counted once each.
 * Outside: weights are held between 0.5 and 4.
 * Source: decision rule of this project: a call that was left makes effort weigh 1.1 times as much, a loss without a call losses 1.25 times.
 */
export function toleranceOf({ hourWorth, trip, careful, tripShare }: Pick<Grower, 'hourWorth' | 'trip' | 'careful' | 'tripShare'>, nights: ToleranceNights = NO_TOLERANCE_NIGHTS): Tolerance {
  return {
    hourWorth: hourWorth * bounded(GROWS_WITH_CALL_LEFT ** nights.left),
    hassle: HASSLE[trip],
    lossWeight: bounded(lossWeightFor(careful, tripShare) * GROWS_WITH_LOSS ** nights.lost),
  };
}

/** How many needless trips one saved bed makes up for, as calls stand now. */
export interface TripsHeld {
  /** Whole trips. */
  readonly trips: number;
  /** What a trip costs as a share of what its bed is worth, with which these trips weigh as much as losses weigh now. */
  readonly tripShare: number;
  /** What the words for it come to, in whole trips. */
  readonly named: Readonly<Record<CareWord, number>>;
}

/**
 * How many needless trips one saved bed makes up for, as calls stand now. Kept with its share when a number is said, so that who says this number
 * moves nothing, and who says more is never called less.
 * Units: trips.
 * Valid: a checked greenhouse.
 * Outside: between 0 and the most that a file takes.
 * Source: decision rule of this project, N = lambda L/C - 1.
 */
export function tripsHeld(greenhouse: Greenhouse, nights: ToleranceNights = NO_TOLERANCE_NIGHTS): TripsHeld {
  const { grower } = greenhouse;
  const { lossWeight } = toleranceOf(grower, nights);
  const trips = Math.round(tripsOf(lossWeight, grower.tripShare ?? tripShareOf(greenhouse) ?? USUAL_TRIP_SHARE));
  const tripShare = lossWeight / (1 + trips);
  const of = (word: CareWord): number => Math.round(tripsOf(lossWeightFor(word), tripShare));
  return { trips, tripShare, named: { relaxed: Math.min(trips, of('relaxed')), normal: of('normal'), careful: of('careful'), 'never-lose-it': Math.max(trips, of('never-lose-it')) } };
}

const tripsOf = (lossWeight: number, tripShare: number): number => Math.min(MOST_TRIPS, Math.max(0, lossWeight / tripShare - 1));

const CARE_WORDS = Object.keys(TRIPS_PER_SAVED_BED) as CareWord[];
/** Weights that came about by division. */
const SAME_WEIGHT = 1e-9;

/** The next word that is more careful than what is set, or less; undefined beyond the last. Units: none. Valid: any setting. Outside: undefined. Source: decision rule of this project. */
export function nextCareWord({ careful, tripShare }: Pick<Grower, 'careful' | 'tripShare'>, step: 1 | -1): CareWord | undefined {
  const now = lossWeightFor(careful, tripShare);
  return step === 1 ? CARE_WORDS.find((word) => lossWeightFor(word) > now + SAME_WEIGHT) : CARE_WORDS.findLast((word) => lossWeightFor(word) < now - SAME_WEIGHT);
}

/** What a word sets: itself, or the number that stands for it where trips are counted by a share of the grower's own. Units: trips. Valid: any setting. Outside: between 0 and the most that a file takes. Source: decision rule of this project. */
export const carefulBy = (word: CareWord, { tripShare }: Pick<Grower, 'tripShare'>): Grower['careful'] => (tripShare === undefined ? word : tripsOf(lossWeightFor(word), tripShare));
