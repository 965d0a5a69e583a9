import { chillVerdict, type ChillVerdict } from '../crops/chill.js';
import { chanceBelow, meanOver, mixtureMeanK, mixtureQuantileK, type Mixture } from '../chance/mixture.js';
import { summedError } from '../chance/summed-error.js';
import type { CropNode } from '../crops/judged-at.js';
import { damageFractionOn } from '../crops/damage.js';
import { runningMeanMinimumK } from '../crops/exposure-window.js';
import { RESIDUAL_PRIOR } from '../learn/calibrate.js';
import { placeIndex, type NightRun } from '../night/night-run.js';
import type { PlaceKey } from '../night/places.js';
import type { WeatherScenario } from '../night/scenarios.js';
import type { CropAtStake } from './crops-at-stake.js';

export type Verdict = 'safe' | 'watch' | 'at-risk' | 'likely-lost';

export interface PlaceOutlook {
  readonly key: PlaceKey;
  readonly meanK: number;
  readonly q10K: number;
  readonly q50K: number;
  readonly q90K: number;
  readonly lowAtS: number;
}

export interface CropOutlook {
  readonly crop: CropAtStake;
  readonly damageProbability: number;
  readonly lossProbability: number;
  readonly expectedDamage: number;
  readonly verdict: Verdict;
  /** The place that the threshold was compared with, and its central low over the crop's window. */
  readonly judgedAt: PlaceKey;
  readonly judgedLowK: number;
  /** Cold without frost, in the central weather, for crops that it harms. */
  readonly chill: ChillVerdict;
}

/** What one plan is expected to bring. */
export interface PlanOutlook {
  readonly places: readonly PlaceOutlook[];
  readonly crops: readonly CropOutlook[];
  /** What each scenario brings, in their order: to say what would change the plan. */
  readonly scenarioLows: readonly { readonly outsideLowK: number; readonly cropLowsK: readonly number[] }[];
  readonly meanHeaterJ: number;
  readonly centralRun: NightRun;
  /** The run through each scenario, in their order. */
  readonly runs: readonly NightRun[];
}

/** Error that no scenario carries: soil, film, sky formula, where the plants stand. */
export interface ResidualError {
  readonly scaleK: number;
  readonly degreesOfFreedom: number;
}

/**
 * Parameter error of an unlearned house: root sum of squares of the prior sensitivities (soil exchange .43, conductivity .40, water
 * .38, open sky .37, sky formula .24, film exchange .23, soil temperature .20, film .18, leakage .12 K; project estimate).
 */
const UNLEARNED_HOUSE_SD_K = 0.9;
/** With it, as for a house that is learned, what the model cannot say with every parameter right. */
export const PRIOR_RESIDUAL: ResidualError = summedError({ scaleK: RESIDUAL_PRIOR.scaleK, degreesOfFreedom: RESIDUAL_PRIOR.readings }, UNLEARNED_HOUSE_SD_K);
const OUTSIDE_SCALE_K = 0.4;
const FULL_HISTORY_HOURS = 15 * 24;
const NO_HISTORY_SCALE_K = 1.5;

/**
 * The residual grows when the past is short: soil and drums start from a guess.
 * Units: hours of past weather in; K out.
 * Valid: 0 and more; from 15 days on nothing is added.
 * Outside: not checked.
 * Source: project estimate.
 */
export const residualFor = (warmUpHours: number): ResidualError => ({
  ...PRIOR_RESIDUAL,
  scaleK: Math.hypot(PRIOR_RESIDUAL.scaleK, NO_HISTORY_SCALE_K * Math.max(0, 1 - warmUpHours / FULL_HISTORY_HOURS)),
});

const VERDICT_LIMITS = { watchFrom: 0.05, atRiskDamage: 0.35, atRiskLoss: 0.1, likelyLost: 0.5 } as const;

/** The verdict on a crop. Units: chances 0-1. Valid: 0 to 1. Outside: not checked. Source: decision rule of this project. */
export function verdictFor(damageProbability: number, lossProbability: number): Verdict {
  if (lossProbability >= VERDICT_LIMITS.likelyLost) return 'likely-lost';
  if (damageProbability >= VERDICT_LIMITS.atRiskDamage || lossProbability >= VERDICT_LIMITS.atRiskLoss) return 'at-risk';
  return damageProbability >= VERDICT_LIMITS.watchFrom ? 'watch' : 'safe';
}

