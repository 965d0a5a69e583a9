import { ZERO_CELSIUS_K } from '../units.js';
import { placeIndex, type NightRun } from '../night/night-run.js';
import type { WeatherHours } from '../night/weather.js';

/** What the morning needs, and from when. */
export type MorningAction =
  | { readonly action: 'uncover'; readonly target: string; readonly fromS: number }
  | { readonly action: 'vents'; readonly target: 'open'; readonly fromS: number }
  | { readonly action: 'curtain'; readonly target: 'open'; readonly fromS: number }
  | { readonly action: 'clear-snow'; readonly fromS: number; readonly snowM: number }
  | { readonly action: 'harvest'; readonly target: string; readonly fromS: number };

/** Covers come off when the air under them and the air of the house are back above these: a good cover stays warm while the house still freezes (from memory: inside above 4 degrees C, leaves thawed and pliable). */
const UNCOVER_ABOVE_K = ZERO_CELSIUS_K + 1.5;
const UNCOVER_INSIDE_ABOVE_K = ZERO_CELSIUS_K + 4;
const THAWED_ABOVE_K = ZERO_CELSIUS_K + 0.5;
/** New snow that weighs on a film house or shuts out the light (from memory: 5 cm; wet snow weighs sooner). */
const SNOW_TO_CLEAR_M = 0.05;
const VENT_ABOVE_INSIDE_K = ZERO_CELSIUS_K + 20;

/** First step after an instant at which the temperature has risen above a limit; null when it does not within the run. */
function firstAboveS(run: NightRun, place: number, limits: { afterS: number; aboveK: number }): number | null {
  const series = run.tempK[place]!;
  for (let i = 0; i < series.length; i += 1) {
    const timeS = run.startS + (i + 1) * run.stepS;
    if (timeS >= limits.afterS && series[i]! > limits.aboveK) return timeS;
  }
  return null;
}

/**
 * The morning plan after a night: when to uncover, open the vents, clear snow, and from when frozen leaves may be picked.
 * Units: K, m, epoch seconds.
 * Valid: a run that reaches past sunrise.
 * Outside: what does not become due within the run is left out.
 * Source: Purdue and Utah State extension practice (uncover when thawed; never touch frozen leaves), thresholds as named.
 */
export function morningPlan(input: { run: NightRun; weather: WeatherHours; coveredBeds: readonly string[]; bedsWithCrops: readonly string[]; sunsetS: number; sunriseS: number; hasVents: boolean; curtainDrawn: boolean; roofSnowM: number }): readonly MorningAction[] {
  const { run, sunriseS } = input;
  const actions: MorningAction[] = [];
  const newSnowM = input.weather.timeS.reduce((sum, timeS, i) => (timeS > input.sunsetS && timeS <= sunriseS + run.stepS ? sum + input.weather.snowfallM[i]! : sum), 0);
  const snowM = newSnowM + input.roofSnowM;
  if (snowM >= SNOW_TO_CLEAR_M) actions.push({ action: 'clear-snow', fromS: sunriseS, snowM });
  for (const bed of input.coveredBeds) {
    const place = placeIndex(run.places, { place: 'cover', bed });
    const underS = place < 0 ? null : firstAboveS(run, place, { afterS: sunriseS, aboveK: UNCOVER_ABOVE_K });
    const fromS = underS === null ? null : firstAboveS(run, placeIndex(run.places, { place: 'inside' }), { afterS: underS, aboveK: UNCOVER_INSIDE_ABOVE_K });
    if (fromS !== null) actions.push({ action: 'uncover', target: bed, fromS });
  }
  for (const bed of input.bedsWithCrops) {
    const place = placeIndex(run.places, { place: 'leaf', bed });
    const nightSteps = run.tempK[place]?.subarray(Math.max(0, Math.floor((input.sunsetS - run.startS) / run.stepS)));
    if (nightSteps === undefined || Math.min(...nightSteps) >= ZERO_CELSIUS_K) continue;
    const fromS = firstAboveS(run, place, { afterS: sunriseS, aboveK: THAWED_ABOVE_K });
    if (fromS !== null) actions.push({ action: 'harvest', target: bed, fromS });
  }
  if (input.curtainDrawn) {
    const fromS = firstAboveS(run, placeIndex(run.places, { place: 'inside' }), { afterS: sunriseS, aboveK: UNCOVER_ABOVE_K });
    if (fromS !== null) actions.push({ action: 'curtain', target: 'open', fromS });
  }
  if (input.hasVents) {
    const fromS = firstAboveS(run, placeIndex(run.places, { place: 'inside' }), { afterS: sunriseS, aboveK: VENT_ABOVE_INSIDE_K });
    if (fromS !== null) actions.push({ action: 'vents', target: 'open', fromS });
  }
  return actions;
}
