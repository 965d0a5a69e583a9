import { mixtureQuantileK, type Mixture } from '../chance/mixture.js';
import { placeIndex } from '../night/night-run.js';
import type { PlaceKey } from '../night/places.js';
import { weatherScenarios } from '../night/scenarios.js';
import type { EveningPlan } from './plan-evening.js';

/** Where the temperature of one place lies through the night: on 8 nights in 10 like this one between the tenth and the ninetieth percentile. */
export interface NightBand {
  readonly timesS: readonly number[];
  readonly q10K: readonly number[];
  readonly q50K: readonly number[];
  readonly q90K: readonly number[];
}

/**
 * The 80 % range of a place in the house through the night under the chosen plan, one value a step: at each instant the scenarios' own
 * temperatures, each dressed with the residual. The low of the night has a distribution of its own (planOutlook): the coldest hour of each
 * scenario is not at the same time, so the lowest point of the band lies a little above it.
 * Units: K, epoch seconds.
 * Valid: places inside the house; a span that overlaps the run.
 * Outside: throws RangeError for a place that the house does not have and for "outside", whose error is another one.
 * Source: member dressing as in planOutlook (Raftery2005 idea), at each instant instead of over the night.
 */
export function nightBand(plan: Pick<EveningPlan, 'chosen' | 'doubt' | 'evening' | 'residual'>, key: PlaceKey, span: { readonly fromS: number; readonly toS: number }): NightBand {
  const { runs } = plan.chosen.outlook;
  const central = runs[0]!;
  const p = placeIndex(central.places, key);
  if (p < 0 || key.place === 'outside') throw new RangeError(`no band for ${key.place} ${key.bed ?? ''}: expected a place in the house`);
  const weights = weatherScenarios(plan.doubt, plan.evening.atS).map(({ weight }) => weight);
  const { scaleK, degreesOfFreedom } = plan.residual;
  const steps = Array.from({ length: central.tempK[p]!.length }, (_, i) => ({ i, timeS: central.startS + (i + 1) * central.stepS })).filter(({ timeS }) => timeS >= span.fromS && timeS <= span.toS);
  const mixtures = steps.map(({ i }): Mixture => ({ valuesK: runs.map((run) => run.tempK[p]![i]!), weights, scaleK, degreesOfFreedom }));
  const quantiles = (probability: number): readonly number[] => mixtures.map((mixture) => mixtureQuantileK(mixture, probability));
  return { timesS: steps.map(({ timeS }) => timeS), q10K: quantiles(0.1), q50K: quantiles(0.5), q90K: quantiles(0.9) };
}
