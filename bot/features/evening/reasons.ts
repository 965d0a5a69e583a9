import { FAN_PLACES, HEATER_KINDS, kelvinToCelsius, type EveningPlan, type Greenhouse } from '../../../engine/index.js';
import type { WeatherAnswer, WeatherNote } from '../../ports.js';
import type { LocalTime } from '../../text/local-time.js';
import type { AdvisoryReason, CautionCode } from './advisory.js';
import { heatReason } from './heat-reason.js';
import { burnsOut, fanName, fanReasons, ifPowerFails, troublesReason } from './house-reasons.js';

const CLEAR_FROM = 0.5;
const CLOUDY_BELOW = 0.2;
/** A plan is said to help a crop when it takes this much off its chance of damage. */
const HELPS_FROM = 0.15;
/** A colder night is worth naming from here. */
const COLDER_BY_K = 0.5;
const FULL_HISTORY_HOURS = 15 * 24;
/** A horizon is worth a word only when it hardly passes the night. */
const SHORT_HORIZON_S = 36 * 3600;
const hundredth = (value: number): number => Math.round(value * 100) / 100;
const celsius = (tempK: number): number => Math.round(kelvinToCelsius(tempK) * 10) / 10;

/** Why this plan, what would change it, and what the answer stands on. */
export function reasonsFor(plan: EveningPlan, context: { greenhouse: Greenhouse; answer: WeatherAnswer; nowS: number; time: LocalTime; learnedNights: number; keptReadings: number }): readonly AdvisoryReason[] {
  const { greenhouse, answer, nowS, time, learnedNights, keptReadings } = context;
  const { clearCalm } = plan.doubt;
  const { warmUpHours, basis } = plan.evening;
  return [
    { code: clearCalm >= CLEAR_FROM ? 'clear-and-calm' : clearCalm < CLOUDY_BELOW ? 'cloudy-or-windy' : 'partly-clear' },
    heatReason(plan),
    ...countsOn(plan),
    ...troublesReason(greenhouse),
    ...(tooLate(plan).length > 0 ? [] : [{ code: 'choice', why: plan.choice.reason } as const]),
    ...helped(plan),
    ...fanReasons(plan),
    ...burnsOut(plan, time),
    ...ifPowerFails(plan),
    ...whatWouldChange(plan),
    ...tooLate(plan),
    ...plan.crops.filter(({ match }) => match.isClassFallback).map(({ asked, match }): AdvisoryReason => ({ code: 'class-fallback', asked, hardinessClass: match.row.hardinessClass })),
    learnedNights === 0 ? { code: 'not-learned-yet', kept: keptReadings } : { code: 'learned', nights: learnedNights },
    ...(warmUpHours < FULL_HISTORY_HOURS - 24 ? [{ code: 'short-history', hours: Math.round(warmUpHours) } as const] : []),
    ...(basis === 'past-air' ? [{ code: 'ground-guessed' } as const] : []),
    ...answer.notes.filter((note) => isWorthAWord(note, nowS)).map((note) => noteReason(note, nowS)),
  ];
}

type PlannedAction = EveningPlan['chosen']['actions'][number];

/** What lies on the beds or burns already. */
function countsOn({ standing, house }: EveningPlan): AdvisoryReason[] {
  const coveredBeds = house.columns.filter((_, c) => standing.coverOn[c]).map(({ name }) => name);
  const fans = FAN_PLACES.filter((place) => standing.fansOn[place]).map(fanName);
  if (coveredBeds.length + fans.length === 0 && !standing.heaterOn && !standing.curtainDrawn) return [];
  return [{ code: 'counts-on', coveredBeds, curtainDrawn: standing.curtainDrawn, fans, heaterOn: standing.heaterOn, heaterSetC: standing.heaterSetK === null ? null : celsius(standing.heaterSetK) }];
}

function helped({ chosen, nothing }: EveningPlan): AdvisoryReason[] {
  if (chosen.id === nothing.id) return [];
  return chosen.outlook.crops.flatMap((after, k): AdvisoryReason[] => {
    const before = nothing.outlook.crops[k]!;
    const picked = chosen.harvested.includes(k);
    if (before.damageProbability - (picked ? 0 : after.damageProbability) < HELPS_FROM) return [];
    return [{ code: 'plan-helps', crop: after.crop.match.row.id, asked: after.crop.asked, bed: after.crop.bed, withoutDamageProbability: hundredth(before.damageProbability), withDamageProbability: picked ? 0 : hundredth(after.damageProbability) }];
  });
}

