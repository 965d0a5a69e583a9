import { SECONDS_PER_HOUR } from '../units.js';
import { plantsLowK, type TrialNight } from './plants-low.js';

/** Shutting early is only asked for when it is worth this much at the low: nobody likes a stifling house for nothing (project estimate). */
const WORTH_SHUTTING_EARLY_K = 0.15;
const EARLIEST_BEFORE_SUNSET_H = 3;

/**
 * When to shut the vents for the night: at sunset, or earlier by whole hours as long as each hour still warms the low.
 * Units: epoch seconds.
 * Valid: a house with vents.
 * Outside: after sunset the answer is now; null where nothing is to be shut (no vents, an opener, shut already).
 * Source: physics of engine/night; grower practice is two to three hours before sunset.
 */
export function ventsShutS(trial: TrialNight): number | null {
  const { house, standing, nowS } = trial;
  const { sunsetS } = trial.night;
  if (!house.vents || house.vents.byOpener || !standing.ventsMayOpen) return null;
  if (nowS >= sunsetS) return nowS;
  const lowWhenShutAt = (shutS: number): number => plantsLowK(trial, { ventsShutS: shutS });
  let best = sunsetS;
  let bestLowK = lowWhenShutAt(best);
  for (let hours = 1; hours <= EARLIEST_BEFORE_SUNSET_H; hours += 1) {
    const shutS = sunsetS - hours * SECONDS_PER_HOUR;
    if (shutS < nowS) break;
    const lowK = lowWhenShutAt(shutS);
    if (lowK - bestLowK < WORTH_SHUTTING_EARLY_K) break;
    [best, bestLowK] = [shutS, lowK];
  }
  return best;
}
