import { DateTime } from 'luxon';

let last: { readonly atS: number; readonly zone: string; readonly now: DateTime } | null = null;

/** The grower's clock when the message came. A message is read in many parts, and finding a zone's offset is slow: the last one is kept. */
export function localNow({ atS, zone }: { readonly atS: number; readonly zone: string }): DateTime {
  if (last?.atS !== atS || last.zone !== zone) last = { atS, zone, now: DateTime.fromSeconds(atS, { zone }) };
  return last.now;
}
