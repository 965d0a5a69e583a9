import { nightSpan, type Greenhouse, type NightSpan } from '../../../engine/index.js';
import type { Reading } from '../../language/intent.js';
import { localTime } from '../../text/local-time.js';

/** Lows come until the sun has warmed the house. */
export const MORNING_IN_LOWS_S = 2 * 3600;

export interface NightOfReading {
  readonly span: NightSpan;
  /** Local date on which it begins, as in an advisory. */
  readonly date: string;
  /** What it speaks of; of a low the time it was read, at most the end of its night. */
  readonly validAtS: number;
}

export interface ReadAt {
  readonly receivedAtS: number;
  readonly zone: string;
  readonly place: Greenhouse['place'];
}

/**
 * The night that a reading belongs to. A low that is told by day or in the evening is of the night that ended that morning,
 * whenever the thermometer was read; after midnight it is of the night that is running.
 */
export function nightOf(reading: Pick<Reading, 'stat' | 'at'>, { receivedAtS, zone, place }: ReadAt): NightOfReading {
  const saidS = reading.at === undefined ? null : Math.floor(Date.parse(reading.at) / 1000);
  const atS = saidS ?? receivedAtS;
  const time = localTime(zone);
  const next = nightSpan(atS, place);
  // A night that was named is meant even in its evening: "26 at 10 last night".
  const isNext = reading.stat !== 'low' || (saidS !== null && next.isRunning);
  const span = isNext ? next : nightSpan(time.atClock(atS, '00:00'), place);
  const endS = Math.floor(span.sunriseS + MORNING_IN_LOWS_S);
  return { span, date: time.date(span.sunsetS), validAtS: reading.stat === 'low' ? Math.min(receivedAtS, endS) : atS };
}
