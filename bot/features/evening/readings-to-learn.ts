import { celsiusToKelvin, nightSpan, type AcceptedReading, type Greenhouse } from '../../../engine/index.js';
import type { StoredReading } from '../../ports.js';

/** What tells two thermometers apart. */
const thermometerOf = ({ place, thermometer }: StoredReading): string => thermometer ?? place;

const LEARNED_PLACES: ReadonlySet<string> = new Set(['inside', 'outside', 'cover', 'soil', 'water', 'stones'] satisfies AcceptedReading['place'][]);
const isLearnedPlace = (place: string): place is AcceptedReading['place'] => LEARNED_PLACES.has(place);

/**
 * What is learned from, oldest first: what was judged good, and as a bound what was not reset. Left out are what is open, what
 * the sun was on, highs and what was read by day. Of two lows of one thermometer and night the newer counts.
 */
export function readingsToLearn(rows: readonly StoredReading[], { place }: Pick<Greenhouse, 'place'>): readonly AcceptedReading[] {
  const newest = new Map<string, StoredReading>();
  for (const row of [...rows].sort((a, b) => a.receivedAtS - b.receivedAtS || a.id - b.id)) {
    if ((row.judged !== 'good' && row.judged !== 'not-reset') || row.statistic === 'high' || !isLearnedPlace(row.place)) continue;
    const night = nightSpan(row.validAtS, place);
    if (row.statistic === 'now' && !night.isRunning) continue;
    const time = row.statistic === 'now' ? row.validAtS : Math.round(nightOfLow(row, place));
    newest.set(`${thermometerOf(row)} ${row.statistic} ${time}`, row);
  }
  return [...newest.values()]
    .sort((a, b) => a.validAtS - b.validAtS)
    .flatMap((row): AcceptedReading[] =>
      isLearnedPlace(row.place)
        ? [{ timeS: row.validAtS, place: row.place, statistic: row.statistic === 'low' ? 'low' : 'now', valueK: celsiusToKelvin(row.tempC), thermometer: thermometerOf(row), ...(row.judged === 'not-reset' ? { notReset: true } : {}) }]
        : [],
    );
}

const HALF_DAY_S = 43_200;

/** When the night of a low began: it was read in it or in the morning after. */
const nightOfLow = ({ validAtS }: StoredReading, place: Greenhouse['place']): number => {
  const running = nightSpan(validAtS, place);
  return running.isRunning ? running.sunsetS : nightSpan(validAtS - HALF_DAY_S, place).sunsetS;
};
