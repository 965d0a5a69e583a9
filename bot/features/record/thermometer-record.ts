import { celsiusToKelvin, rangeRecord, type RangeRecord } from '../../../engine/index.js';
import { keyOf, type PastNight, type ReadLow, type Thermometer } from './past-nights.js';

/** How right the forecasts for one thermometer were. */
export interface ThermometerRecord {
  readonly thermometer: Thermometer;
  /** Null before the first night that can be judged. */
  readonly record: RangeRecord | null;
  /** Nights of which only a bound is known: how many fit what was said, how many were warmer than it. */
  readonly bounds: { readonly fit: number; readonly warmer: number };
  /** Nights left out, and why. */
  readonly leftOut: { readonly otherwise: number; readonly notTold: number; /** Asked about and not answered. */ readonly open: number };
}

/** The nights of one thermometer, beside what was said of its place. */
export function recordOf(nights: readonly PastNight[], { place, name }: Thermometer): ThermometerRecord {
  const reads = nights.flatMap((night) => night.reads.filter((read) => keyOf(read) === keyOf({ place, name })).map((read) => ({ ...read, followed: night.followed })));
  const said = reads.filter((read): read is typeof read & { said: NonNullable<ReadLow['said']> } => read.said !== null);
  const judged = said.filter(({ judged, compares }) => judged === 'good' && compares);
  const bounds = said.filter(({ judged, compares }) => judged === 'not-reset' && compares);
  const warmer = bounds.filter(({ tempC, said: { q90 } }) => tempC > q90).length;
  const leftOut = said.filter(({ judged, compares }) => judged === 'good' && !compares);
  return {
    thermometer: { place, name },
    record: rangeRecord(judged.map(({ tempC, said: { q10, q50, q90 } }) => ({ middleK: celsiusToKelvin(q50), q10K: celsiusToKelvin(q10), q90K: celsiusToKelvin(q90), readingK: celsiusToKelvin(tempC) }))),
    bounds: { fit: bounds.length - warmer, warmer },
    leftOut: { otherwise: leftOut.filter(({ followed }) => followed === 'otherwise').length, notTold: leftOut.filter(({ followed }) => followed === 'not-told').length, open: said.filter(({ judged }) => judged === 'open').length },
  };
}
