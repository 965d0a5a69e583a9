import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import { toHouse } from '../greenhouse/to-house.js';
import type { ControlPlan, Controls, FanPlace } from '../night/controls.js';
import { eveningState, type EveningState } from '../night/evening-state.js';
import { forcingFor, STEP_S } from '../night/forcing.js';
import { nightSpan, type NightSpan } from '../night/night-span.js';
import { forecastDoubt, weatherScenarios, type ForecastDoubt } from '../night/scenarios.js';
import type { GroundOutside, WeatherHours } from '../night/weather.js';
import { nextCivilDuskS } from '../sun/rise-and-set.js';
import { SECONDS_PER_HOUR } from '../units.js';
import { NOTHING_ID, type PlanTimes } from './candidates.js';
import { choose, revise, type Choice } from './choose.js';
import { standingControls, usualControls } from './controls-of-choices.js';
import { houseMoves, type HouseMoves } from './house-moves.js';
import { powerFailure, type PowerFailure } from './power-failure.js';
import type { TrialNight } from './plants-low.js';
import { cropsAtStake, type CropAtStake } from './crops-at-stake.js';
import { lossWeightFor } from './expected-loss.js';
import { morningPlan, type MorningAction } from './morning.js';
import { pricePlans, type PricedPlan, type PricingContext } from './price-plans.js';
import { ventsShutS } from './vents-time.js';

export interface EveningInput {
  readonly greenhouse: Greenhouse;
  readonly weather: WeatherHours;
  readonly ground: GroundOutside;
  readonly nowS: number;
  /** When the grower goes to bed on the evening of this night. */
  readonly bedtimeS: number;
  readonly weatherAgeS: number;
  /** What was covered, shut and lit in the past fortnight; as the file says when nothing else is known. */
  readonly pastControls?: ControlPlan;
  /** The plan that was sent for this night before: it is kept unless a change is worth a second message. */
  readonly issuedPlanId?: string;
  /** What the grower said of tonight: it overrides how things stand in the file. What was not said is not in it. */
  readonly doneTonight?: DoneTonight;
}

/** The grower's own word on tonight. */
export interface DoneTonight {
  /** Bed -> whether its cover lies on it. */
  readonly covers: ReadonlyMap<string, boolean>;
  /** Absent: nothing said. */
  readonly heater?: { readonly on: boolean; readonly setK: number | null };
  readonly ventsShut?: boolean;
  readonly curtainDrawn?: boolean;
  readonly fansOn?: Partial<Record<FanPlace, boolean>>;
}

export interface EveningPlan {
  readonly night: NightSpan;
  readonly doubt: ForecastDoubt;
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
  /** What the chosen plan becomes without mains current; null when nothing in use needs it. */
  readonly ifPowerFails: PowerFailure | null;
}

const MORNING_HOURS = 6;
const MORNING_IN_LOWS_S = 2 * SECONDS_PER_HOUR;

/**
 * The whole evening: warm-up through the past, every plan through every scenario, and the plan of least expected loss.
 * Units: SI inside; money in the grower's own.
 * Valid: weather from before now to at least the coming sunrise.
 * Outside: throws RangeError when the weather does not reach.
 * Source: decision rule of this project over the physics of engine/night.
 */
export function planEvening(input: EveningInput): EveningPlan {
  const { greenhouse, weather, nowS } = input;
  const house = toHouse(greenhouse);
  const standing = standingWithDone(standingControls(greenhouse, house), house, input.doneTonight);
  const evening = eveningState({ house, weather, ground: input.ground, nowS, pastControls: input.pastControls ?? ((): Controls => usualControls(greenhouse, house)) });
  const night = nightSpan(nowS, greenhouse.place);
  const lastS = weather.timeS.at(-1)!;
  const nightEndS = Math.min(night.sunriseS + MORNING_IN_LOWS_S, lastS);
  const endS = Math.min(night.sunriseS + MORNING_HOURS * SECONDS_PER_HOUR, lastS);
  if (endS < night.sunriseS - 2 * SECONDS_PER_HOUR) throw new RangeError(`the weather ends at ${lastS}, before the coming sunrise at ${night.sunriseS} (epoch s)`);
  const span = { fromS: evening.atS, toS: evening.atS + Math.floor((endS - evening.atS) / STEP_S) * STEP_S };
  const doubt = forecastDoubt(weather, night, { nowS, weatherAgeS: input.weatherAgeS });
  const scenarios = weatherScenarios(doubt, nowS);
  const forcings = scenarios.map(({ departure }) => forcingFor(house, weather, span, departure));
  const crops = cropsAtStake(greenhouse, evening);
  const trial: TrialNight = { house, night, evening, standing, central: forcings[0]!, nowS, plantedBeds: greenhouse.beds.filter((bed) => bed.crops.length > 0).map(({ name }) => name) };
  const times = planTimes(input, trial);
  const moves = houseMoves(trial, times.ventsShutS);
  const nightStartS = Math.max(nowS, night.sunsetS);
  const context: PricingContext = { greenhouse, house, standing, evening, crops, scenarios, forcings, nightStartS, nightEndS, times, moves };
  const priced = pricePlans(context);
  const stakes = {
    worth: crops.map(({ worth }) => worth),
    meanDamage: new Map(priced.map(({ plan, damage }) => [plan.id, damage])),
    hourWorth: greenhouse.grower.hourWorth,
    lossWeight: lossWeightFor(greenhouse.grower.careful),
  };
  const decision = { candidates: priced.map(({ candidate }) => candidate), nothingId: NOTHING_ID, stakes, nowS };
  const issuedId = decision.candidates.find(({ id }) => id === input.issuedPlanId)?.id;
  const choice = issuedId === undefined ? choose(decision) : revise({ ...decision, issuedId });
  const plans = priced.map(({ plan }): PricedPlan => ({ ...plan, expectedLoss: choice.losses.get(plan.id)! })).sort((a, b) => a.expectedLoss - b.expectedLoss);
  const chosen = plans.find(({ id }) => id === choice.chosen.id)!;
  return {
    night,
    doubt,
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

function standingWithDone(standing: Controls, house: House, done: EveningInput['doneTonight']): Controls {
  if (!done) return standing;
  return {
    ...standing,
    coverOn: standing.coverOn.map((on, c) => (house.columns[c]!.rowCover === null ? on : (done.covers.get(house.columns[c]!.name) ?? on))),
    ventsMayOpen: standing.ventsMayOpen && done.ventsShut !== true,
    heaterOn: done.heater?.on ?? standing.heaterOn,
    heaterSetK: done.heater ? done.heater.setK : standing.heaterSetK,
    curtainDrawn: done.curtainDrawn ?? standing.curtainDrawn,
    fansOn: { ...standing.fansOn, ...done.fansOn },
  };
}

function planTimes(input: EveningInput, trial: TrialNight): PlanTimes {
  const { night } = trial;
  const duskS = night.isRunning ? night.sunsetS : Math.min(nextCivilDuskS(night.sunsetS, input.greenhouse.place) ?? night.sunsetS, night.sunriseS);
  return { nowS: input.nowS, duskS, bedtimeS: input.bedtimeS, sunsetS: night.sunsetS, sunriseS: night.sunriseS, ventsShutS: ventsShutS(trial) };
}
