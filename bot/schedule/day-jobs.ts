import type { Greenhouse } from '../../engine/index.js';
import { dayTimes, type DayTimes } from './day-times.js';

/** What is done for a greenhouse on a local day, each thing once. */
export const JOB_KINDS = ['day', 'week', 'advisory', 'reminder', 'recheck', 'morning', 'outcome'] as const;
export type JobKind = (typeof JOB_KINDS)[number];

export interface PlannedJob {
  readonly key: string;
  readonly kind: JobKind;
  readonly greenhouseId: string;
  readonly dueAtS: number;
  readonly body: string;
}

/** What a job needs to know besides its greenhouse. */
export interface JobBody {
  /** Local date of its evening; of a morning, that of the evening before. */
  readonly date: string;
  /** After this it is dropped. */
  readonly uselessAfterS: number;
}

export const jobKey = (kind: JobKind, greenhouseId: string, date: string): string => `${kind}:${greenhouseId}:${date}`;

/** The jobs of one local day, and the one that plans the next: a chain that goes on by itself, whatever was missed. */
export function jobsOfDay(greenhouseId: string, greenhouse: Greenhouse, zone: string, date: string): readonly PlannedJob[] {
  const times = dayTimes(greenhouse, zone, date);
  const job = (kind: JobKind, dueAtS: number, uselessAfterS: number): PlannedJob => ({ key: jobKey(kind, greenhouseId, date), kind, greenhouseId, dueAtS, body: JSON.stringify({ date, uselessAfterS } satisfies JobBody) });
  return [
    job('week', times.weekS, times.advisoryS + WEEK_USEFUL_S),
    job('advisory', times.advisoryS, times.uselessAfterS),
    job('reminder', times.reminderS, times.deadlineS),
    job('recheck', times.recheckS, times.bedtimeS),
    job('morning', times.morningS, times.morningS + MORNING_USEFUL_S),
    nextDay(job, times),
  ];
}

/** The week is worth a word all afternoon; the morning plan until noon. */
const WEEK_USEFUL_S = 3 * 3600;
const MORNING_USEFUL_S = 4 * 3600;
const FOR_EVER_S = Number.MAX_SAFE_INTEGER;

const nextDay = (job: (kind: JobKind, dueAtS: number, uselessAfterS: number) => PlannedJob, { nextDayS }: DayTimes): PlannedJob => job('day', nextDayS, FOR_EVER_S);
