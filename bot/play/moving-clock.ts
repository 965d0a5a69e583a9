import type { Clock } from '../ports.js';

/** A clock that stands until it is moved on. */
export interface MovingClock extends Clock {
  /** An instant that is over already leaves it where it stands. */
  moveTo(atS: number): void;
}

export function movingClock(startS: number): MovingClock {
  let nowS = Math.floor(startS);
  return { nowS: () => nowS, moveTo: (atS) => void (nowS = Math.max(nowS, Math.floor(atS))) };
}
