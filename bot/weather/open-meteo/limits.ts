import { SECONDS_PER_DAY, SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from '../../../engine/index.js';

/** What a "too many requests" asks of us: wait and ask again, or leave the service alone until an instant. */
export type LimitAdvice = { readonly kind: 'wait'; readonly waitS: number } | { readonly kind: 'stay-away'; readonly untilS: number };

const CONCURRENT_WAITS_S = [2, 4, 8];
// The counter starts anew with the minute; being refused twice means that others share our address.
const MINUTELY_WAITS = 2;
// Long enough not to make it worse, short enough that an evening is not lost to a limit of a kind that we do not know.
const UNKNOWN_LIMIT_S = 15 * SECONDS_PER_MINUTE;

const nextMultiple = (nowS: number, stepS: number): number => (Math.floor(nowS / stepS) + 1) * stepS;

/**
 * Reads the reason of a 429: the service counts by wall-clock minute, hour and UTC day, and lets one request run at a time.
 * refusals: how many times this request was refused before. jitterS: so that not everybody comes back in the same second.
 */
export function adviceOnLimit(reason: string, state: { readonly nowS: number; readonly refusals: number; readonly jitterS: number }): LimitAdvice {
  const { nowS, refusals, jitterS } = state;
  if (/minutely/i.test(reason)) {
    const nextMinuteS = nextMultiple(nowS, SECONDS_PER_MINUTE);
    return refusals < MINUTELY_WAITS ? { kind: 'wait', waitS: nextMinuteS - nowS + jitterS } : { kind: 'stay-away', untilS: nextMinuteS };
  }
  if (/concurrent/i.test(reason)) {
    const waitS = CONCURRENT_WAITS_S[refusals];
    return waitS === undefined ? { kind: 'stay-away', untilS: nextMultiple(nowS, SECONDS_PER_MINUTE) } : { kind: 'wait', waitS };
  }
  if (/hourly/i.test(reason)) return { kind: 'stay-away', untilS: nextMultiple(nowS, SECONDS_PER_HOUR) };
  if (/daily/i.test(reason)) return { kind: 'stay-away', untilS: nextMultiple(nowS, SECONDS_PER_DAY) };
  return { kind: 'stay-away', untilS: nowS + UNKNOWN_LIMIT_S };
}
