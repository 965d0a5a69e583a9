import type { Greenhouse } from '../greenhouse/greenhouse.js';
import { toHouse } from '../greenhouse/to-house.js';
import { nightsLearnedFrom } from '../learn/learned-house.js';
import { rebuiltHouse } from '../learn/rebuilt-house.js';
import type { ControlPlan, Controls } from '../night/controls.js';
import { runNight, type NightRun } from '../night/night-run.js';
import type { PlaceKey } from '../night/places.js';
import { normalQuantile } from '../chance/normal.js';
import type { NightChoices } from './action.js';
import { controlsOfChoices, usualControls } from './controls-of-choices.js';
import { eveningScene, type EveningInput } from './evening-scene.js';
import { planOutlook, placeOfNode, type PlanOutlook } from './outlook.js';

/** By how much the low of a place changes, in K, warmer positive. */
export interface PlaceChange {
  /** The air of the house, or the air at the plants of a bed, under their cover where one lies on them. */
  readonly at: 'inside' | 'plants';
  readonly bed: string | null;
  readonly meanK: number;
  readonly q10K: number;
  readonly q90K: number;
}

export interface SupposedNight {
  readonly outlook: PlanOutlook;
  readonly changes: readonly PlaceChange[];
}

/** What a night is compared with. */
export interface ComparedNight {
  readonly greenhouse: Greenhouse;
  readonly pastControls?: ControlPlan;
  readonly outlook: PlanOutlook;
  /** Beds that lie under a cover in it. */
  readonly coveredBeds: readonly string[];
}

/**
 * Error of a computed change of 1.12 K: 0.48 K before any reading, 0.41, 0.36, 0.34, 0.32 and 0.30 K after 3, 7, 14, 30 and 60 dawns
 * (reference of this project on decisions, section 8.5, from a synthetic study). A curve through these, within 0.02 K.
 */
const STUDIED_CHANGE_K = 1.12;
const ERROR_LEFT_K = 0.28;
const ERROR_LEARNED_K = 0.2;
const HALF_LEARNED_NIGHTS = 5;
const relativeError = (nights: number): number => (ERROR_LEFT_K + ERROR_LEARNED_K / (1 + nights / HALF_LEARNED_NIGHTS)) / STUDIED_CHANGE_K;

/**
 * What is put up, laid or lit brings properties of its own that no reading has taught: film .18, exchange at the film .23, leakage .12 K
 * at the dawn low by their priors, together about this much, also where gain and loss cancel (reference of this project on physics, section 17).
 */
const OWN_ERROR_K = 0.3;
/** Below this nothing was changed. */
const NOTHING_K = 0.005;
const Q90 = normalQuantile(0.9);

/**
 * The same night in a house or under choices that are not so, scenario by scenario beside the night that is.
 * Units: K.
 * Valid: an evening with the same weather and instant as the night that it is compared with.
 * Outside: throws when a step of the night does not settle; beds that only one of both houses has are left out.
 * Source: physics of engine/night; the error of a change as named above.
 */
export function supposeNight(input: EveningInput, choices: NightChoices, actual: ComparedNight): SupposedNight {
  const { house, standing, evening, scenarios, residual, forcings, crops, nightStartS, nightEndS } = eveningScene(withPastOfItsOwn(input, actual));
  const coveredBeds = house.columns.filter((column, c) => standing.coverOn[c] || (column.rowCover !== null && choices.covers.has(column.name))).map(({ name }) => name);
  const controls = controlsOfChoices(house, standing, choices);
  const runs = forcings.map((forcing) => runNight(evening, forcing, controls));
  const outlook = planOutlook(runs, scenarios, crops, { residual, nightStartS, nightEndS, coveredBeds });
  const weights = scenarios.map(({ weight }) => weight);
  const relative = relativeError(input.learned ? nightsLearnedFrom(input.learned, input.greenhouse.place) : 0);
  const change = (at: PlaceChange['at'], bed: string | null): PlaceChange | null => {
    const keyUnder = (covered: readonly string[]): PlaceKey => (bed === null ? { place: 'inside' } : placeOfNode('air-at-plant', bed, covered));
    const lows = (all: readonly NightRun[], key: PlaceKey): readonly number[] | null => lowsAt(all, key, { nightStartS, nightEndS });
    const before = lows(actual.outlook.runs, keyUnder(actual.coveredBeds));
    const after = lows(runs, keyUnder(coveredBeds));
    return before === null || after === null ? null : { at, bed, ...rangeOf(after.map((low, s) => low - before[s]!), weights, relative) };
  };
  const beds = [...new Set(crops.map(({ bed }) => bed))];
  return { outlook, changes: [change('inside', null), ...beds.map((bed) => change('plants', bed))].filter((one) => one !== null) };
}

/** What is supposed counts as if it had stood so before; a house that is learned has a run of its own, which knows nothing of it. */
function withPastOfItsOwn(input: EveningInput, actual: ComparedNight): EveningInput {
  const { greenhouse, learned, weather, ground } = input;
  const [supposed, standing] = [toHouse(greenhouse), toHouse(actual.greenhouse)];
  if (!learned || learned.stateAtS <= weather.timeS[0]! || JSON.stringify(supposed) === JSON.stringify(standing)) return input;
  const controls = { standing: actual.pastControls ?? ((): Controls => usualControls(actual.greenhouse, standing)), supposed: input.pastControls ?? ((): Controls => usualControls(greenhouse, supposed)) };
  return { ...input, learned: rebuiltHouse(learned, { standing: actual.greenhouse, supposed: greenhouse, weather, ground, controls }) };
}

function lowsAt(runs: readonly NightRun[], key: PlaceKey, { nightStartS, nightEndS }: { nightStartS: number; nightEndS: number }): readonly number[] | null {
  const first = runs[0]!;
  const place = first.places.findIndex((one) => one.place === key.place && one.bed === key.bed);
  if (place < 0) return null;
  const from = Math.max(0, Math.floor((nightStartS - first.startS) / first.stepS));
  const until = Math.max(from + 1, Math.round((nightEndS - first.startS) / first.stepS));
  return runs.map((run) => Math.min(...run.tempK[place]!.subarray(from, until)));
}

function rangeOf(changesK: readonly number[], weights: readonly number[], relative: number): Pick<PlaceChange, 'meanK' | 'q10K' | 'q90K'> {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (values: readonly number[]): number => values.reduce((sum, value, s) => sum + value * weights[s]!, 0) / total;
  const meanK = mean(changesK);
  const ownErrorK = changesK.some((changeK) => Math.abs(changeK) > NOTHING_K) ? OWN_ERROR_K : 0;
  const halfK = Q90 * Math.hypot(Math.sqrt(mean(changesK.map((changeK) => (changeK - meanK) ** 2))), relative * meanK, ownErrorK);
  return { meanK, q10K: meanK - halfK, q90K: meanK + halfK };
}
