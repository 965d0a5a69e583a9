import { SECONDS_PER_DAY, SECONDS_PER_MINUTE } from '../../../engine/index.js';

/** What the service is known to give when it says nothing (reported by another client, 2021). */
const USUAL_LIFE_S = 30 * SECONDS_PER_MINUTE;
/** Longer than the time between two forecasts many times over: a clock is wrong. */
const LONGEST_LIFE_S = SECONDS_PER_DAY;

/**
 * When the answer may be asked for again. Our clock and theirs may differ: the later of "at that instant" and "that long from now" counts.
 * Without a usable header the usual life is taken.
 */
export function expiresAtS(headers: { readonly expires: string | null; readonly date: string | null }, nowS: number): number {
  const at = secondsOf(headers.expires);
  const lives = [at - nowS, at - secondsOf(headers.date)].filter((lifeS) => lifeS >= 0 && lifeS <= LONGEST_LIFE_S);
  return Math.ceil(nowS + (lives.length === 0 ? USUAL_LIFE_S : Math.max(...lives)));
}

const secondsOf = (header: string | null): number => (header === null ? Number.NaN : Date.parse(header) / 1000);
