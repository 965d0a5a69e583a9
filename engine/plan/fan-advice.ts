import type { Fan } from '../greenhouse/house.js';
import { fanAt } from '../night/conditions.js';
import { FAN_PLACES, type FanPlace } from '../night/controls.js';
import { runHouse } from '../night/house-run.js';
import type { HouseModel } from '../night/house-model.js';
import { SECONDS_PER_HOUR } from '../units.js';
import { NO_CHOICES, type NightChoices, type Span } from './action.js';
import { controlsOfChoices } from './controls-of-choices.js';
import { plantsLowK, type TrialNight } from './plants-low.js';

/** What to do with a fan tonight, and what it is worth at the low of the plants. */
export type FanAdvice =
  | { readonly place: FanPlace; readonly advice: 'run'; readonly span: Span; readonly worthK: number; readonly batteryShort: boolean }
  | { readonly place: FanPlace; readonly advice: 'leave-as-it-is' | 'stop'; readonly worthK: number }
  | { readonly place: FanPlace; readonly advice: 'stands-still' | 'no-current' };

/** Less at the low of the plants is not worth a walk (project estimate). */
const WORTH_SWITCHING_K = 0.1;
/** Air that is blown through something this much warmer brings more than its motor and its leaks take (project estimate). */
const WORTH_BLOWING_K = 0.5;
/** After sunrise a fan is left on for an hour: the low comes then. */
const AFTER_SUNRISE_S = SECONDS_PER_HOUR;
/** Starts of a battery's hours that are tried. */
const START_STEP_S = SECONDS_PER_HOUR;

/**
 * For each fan: run it tonight or not, from when until when, by whether it brings the plants more than it takes. A fan that only the sun
 * drives stands still at night and is not credited; a battery is spent on the hours that help most.
 * Units: K, epoch seconds.
 * Valid: a trial of one night; fans are decided one after the other, each on top of those before.
 * Outside: a house without fans gives an empty list.
 * Source: physics of engine/night; limits as named above (project estimates).
 */
export function fanAdvice(trial: TrialNight, choices: Partial<NightChoices>): readonly FanAdvice[] {
  const fans = new Map<FanPlace, Span | null>();
  return FAN_PLACES.flatMap((place): FanAdvice[] => {
    const fan = fanAt(trial.house, place);
    if (!fan) return [];
    const advice = adviceFor(trial, { ...choices, fans }, place, fan);
    if (advice.advice === 'run') fans.set(place, advice.span);
    if (advice.advice === 'stop') fans.set(place, null);
    return [advice];
  });
}

/** The fan part of the choices that follow from advice. Units: none. Valid: any advice. Outside: not applicable. Source: definition. */
export const fansOf = (advice: readonly FanAdvice[]): ReadonlyMap<FanPlace, Span | null> =>
  new Map(advice.flatMap((one): (readonly [FanPlace, Span | null])[] => (one.advice === 'run' ? [[one.place, one.span]] : one.advice === 'stop' ? [[one.place, null]] : [])));

function adviceFor(trial: TrialNight, choices: Partial<NightChoices> & { fans: ReadonlyMap<FanPlace, Span | null> }, place: FanPlace, fan: Fan): FanAdvice {
  const { standing, night, nowS } = trial;
  if (fan.supply === 'sun') return { place, advice: 'stands-still' };
  if (standing.troubles.fansDead || (fan.supply === 'mains' && standing.troubles.powerOut)) return { place, advice: 'no-current' };
  const lowWith = (span: Span | null): number => plantsLowK(trial, { ...choices, fans: new Map([...choices.fans, [place, span]]) });
  const stillLowK = lowWith(null);
  const wholeNight = { fromS: Math.max(nowS, night.sunsetS), untilS: night.sunriseS + AFTER_SUNRISE_S };
  const span = usefulSpan(trial, { ...choices, fans: new Map([...choices.fans, [place, wholeNight]]) }, { place, wholeNight });
  const spans = span === null ? [] : fan.batteryS === null || span.untilS - span.fromS <= fan.batteryS ? [span] : startsOf(span, fan.batteryS);
  const best = spans.map((candidate) => ({ span: candidate, worthK: lowWith(candidate) - stillLowK })).reduce<{ span: Span; worthK: number } | null>((a, b) => (a === null || b.worthK > a.worthK ? b : a), null);
  if (standing.fansOn[place]) {
    const standingWorthK = plantsLowK(trial, choices) - stillLowK;
    return standingWorthK < -WORTH_SWITCHING_K ? { place, advice: 'stop', worthK: -standingWorthK } : { place, advice: 'leave-as-it-is', worthK: standingWorthK };
  }
  if (best === null || best.worthK < WORTH_SWITCHING_K) return { place, advice: 'leave-as-it-is', worthK: best?.worthK ?? 0 };
  return { place, advice: 'run', ...best, batteryShort: spans.length > 1 };
}

/** Every start at which the battery lasts to the end, and the last one whole. */
function startsOf(span: Span, batteryS: number): readonly Span[] {
  const starts: Span[] = [];
  for (let fromS = span.fromS; fromS + batteryS < span.untilS; fromS += START_STEP_S) starts.push({ fromS, untilS: fromS + batteryS });
  return [...starts, { fromS: span.untilS - batteryS, untilS: span.untilS }];
}

/** From the first to the last step at which what the air is blown through is warmer than the air; the whole night for a fan that only stirs. */
function usefulSpan(trial: TrialNight, choices: Partial<NightChoices>, fan: { place: FanPlace; wholeNight: Span }): Span | null {
  if (fan.place === 'air') return fan.wholeNight;
  const { evening, central, house, standing } = trial;
  const { model } = evening.runner;
  let fromS: number | null = null;
  let untilS = 0;
  runHouse(evening.runner, evening.state, central, controlsOfChoices(house, standing, { ...NO_CHOICES, ...choices }), ({ timeS, tempsK }) => {
    if (timeS <= fan.wholeNight.fromS || timeS > fan.wholeNight.untilS) return;
    if (storeTempK(model, tempsK, fan.place) - tempsK[model.air]! < WORTH_BLOWING_K) return;
    fromS ??= timeS - central.stepS;
    untilS = timeS;
  });
  return fromS === null ? null : { fromS, untilS };
}

/** What the fan's air is blown through. */
function storeTempK({ tubes, stoneBox, heap }: HouseModel, tempsK: Float64Array, place: FanPlace): number {
  if (place === 'tubes') return tempsK[tubes!.rings[0]!]!;
  if (place === 'heap') return tempsK[heap!]!;
  return tempsK[stoneBox!.core]!;
}
