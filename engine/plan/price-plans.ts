import { HEATER_KINDS } from '../data/heater-kinds.js';
import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import type { Controls } from '../night/controls.js';
import type { EveningState } from '../night/evening-state.js';
import type { Forcing } from '../night/forcing.js';
import { runNight } from '../night/night-run.js';
import type { WeatherScenario } from '../night/scenarios.js';
import type { NightChoices, PlannedAction } from './action.js';
import { coverableBeds, coverSets, heaterSettings, NOTHING_ID, physicalPlan, planId, type HeaterSetting, type PhysicalPlan, type PlanTimes } from './candidates.js';
import { controlsOfChoices } from './controls-of-choices.js';
import type { CropAtStake } from './crops-at-stake.js';
import { costOf, type Candidate } from './expected-loss.js';
import { hasMoves, type HouseMoves } from './house-moves.js';
import { harvestOffers, type HarvestOffer } from './harvest.js';
import { planOutlook, type PlanOutlook, type ResidualError } from './outlook.js';
import type { Tolerance } from './tolerance.js';

/** One plan with all that is expected of it. */
export interface PricedPlan {
  readonly id: string;
  readonly actions: readonly PlannedAction[];
  readonly minutes: number;
  readonly cashCost: number;
  readonly expectedLoss: number;
  readonly outlook: PlanOutlook;
  readonly fuel: { readonly units: number; readonly energyJ: number; readonly fullPowerS: number; readonly needsPrice: boolean } | null;
  readonly harvested: readonly number[];
  readonly coveredBeds: readonly string[];
  readonly choices: NightChoices;
}

export interface PricingContext {
  readonly greenhouse: Greenhouse;
  readonly house: House;
  readonly standing: Controls;
  readonly evening: EveningState;
  readonly crops: readonly CropAtStake[];
  readonly scenarios: readonly WeatherScenario[];
  readonly residual: ResidualError;
  readonly forcings: readonly Forcing[];
  readonly nightStartS: number;
  readonly nightEndS: number;
  readonly times: PlanTimes;
  readonly moves: HouseMoves;
  readonly tolerance: Tolerance;
}

export interface Priced {
  readonly plan: Omit<PricedPlan, 'expectedLoss'>;
  readonly candidate: Candidate;
  readonly damage: readonly number[];
}

/** Up to this many cover sets each is tried with every heater setting; beyond it only none, the best without heat, and all. */
const MOST_SETS_WITH_HEAT = 4;

/**
 * All plans worth comparing, with their outlooks: covers first, in the order of what the beds stand to lose, then heat on top.
 * Units: money, K.
 * Valid: a context of one evening.
 * Outside: throws when a step of the night does not settle.
 * Source: decision rule of this project.
 */
export function pricePlans(context: PricingContext): readonly Priced[] {
  const { greenhouse, house, standing } = context;
  const moves = hasMoves(context.moves) ? context.moves : null;
  const price = (coveredBeds: readonly string[], heater: HeaterSetting | null): readonly Priced[] => pricePlan(physicalPlan({ coveredBeds, heater, moves }, context), context);
  const nothing = pricePlan(physicalPlan({ coveredBeds: [], heater: null, moves: null }, context), context);
  const atStake = (bed: string): number => nothing[0]!.plan.outlook.crops.reduce((sum, { crop, expectedDamage }) => (crop.bed === bed ? sum + crop.worth * expectedDamage : sum), 0);
  const byRisk = [...coverableBeds(greenhouse, house, standing)].sort((a, b) => atStake(b) - atStake(a));
  const sets = coverSets(byRisk);
  const unheated = sets.map((set) => (set.length === 0 && moves === null ? nothing : price(set, null)));
  const idle = moves === null ? [] : nothing;
  const settings = heaterSettings(greenhouse, house, standing);
  if (settings.length === 0) return [...idle, ...unheated.flat()];
  const loss = ([plain]: readonly Priced[]): number => costOf(plain!.candidate, context.tolerance.hourWorth) + context.tolerance.lossWeight * plain!.damage.reduce((sum, q, k) => sum + q * context.crops[k]!.worth, 0);
  const best = unheated.reduce((least, priced) => (loss(priced) < loss(least) ? priced : least));
  const heatedSets = sets.length <= MOST_SETS_WITH_HEAT ? sets : sets.filter((set, i) => i === 0 || i === sets.length - 1 || unheated[i] === best);
  return [...idle, ...unheated.flat(), ...heatedSets.flatMap((set) => settings.flatMap((setting) => price(set, setting)))];
}

