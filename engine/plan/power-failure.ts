import { FAN_PLACES } from '../night/controls.js';
import { fanAt } from '../night/conditions.js';
import { runNight } from '../night/night-run.js';
import { controlsOfChoices } from './controls-of-choices.js';
import { planOutlook, type PlanOutlook } from './outlook.js';
import type { PricedPlan, PricingContext } from './price-plans.js';

/** What stops when the mains fail, and what the night then brings. */
export interface PowerFailure {
  readonly stops: readonly ('heater' | 'fan' | 'blower')[];
  readonly outlook: PlanOutlook;
}

/**
 * The chosen plan with the mains failing at once and for the whole night.
 * Units: K.
 * Valid: a plan of the same evening.
 * Outside: null when nothing in use needs the mains, or they have failed already.
 * Source: physics of engine/night.
 */
export function powerFailure(plan: PricedPlan, context: PricingContext): PowerFailure | null {
  const { greenhouse, house, standing, evening, scenarios } = context;
  if (standing.troubles.powerOut) return null;
  const heats = standing.heaterOn || plan.choices.heater !== null;
  const blows = FAN_PLACES.some((place) => fanAt(house, place)?.supply === 'mains' && (standing.fansOn[place] || (plan.choices.fans.get(place) ?? null) !== null));
  const stops = [...(heats && house.heater?.needsMains ? ['heater' as const] : []), ...(blows ? ['fan' as const] : []), ...(greenhouse.blower ? ['blower' as const] : [])];
  if (stops.length === 0) return null;
  const dark = { ...standing, troubles: { ...standing.troubles, powerOut: true, blowerOff: greenhouse.blower || standing.troubles.blowerOff } };
  const controls = controlsOfChoices(house, dark, plan.choices);
  const runs = context.forcings.map((forcing) => runNight(evening, forcing, controls));
  const coveredBeds = house.columns.filter((column, c) => standing.coverOn[c] || plan.coveredBeds.includes(column.name)).map(({ name }) => name);
  return { stops, outlook: planOutlook(runs, scenarios, context.crops, { residual: context.residual, nightStartS: context.nightStartS, nightEndS: context.nightEndS, coveredBeds }) };
}
