import { scaleLinear } from 'd3-scale';
import { DateTime } from 'luxon';

/** Time across the picture, on the grower's own clock. */
export interface TimeAxis {
  readonly fromS: number;
  readonly toS: number;
  xOf(timeS: number): number;
  readonly ticks: readonly { readonly timeS: number; readonly x: number; readonly clock: string }[];
}

/** All offsets of time zones are whole quarters of an hour: every full hour of any clock is among these instants. */
const QUARTER_S = 900;
/** Steps that divide the day, so that midnight is always among the ticks. */
const HOUR_STEPS = [1, 2, 3, 4, 6] as const;
const SECONDS_PER_HOUR = 3600;
const SECONDS_PER_MINUTE = 60;

const clockAt = (timeS: number, zone: string): DateTime => DateTime.fromSeconds(timeS, { zone });

/** How far the clock is put forward in a span (s); negative where it goes back, 0 on most nights. */
export const clockShiftS = ({ fromS, toS, zone }: { readonly fromS: number; readonly toS: number; readonly zone: string }): number => (clockAt(toS, zone).offset - clockAt(fromS, zone).offset) * SECONDS_PER_MINUTE;

/** The axis from one instant to another, with a tick at every n-th full hour of the clock, as many as have room. */
export function timeAxis(span: { readonly fromS: number; readonly toS: number; readonly zone: string }, across: { readonly leftX: number; readonly rightX: number; readonly leastTickPx: number }): TimeAxis {
  const { fromS, toS, zone } = span;
  const scale = scaleLinear().domain([fromS, toS]).range([across.leftX, across.rightX]);
  const xOf = (timeS: number): number => scale(timeS);
  const stepHours = HOUR_STEPS.find((hours) => xOf(fromS + hours * SECONDS_PER_HOUR) - across.leftX >= across.leastTickPx) ?? HOUR_STEPS.at(-1)!;
  const quarters = Math.max(0, Math.floor(toS / QUARTER_S) - Math.ceil(fromS / QUARTER_S) + 1);
  const ticks = Array.from({ length: quarters }, (_, q) => (Math.ceil(fromS / QUARTER_S) + q) * QUARTER_S)
    .map((timeS) => ({ timeS, at: clockAt(timeS, zone) }))
    .filter(({ at }) => at.minute === 0 && at.hour % stepHours === 0)
    .map(({ timeS, at }) => ({ timeS, x: xOf(timeS), clock: at.toFormat('HH:mm') }));
  return { fromS, toS, xOf, ticks };
}