/** The place that a node of a crop is: air at the plant is under the cover while it lies on the bed, else the air of the house. */
export function placeOfNode(node: CropNode, bed: string, coveredBeds: readonly string[]): PlaceKey {
  if (node === 'leaf') return { place: 'leaf', bed };
  if (node === 'soil') return { place: 'soil', bed };
  return coveredBeds.includes(bed) ? { place: 'cover', bed } : { place: 'inside' };
}

/**
 * Distributions of all lows and the chances of all crops from the runs of one plan through all scenarios.
 * Units: K, chances 0-1.
 * Valid: runs in the order of the scenarios, the central one first.
 * Outside: not applicable.
 * Source: member dressing (Raftery2005 idea) with the residual of this project; damage by engine/crops.
 */
export function planOutlook(runs: readonly NightRun[], scenarios: readonly WeatherScenario[], crops: readonly CropAtStake[], basis: { residual: ResidualError; nightStartS: number; nightEndS: number; coveredBeds: readonly string[] }): PlanOutlook {
  const central = runs[0]!;
  const weights = scenarios.map(({ weight }) => weight);
  // The hours before sunset are warm, or belong to the night before: the low is taken over the night alone.
  const firstStep = Math.max(0, Math.floor((basis.nightStartS - central.startS) / central.stepS));
  const lastStep = Math.max(firstStep + 1, Math.round((basis.nightEndS - central.startS) / central.stepS));
  const night = (run: NightRun, p: number): Float64Array => run.tempK[p]!.subarray(firstStep, lastStep);
  const dressed = (valuesK: readonly number[], key: PlaceKey): Mixture => ({ valuesK, weights, degreesOfFreedom: basis.residual.degreesOfFreedom, scaleK: key.place === 'outside' ? OUTSIDE_SCALE_K : basis.residual.scaleK });
  const shown = central.places.map((key, p) => ({ key, p })).filter(({ key }) => key.place !== 'cover' || basis.coveredBeds.includes(key.bed!));
  const places = shown.map(({ key, p }): PlaceOutlook => {
    const mixture = dressed(runs.map((run) => Math.min(...night(run, p))), key);
    const series = night(central, p);
    return { key, meanK: mixtureMeanK(mixture), q10K: mixtureQuantileK(mixture, 0.1), q50K: mixtureQuantileK(mixture, 0.5), q90K: mixtureQuantileK(mixture, 0.9), lowAtS: central.startS + (firstStep + series.indexOf(Math.min(...series)) + 1) * central.stepS };
  });
  const lowsOf = (crop: CropAtStake, node: CropNode): { key: PlaceKey; mixture: Mixture } => {
    const key = placeOfNode(node, crop.bed, basis.coveredBeds);
    const p = placeIndex(central.places, key);
    return { key, mixture: dressed(runs.map((run) => runningMeanMinimumK({ tempK: Array.from(night(run, p)), stepS: run.stepS, windowMin: crop.windowMin })), key) };
  };
  const outside = placeIndex(central.places, { place: 'outside' });
  const cropLows = crops.map((crop) => lowsOf(crop, crop.damageNode).mixture.valuesK);
  return {
    places,
    crops: crops.map((crop): CropOutlook => {
      const air = placeIndex(central.places, placeOfNode('air-at-plant', crop.bed, basis.coveredBeds));
      return { ...cropOutlook(crop, lowsOf), chill: chillVerdict({ row: crop.match.row, plantTempK: Array.from(night(central, air)), stepS: central.stepS }) };
    }),
    scenarioLows: runs.map((run, s) => ({ outsideLowK: Math.min(...night(run, outside)), cropLowsK: cropLows.map((lows) => lows[s]!) })),
    meanHeaterJ: runs.reduce((sum, run, s) => sum + weights[s]! * run.heaterJ, 0),
    centralRun: central,
    runs,
  };
}

function cropOutlook(crop: CropAtStake, lowsOf: (crop: CropAtStake, node: CropNode) => { key: PlaceKey; mixture: Mixture }): Omit<CropOutlook, 'chill'> {
  const damage = lowsOf(crop, crop.damageNode);
  const kill = crop.killNode === crop.damageNode ? damage : lowsOf(crop, crop.killNode);
  const damageProbability = chanceBelow(damage.mixture, crop.thresholds.damageBeginsK);
  const lossProbability = crop.thresholds.killedK === null ? 0 : chanceBelow(kill.mixture, crop.thresholds.killedK);
  return {
    crop,
    damageProbability,
    lossProbability,
    expectedDamage: meanOver(damage.mixture, (tempK) => damageFractionOn(crop.curves.damage, tempK)),
    verdict: verdictFor(damageProbability, lossProbability),
    judgedAt: damage.key,
    judgedLowK: damage.mixture.valuesK[0]!,
  };
}