/** A physical plan as it is, and with early picking where that pays: picking changes no temperature, so both share the runs. */
function pricePlan(physical: PhysicalPlan, context: PricingContext): readonly Priced[] {
  const { house, standing, evening, scenarios } = context;
  const controls = controlsOfChoices(house, standing, physical.choices);
  const runs = context.forcings.map((forcing) => runNight(evening, forcing, controls));
  const outlook = planOutlook(runs, scenarios, context.crops, { residual: context.residual, nightStartS: context.nightStartS, nightEndS: context.nightEndS, coveredBeds: coveredUnder(physical, context) });
  const offers = context.times.nowS >= context.times.duskS ? [] : harvestOffers(outlook.crops, context.tolerance);
  const plain = pricedWith(physical, outlook, [], context);
  return offers.length === 0 ? [plain] : [plain, pricedWith(physical, outlook, offers, context)];
}

/** Beds under a cover in a plan: those covered already and those that it covers. */
const coveredUnder = (physical: PhysicalPlan, { house, standing }: PricingContext): readonly string[] =>
  house.columns.filter((column, c) => standing.coverOn[c] || physical.coveredBeds.includes(column.name)).map(({ name }) => name);

function pricedWith(physical: PhysicalPlan, outlook: PlanOutlook, offers: readonly HarvestOffer[], context: PricingContext): Priced {
  const { greenhouse, times } = context;
  const id = offers.length === 0 ? physical.id : `${physical.id === NOTHING_ID ? '' : `${physical.id} + `}harvest`;
  const fuel = physical.heater ? fuelOf(context, outlook) : null;
  const cashCost = fuel && greenhouse.heater ? fuel.units * (greenhouse.heater.price ?? HEATER_KINDS[greenhouse.heater.kind].defaultPricePerUnit) : 0;
  const minutes = physical.minutes + offers.reduce((sum, offer) => sum + offer.minutes, 0);
  const harvested = offers.map(({ cropIndex }) => cropIndex);
  const candidate: Candidate = {
    id,
    cashCost,
    minutes,
    hassle: context.tolerance.hassle,
    sideCost: physical.sideCost + offers.reduce((sum, offer) => sum + offer.sideCost, 0),
    reliability: physical.reliability,
    // When the heater fails, its covers still lie there.
    fallbackId: physical.heater ? planId({ coveredBeds: physical.coveredBeds, heater: null, moves: physical.moves }) : id,
    deadlineS: offers.length > 0 ? Math.min(times.duskS, times.bedtimeS) : physical.deadlineS,
    combustion: physical.combustion,
    reversible: harvested.length === 0,
    done: false,
  };
  return {
    plan: { id, actions: actionsOf(physical, context, offers), minutes, cashCost, outlook, fuel, harvested, coveredBeds: physical.coveredBeds, choices: physical.choices },
    candidate,
    damage: outlook.crops.map(({ expectedDamage }, k) => (harvested.includes(k) ? 0 : expectedDamage)),
  };
}

function fuelOf({ greenhouse, house }: PricingContext, outlook: PlanOutlook): NonNullable<PricedPlan['fuel']> {
  const kind = HEATER_KINDS[greenhouse.heater!.kind];
  const energyJ = outlook.meanHeaterJ * (greenhouse.heater!.power / house.heater!.deliveredW);
  return { units: energyJ / kind.energyPerUnitJ, energyJ, fullPowerS: energyJ / greenhouse.heater!.power, needsPrice: greenhouse.heater!.price === undefined };
}

function actionsOf(plan: PhysicalPlan, { crops, times }: PricingContext, offers: readonly HarvestOffer[]): readonly PlannedAction[] {
  const byS = Math.min(times.duskS, times.bedtimeS);
  return [
    ...((plan.id !== NOTHING_ID || offers.length > 0) && times.ventsShutS !== null && times.ventsShutS > times.nowS ? [{ action: 'vents', target: 'shut', byS: times.ventsShutS } as const] : []),
    ...offers.map(({ cropIndex }): PlannedAction => ({ action: 'harvest', target: crops[cropIndex]!.bed, crop: crops[cropIndex]!.match.row.id, byS })),
    ...(plan.choices.curtainFromS === null ? [] : [{ action: 'curtain', target: 'draw', byS: Math.max(times.nowS, plan.choices.curtainFromS) } as const]),
    ...[...plan.choices.fans].map(([target, span]): PlannedAction => ({ action: 'fan', target, run: span !== null, fromS: span?.fromS ?? times.nowS, untilS: span?.untilS ?? times.sunriseS })),
    ...plan.coveredBeds.map((target): PlannedAction => ({ action: 'cover', target, byS })),
    ...(plan.choices.heater ? [{ action: 'heater', setK: plan.choices.heater.setK, fromS: plan.choices.heater.fromS, untilS: plan.choices.heater.untilS } as const] : []),
  ];
}
