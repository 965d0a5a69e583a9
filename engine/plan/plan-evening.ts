import type { House } from '../greenhouse/house.js';
import type { Controls } from '../night/controls.js';
import type { EveningState } from '../night/evening-state.js';
import type { NightSpan } from '../night/night-span.js';
import type { ForecastDoubt } from '../night/scenarios.js';
import { nextCivilDuskS } from '../sun/rise-and-set.js';
import { NOTHING_ID, type PlanTimes } from './candidates.js';
import { choose, revise, type Choice } from './choose.js';
import { eveningScene, type EveningInput } from './evening-scene.js';
import { houseMoves, type HouseMoves } from './house-moves.js';
import { powerFailure, type PowerFailure } from './power-failure.js';
import type { TrialNight } from './plants-low.js';
import type { CropAtStake } from './crops-at-stake.js';
import type { ResidualError } from './outlook.js';
import { morningPlan, type MorningAction } from './morning.js';
import { nightHeat, type NightHeat } from './night-heat.js';
import { pricePlans, type PricedPlan, type PricingContext } from './price-plans.js';
import { toleranceOf } from './tolerance.js';
import { ventsShutS } from './vents-time.js';

export interface EveningPlan {
  readonly night: NightSpan;
  readonly doubt: ForecastDoubt;
  /** Error that no scenario carries. */
  readonly residual: ResidualError;
  readonly evening: EveningState;
  readonly house: House;
  readonly crops: readonly CropAtStake[];
  readonly chosen: PricedPlan;
  readonly nothing: PricedPlan;
  /** All plans, least loss first. */
  readonly plans: readonly PricedPlan[];
  readonly choice: Choice;
  readonly infeasible: readonly string[];
  readonly morning: readonly MorningAction[];
  readonly standing: Controls;
  readonly moves: HouseMoves;
  /** Where the heat comes from and goes under the chosen plan. */
  readonly heat: NightHeat;
  /** What the chosen plan becomes without mains current; null when nothing in use needs it. */
  readonly ifPowerFails: PowerFailure | null;
}

/**
 * The whole evening: warm-up through the past, every plan through every scenario, and the plan of least expected loss.
 * Units: SI inside; money in the grower's own.
 * Valid: weather from before now to at least the coming sunrise.
 * Outside: throws RangeError when the weather does not reach.
 * Source: decision rule of this project over the physics of engine/night.
 */
export function planEvening(input: EveningInput): EveningPlan {
  const { greenhouse, weather, nowS } = input;
  const scene = eveningScene(input);
  const { house, standing, evening, night, doubt, scenarios, residual, forcings, crops, nightStartS, nightEndS } = scene;
  const trial: TrialNight = { house, night, evening, standing, central: forcings[0]!, nowS, plantedBeds: greenhouse.beds.filter((bed) => bed.crops.length > 0).map(({ name }) => name) };
  const times = planTimes(input, trial);
  const moves = houseMoves(trial, times.ventsShutS);
  const tolerance = toleranceOf(greenhouse.grower, input.toleranceNights);
  const context: PricingContext = { greenhouse, house, standing, evening, crops, scenarios, residual, forcings, nightStartS, nightEndS, times, moves, tolerance };
  const priced = pricePlans(context);
  const stakes = {
    worth: crops.map(({ worth }) => worth),
    meanDamage: new Map(priced.map(({ plan, damage }) => [plan.id, damage])),
    hourWorth: tolerance.hourWorth,
    lossWeight: tolerance.lossWeight,
  };
  const decision = { candidates: priced.map(({ candidate }) => candidate), nothingId: NOTHING_ID, stakes, nowS };
  const issuedId = decision.candidates.find(({ id }) => id === input.issuedPlanId)?.id;
  const choice = issuedId === undefined ? choose(decision) : revise({ ...decision, issuedId });
  const plans = priced.map(({ plan }): PricedPlan => ({ ...plan, expectedLoss: choice.losses.get(plan.id)! })).sort((a, b) => a.expectedLoss - b.expectedLoss);
  const chosen = plans.find(({ id }) => id === choice.chosen.id)!;
  return {
    night,
    doubt,
    residual,
    evening,
    house,
    crops,
    chosen,
    nothing: plans.find(({ id }) => id === NOTHING_ID)!,
    plans,
    choice,
    infeasible: choice.infeasible,
    standing,
    moves,
    heat: nightHeat(trial, chosen.choices),
    ifPowerFails: powerFailure(chosen, context),
    morning: morningPlan({
      run: chosen.outlook.centralRun,
      weather,
      coveredBeds: house.columns.filter((column, c) => standing.coverOn[c] || chosen.coveredBeds.includes(column.name)).map(({ name }) => name),
      bedsWithCrops: greenhouse.beds.filter((bed) => bed.crops.length > 0).map(({ name }) => name),
      sunsetS: night.sunsetS,
      sunriseS: night.sunriseS,
      hasVents: house.vents !== null && !house.vents.byOpener,
      roofSnowM: standing.troubles.roofSnowM,
      curtainDrawn: standing.curtainDrawn || chosen.choices.curtainFromS !== null,
    }),
  };
}

function planTimes(input: EveningInput, trial: TrialNight): PlanTimes {
  const { night } = trial;
  const duskS = night.isRunning ? night.sunsetS : Math.min(nextCivilDuskS(night.sunsetS, input.greenhouse.place) ?? night.sunsetS, night.sunriseS);
  return { nowS: input.nowS, duskS, bedtimeS: input.bedtimeS, sunsetS: night.sunsetS, sunriseS: night.sunriseS, ventsShutS: ventsShutS(trial) };
}
