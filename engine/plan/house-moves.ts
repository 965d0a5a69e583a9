import type { FanPlace } from '../night/controls.js';
import type { NightChoices, Span } from './action.js';
import { fanAdvice, fansOf, type FanAdvice } from './fan-advice.js';
import { plantsLowK, type TrialNight } from './plants-low.js';

/** Small moves for the whole house that go with every plan that sends the grower out. */
export interface HouseMoves {
  readonly curtainFromS: number | null;
  readonly fans: ReadonlyMap<FanPlace, Span | null>;
  readonly fanAdvice: readonly FanAdvice[];
  readonly minutes: number;
}

/** Less at the low of the plants is not worth drawing a curtain for (project estimate). */
const WORTH_DRAWING_K = 0.15;
const CURTAIN_MINUTES = 3;
const FAN_MINUTES = 2;

/**
 * Curtain and fans, decided one after the other in the middle weather.
 * Units: epoch seconds, minutes.
 * Valid: a trial of one night; `ventsShutS` as decided before.
 * Outside: what the house does not have is left out.
 * Source: physics of engine/night; limits as named above (project estimates).
 */
export function houseMoves(trial: TrialNight, ventsShutS: number | null): HouseMoves {
  const curtainFromS = curtainTimeS(trial, ventsShutS);
  const choices: Partial<NightChoices> = { ventsShutS, curtainFromS };
  const advice = fanAdvice(trial, choices);
  const fans = fansOf(advice);
  return { curtainFromS, fans, fanAdvice: advice, minutes: (curtainFromS === null ? 0 : CURTAIN_MINUTES) + fans.size * FAN_MINUTES };
}

/** Is there any move at all? Units: none. Valid: any moves. Outside: not applicable. Source: definition. */
export const hasMoves = ({ curtainFromS, fans }: HouseMoves): boolean => curtainFromS !== null || fans.size > 0;

/** Drawn at sunset, while the day's warmth is still in the house. */
function curtainTimeS(trial: TrialNight, ventsShutS: number | null): number | null {
  const { house, standing, nowS, night } = trial;
  if (!house.curtain || standing.curtainDrawn) return null;
  const fromS = Math.max(nowS, night.sunsetS);
  return plantsLowK(trial, { ventsShutS, curtainFromS: fromS }) - plantsLowK(trial, { ventsShutS }) >= WORTH_DRAWING_K ? fromS : null;
}