/** The mildest scenario that makes the work needless, and the one from which the plan is not enough. */
function whatWouldChange({ chosen, nothing, crops }: EveningPlan): AdvisoryReason[] {
  const hurt = (lowsK: readonly number[], skip: readonly number[]): number[] => crops.flatMap((crop, k) => (!skip.includes(k) && lowsK[k]! < crop.thresholds.damageBeginsK ? [k] : []));
  const reasons: AdvisoryReason[] = [];
  const safe = nothing.outlook.scenarioLows.filter(({ cropLowsK }) => hurt(cropLowsK, []).length === 0);
  if (chosen.id !== nothing.id && safe.length > 0) reasons.push({ code: 'not-needed-if-milder', outsideLowC: celsius(Math.min(...safe.map(({ outsideLowK }) => outsideLowK))) });
  const failing = chosen.outlook.scenarioLows.filter(({ cropLowsK }) => hurt(cropLowsK, chosen.harvested).length > 0);
  const central = chosen.outlook.scenarioLows[0]!.outsideLowK;
  // Where even the middle of the forecast harms a crop its verdict has said so already.
  const colder = failing.filter(({ outsideLowK }) => outsideLowK < central - COLDER_BY_K);
  if (colder.length > 0 && colder.length === failing.length) {
    const first = colder.reduce((a, b) => (b.outsideLowK > a.outsideLowK ? b : a));
    reasons.push({ code: 'not-enough-if-colder', outsideLowC: celsius(first.outsideLowK), crops: hurt(first.cropLowsK, chosen.harvested).map((k) => crops[k]!.asked) });
  }
  return reasons;
}

/** Plans that would have been better, had there been time: what of them the chosen one does not do anyway. */
function tooLate({ plans, chosen, infeasible }: EveningPlan): AdvisoryReason[] {
  const better = plans.find(({ id, expectedLoss }) => infeasible.includes(id) && expectedLoss < chosen.expectedLoss - 1);
  const isChosen = (one: PlannedAction): boolean => chosen.actions.some((action) => action.action === one.action && ('target' in action ? action.target : null) === ('target' in one ? one.target : null));
  const missed = better?.actions.filter((action) => !isChosen(action)) ?? [];
  return missed.length === 0 ? [] : [{ code: 'too-late', actions: missed.map(missedAction) }];
}

function missedAction(action: PlannedAction): Extract<AdvisoryReason, { code: 'too-late' }>['actions'][number] {
  return {
    action: action.action === 'fan' && action.target === 'tubes' ? 'tube-fan' : action.action,
    ...('target' in action ? { target: action.action === 'fan' ? fanName(action.target) : action.target } : {}),
    ...(action.action === 'harvest' ? { crop: action.crop } : {}),
    ...(action.action === 'heater' ? { setC: action.setK === null ? null : celsius(action.setK) } : {}),
  };
}

function isWorthAWord(note: WeatherNote, nowS: number): boolean {
  if (note.code === 'short-horizon') return note.endsAtS - nowS < SHORT_HORIZON_S;
  return note.code !== 'coarse-steps' || note.startsAtS - nowS < SHORT_HORIZON_S;
}

function noteReason(note: WeatherNote, nowS: number): AdvisoryReason {
  switch (note.code) {
    case 'stale':
      return { code: 'stale-weather', ageHours: Math.round(note.ageS / 3600), cause: note.cause };
    case 'second-service':
      return { code: 'second-weather', failure: note.failure, cause: note.cause };
    case 'coarse-steps':
      return { code: 'weather-note', note: note.code, detail: `${Math.round((note.startsAtS - nowS) / 3600)} h ahead, then in steps of ${note.stepHours} h` };
    case 'invented-demo':
      return { code: 'demo-weather' };
    case 'short-horizon':
      return { code: 'weather-note', note: note.code, detail: `${Math.round((note.endsAtS - nowS) / 3600)} h ahead` };
    case 'short-history':
      return { code: 'weather-note', note: note.code, detail: `${Math.round((nowS - note.startsAtS) / 3600)} h back` };
    case 'filled-gap':
      return { code: 'weather-note', note: note.code, detail: `${note.variable}, ${note.hours} h` };
    case 'second-model-used':
      return { code: 'weather-note', note: note.code, detail: note.variable };
    case 'missing-variable':
      return { code: 'weather-note', note: note.code, detail: `${note.variable}: ${note.instead}` };
    case 'no-ensemble':
    case 'no-members':
      return { code: 'weather-note', note: note.code, detail: note.cause };
  }
}

/** The cautions that belong to what is advised, and to what is not. */
export function cautionsFor(plan: EveningPlan, greenhouse: Greenhouse): readonly { code: CautionCode }[] {
  const codes: CautionCode[] = [];
  if (greenhouse.heater) {
    const { combustion } = HEATER_KINDS[greenhouse.heater.kind];
    if (plan.chosen.fuel || plan.standing.heaterOn) codes.push(combustion === 'none' ? 'heater-electric' : combustion === 'vented' ? 'flame-vented' : 'flame-unvented');
    else if (combustion === 'unvented') codes.push('unvented-left-out');
    else if (combustion === 'vented' && !greenhouse.heater.safetyRead) codes.push('flame-not-advised');
  }
  if (plan.morning.some(({ action }) => action === 'harvest')) codes.push('frozen-leaves');
  if (plan.chosen.actions.some((action) => action.action === 'fan' && action.run)) codes.push('fan-electric');
  if (greenhouse.now.snowOnRoof > 0 || plan.morning.some(({ action }) => action === 'clear-snow')) codes.push('snow-on-film');
  codes.push('not-a-promise');
  return codes.map((code) => ({ code }));
}
