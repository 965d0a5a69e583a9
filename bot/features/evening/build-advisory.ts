import { HEATER_KINDS, kelvinToCelsius, type CropOutlook, type EveningPlan, type Greenhouse, type PlaceOutlook, type PlannedAction, type PricedPlan } from '../../../engine/index.js';
import type { WeatherAnswer } from '../../ports.js';
import type { LocalTime } from '../../text/local-time.js';
import type { Advisory, AdvisoryAction, AdvisoryAlternative, AdvisoryCrop, AdvisoryHeater, AdvisoryMorning, AdvisoryPlace } from './advisory.js';
import { fanName } from './house-reasons.js';
import { cautionsFor, reasonsFor } from './reasons.js';

const tenth = (value: number): number => Math.round(value * 10) / 10;
const hundredth = (value: number): number => Math.round(value * 100) / 100;
const celsius = (tempK: number): number => tenth(kelvinToCelsius(tempK));

/** The advisory as data; the caller adds the words. */
export function buildAdvisory(plan: EveningPlan, input: { greenhouse: Greenhouse; answer: WeatherAnswer; nowS: number; time: LocalTime; learnedNights: number; keptReadings: number }): Omit<Advisory, 'text'> {
  const { greenhouse, nowS, answer, time } = input;
  const { chosen } = plan;
  return {
    greenhouse: greenhouse.name,
    issuedAt: time.iso(nowS),
    night: time.date(plan.night.sunsetS),
    weather: { source: answer.source, issuedAt: time.iso(answer.issuedAtS), stale: answer.stale },
    places: chosen.outlook.places.map((place) => advisoryPlace(place, time)),
    crops: advisoryCrops(chosen),
    plan: { id: chosen.id, actions: chosen.actions.map((action) => advisoryAction(action, time)), effortMinutes: Math.round(chosen.minutes), cost: hundredth(chosen.cashCost), heater: advisoryHeater(chosen, greenhouse) },
    alternatives: plan.plans.map((alternative) => advisoryAlternative(alternative, time)),
    morning: plan.morning.map((step): AdvisoryMorning => ({ action: step.action, ...('target' in step ? { target: step.target } : {}), from: time.iso(step.fromS) })),
    reasons: reasonsFor(plan, input),
    cautions: cautionsFor(plan, greenhouse),
  };
}

function advisoryPlace({ key, ...low }: PlaceOutlook, time: LocalTime): AdvisoryPlace {
  return {
    place: key.place,
    ...(key.bed === undefined ? {} : { bed: key.bed }),
    lowC: { mean: celsius(low.meanK), q10: celsius(low.q10K), q50: celsius(low.q50K), q90: celsius(low.q90K) },
    lowAt: time.iso(low.lowAtS),
  };
}

const advisoryCrops = (plan: PricedPlan): readonly AdvisoryCrop[] => plan.outlook.crops.map((outlook, k) => advisoryCrop(outlook, plan.harvested.includes(k)));

function advisoryCrop({ crop, judgedAt, judgedLowK, chill, ...chances }: CropOutlook, pickedBefore: boolean): AdvisoryCrop {
  return {
    crop: crop.match.row.id,
    asked: crop.asked,
    bed: crop.bed,
    damageProbability: hundredth(chances.damageProbability),
    lossProbability: hundredth(chances.lossProbability),
    expectedDamage: hundredth(chances.expectedDamage),
    verdict: chances.verdict,
    damageBeginsC: celsius(crop.thresholds.damageBeginsK),
    killedC: crop.thresholds.killedK === null ? null : celsius(crop.thresholds.killedK),
    hardening: hundredth(crop.hardening.effectiveFraction),
    judgedAt: judgedAt.place,
    judgedLowC: celsius(judgedLowK),
    grade: crop.thresholds.weakestGrade,
    isClassFallback: crop.match.isClassFallback,
    chill: chill.kind === 'chilled' ? { thresholdC: celsius(chill.thresholdK), hours: tenth(chill.timeBelowS / 3600) } : null,
    pickedBefore,
  };
}

function advisoryAction(action: PlannedAction, time: LocalTime): AdvisoryAction {
  switch (action.action) {
    case 'heater':
      return { action: 'heater', setC: action.setK === null ? null : celsius(action.setK), from: time.iso(action.fromS), until: time.iso(action.untilS) };
    case 'harvest':
      return { action: 'harvest', target: action.target, crop: action.crop, by: time.iso(action.byS) };
    case 'fan':
      return { ...(action.target === 'tubes' ? { action: 'tube-fan' } : { action: 'fan', target: fanName(action.target) }), run: action.run, from: time.iso(action.fromS), until: time.iso(action.untilS) };
    default:
      return { action: action.action, target: action.target, by: time.iso(action.byS) };
  }
}

function advisoryHeater(plan: PricedPlan, greenhouse: Greenhouse): AdvisoryHeater | null {
  const { fuel } = plan;
  if (!fuel || !greenhouse.heater) return null;
  const kind = HEATER_KINDS[greenhouse.heater.kind];
  return {
    kind: greenhouse.heater.kind,
    powerW: Math.round(greenhouse.heater.power),
    fullPowerHours: tenth(fuel.fullPowerS / 3600),
    expectedInsideC: insideWhereLostC(plan),
    energyKwh: tenth(fuel.energyJ / 3_600_000),
    fuel: tenth(fuel.units),
    fuelUnit: kind.unitSold,
    cost: hundredth(plan.cashCost),
    priceIsPlaceholder: fuel.needsPrice,
  };
}

/** A thermostat swings by half a degree; more than a degree below its setting it has lost. */
const LOST_BELOW_SETTING_K = 1;

/** A heater that starts in a cold house needs this long to warm it: until then it has not lost its setting. */
const WARMING_UP_S = 2 * 3600;

/** Where the heater runs flat out and still loses its setting in the middle weather: how low it then gets. */
function insideWhereLostC({ choices, outlook }: PricedPlan): number | null {
  const { heater } = choices;
  if (!heater || heater.setK === null) return null;
  const { centralRun } = outlook;
  const inside = centralRun.tempK[centralRun.places.findIndex(({ place }) => place === 'inside')]!;
  const held = inside.filter((_, i) => {
    const timeS = centralRun.startS + (i + 1) * centralRun.stepS;
    return timeS > heater.fromS + WARMING_UP_S && timeS <= heater.untilS;
  });
  const lowK = Math.min(...held);
  return lowK < heater.setK - LOST_BELOW_SETTING_K ? celsius(lowK) : null;
}

const advisoryAlternative = (plan: PricedPlan, time: LocalTime): AdvisoryAlternative => ({
  actions: plan.actions.map((action) => advisoryAction(action, time)),
  expectedLoss: hundredth(plan.expectedLoss),
  places: plan.outlook.places.map((place) => advisoryPlace(place, time)),
  crops: advisoryCrops(plan),
});
