import { SECONDS_PER_HOUR, type WeatherHours } from '../../engine/index.js';
import type { WeatherNote } from '../ports.js';
import { AHEAD_HOURS, FULL_PAST_HOURS } from './open-meteo/request.js';

export const hourOf = (timeS: number): number => Math.floor(timeS / SECONDS_PER_HOUR) * SECONDS_PER_HOUR;

/** The first hour of the fifteen past days. */
export const firstWantedS = (nowS: number): number => hourOf(nowS) - FULL_PAST_HOURS * SECONDS_PER_HOUR;

/** Notes on how far the hours reach, compared with fifteen past days and a week ahead. */
export function spanNotes(hours: WeatherHours, nowS: number): readonly WeatherNote[] {
  const hourNowS = hourOf(nowS);
  const startsAtS = hours.timeS[0] ?? hourNowS;
  const endsAtS = hours.timeS.at(-1) ?? hourNowS;
  return [
    ...(startsAtS > firstWantedS(nowS) ? [{ code: 'short-history', startsAtS } as const] : []),
    // The service counts the hour of now as the first of the hours ahead.
    ...(endsAtS < hourNowS + (AHEAD_HOURS - 1) * SECONDS_PER_HOUR ? [{ code: 'short-horizon', endsAtS } as const] : []),
  ];
}
