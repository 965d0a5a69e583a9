import type { House } from '../greenhouse/house.js';
import type { Controls } from '../night/controls.js';
import type { EveningState } from '../night/evening-state.js';
import type { Forcing } from '../night/forcing.js';
import type { NightSpan } from '../night/night-span.js';
import { placeIndex, runNight } from '../night/night-run.js';
import { SECONDS_PER_HOUR } from '../units.js';
import { controlsOfChoices } from './controls-of-choices.js';

/** Shutting early is only asked for when it is worth this much at the low: nobody likes a stifling house for nothing (project estimate). */
const WORTH_SHUTTING_EARLY_K = 0.15;
const EARLIEST_BEFORE_SUNSET_H = 3;

/**
 * When to shut the vents for the night: at sunset, or earlier by whole hours as long as each hour still warms the low.
 * Units: epoch seconds.
 * Valid: a house with vents.
 * Outside: after sunset the answer is now.
 * Source: physics of engine/night; grower practice is two to three hours before sunset.
 */
export function ventsShutS(state: { house: House; night: NightSpan; evening: EveningState; standing: Controls; central: Forcing }, times: { nowS: number; sunsetS: number }): number {
  if (times.nowS >= times.sunsetS) return times.nowS;
  const lowWhenShutAt = (shutS: number): number => {
    const run = runNight(state.evening, state.central, controlsOfChoices(state.house, state.standing, { covers: new Map(), ventsShutS: shutS, heater: null }));
    return Math.min(...run.tempK[placeIndex(run.places, { place: 'inside' })]!);
  };
  let best = times.sunsetS;
  let bestLowK = lowWhenShutAt(best);
  for (let hours = 1; hours <= EARLIEST_BEFORE_SUNSET_H; hours += 1) {
    const shutS = times.sunsetS - hours * SECONDS_PER_HOUR;
    if (shutS < times.nowS) break;
    const lowK = lowWhenShutAt(shutS);
    if (lowK - bestLowK < WORTH_SHUTTING_EARLY_K) break;
    [best, bestLowK] = [shutS, lowK];
  }
  return best;
}
