import { availableParallelism } from 'node:os';
import type { JobRow } from '../journal.js';
import { subjectOf } from '../post/subject.js';
import { isPassing } from '../store/store-error.js';
import type { JobBody, JobKind } from './day-jobs.js';
import { advisoryJob, recheckJob, reminderJob } from './jobs/evening-jobs.js';
import { NOTHING_TO_WRITE, type JobContext, type JobEnd, type JobPorts } from './jobs/job-context.js';
import { dayJob, morningJob, outcomeJob, weekJob } from './jobs/other-jobs.js';

const HANDLERS = { day: dayJob, week: weekJob, advisory: advisoryJob, reminder: reminderJob, recheck: recheckJob, morning: morningJob, outcome: outcomeJob } as const satisfies Record<JobKind, (context: JobContext) => Promise<JobEnd>>;

const BATCH = 50;
/** Enough to keep every core at work while the weather of the next one is fetched; few enough for a grower who asks meanwhile to come soon. */
const AT_ONCE = 1 + availableParallelism();
/** A job that fails is tried again after this, doubled each time, and given up when it is of no use any more. */
const FIRST_RETRY_S = 60;
const MOST_ATTEMPTS = 8;

export interface TickPorts extends JobPorts {
  readonly count: (event: 'job-done' | 'job-failed' | 'job-dropped') => void;
}

export interface TickOptions {
  /** From then on no job is begun. */
  readonly signal?: AbortSignal;
  /** Told of each job that ended: it may have left messages. */
  readonly ended?: () => void;
}

/** Does what is due, several greenhouses at a time. */
export interface Foreman {
  /** Begins what is due, as far as there are hands, and goes on by itself as long as more is due; waits for none of it. */
  beginDue(): Promise<void>;
  /** Resolves when nothing is under way any more, with how many jobs ended since the start. */
  idle(): Promise<number>;
}

/** What takes long (a week ahead) holds up no other greenhouse: whatever becomes due meanwhile is begun beside it. */
export function foreman(ports: TickPorts, { signal, ended }: TickOptions = {}): Foreman {
  const underWay = new Map<string, Promise<void>>();
  /** Jobs that could not even be put off: left for the next minute. */
  const left = new Set<number>();
  let endedJobs = 0;
  let looking: Promise<void> = Promise.resolve();

  const look = (): Promise<void> => (looking = looking.then(begin));

  async function begin(): Promise<void> {
    if (signal?.aborted || underWay.size >= AT_ONCE) return;
    // One that ends while the tray is looked into may look as if it were due.
    const before = new Set(underWay.keys());
    const due = await ports.memory.dueJobs(ports.clock.nowS(), BATCH * (1 + before.size));
    for (const job of firstOfEach(due)) {
      if (underWay.size >= AT_ONCE) return;
      if (before.has(job.greenhouseId) || left.has(job.id)) continue;
      underWay.set(job.greenhouseId, work(job));
    }
  }

  async function work(job: JobRow): Promise<void> {
    const moved = await runJob(job, ports, signal);
    underWay.delete(job.greenhouseId);
    if (moved) endedJobs += 1;
    else left.add(job.id);
    ended?.();
    void look().catch((error: unknown) => ports.log.error('the next job cannot be looked for', { error }));
  }

  return {
    beginDue: () => {
      left.clear();
      return look();
    },
    async idle() {
      for (let seen = looking; ; seen = looking) {
        await seen.catch(() => undefined);
        await Promise.all(underWay.values());
        if (underWay.size === 0 && seen === looking) return endedJobs;
      }
    },
  };
}

/** Does everything that is due, and waits for it; what was missed while the machine slept is due too. Returns how many jobs ended. */
export async function tick(ports: TickPorts, options: TickOptions = {}): Promise<number> {
  const jobs = foreman(ports, options);
  await jobs.beginDue();
  return jobs.idle();
}

/** The first job of each greenhouse, oldest first. The week ahead takes long and can wait: nobody's evening message waits for it, and the reminder knows of the advisory. */
function firstOfEach(due: readonly JobRow[]): readonly JobRow[] {
  const first = new Map<string, JobRow>();
  for (const job of due.toSorted((one, other) => Number(one.kind === 'week') - Number(other.kind === 'week'))) if (!first.has(job.greenhouseId)) first.set(job.greenhouseId, job);
  return [...first.values()];
}

/** False when the store took nothing of it, not even that it failed. */
async function runJob(job: JobRow, ports: TickPorts, signal?: AbortSignal): Promise<boolean> {
  const { memory, clock, log, count } = ports;
  try {
    const body = JSON.parse(job.body) as JobBody;
    const end = body.uselessAfterS < clock.nowS() ? null : await handled(job, body, ports);
    await memory.atomically(async (within) => {
      await (end ?? NOTHING_TO_WRITE)(within);
      await within.finishJob(job.id, end === null ? 'dropped' : 'done', clock.nowS());
    });
    count(end === null ? 'job-dropped' : 'job-done');
    return true;
  } catch (error) {
    // Cut off by the stop: it is done after the next start.
    if (signal?.aborted) return false;
    log.error('job failed', { kind: job.kind, attempts: job.attempts + 1, error });
    count('job-failed');
    return putOff(job, error, ports).then(
      () => true,
      (why: unknown) => {
        log.error('a failed job cannot be put off', { kind: job.kind, error: why });
        return false;
      },
    );
  }
}

async function putOff(job: JobRow, error: unknown, { memory, clock }: TickPorts): Promise<void> {
  const nowS = clock.nowS();
  // A full or held disk is no fault of the job: it does not count against it.
  if (isPassing(error)) return memory.moveJob(job.key, nowS + FIRST_RETRY_S);
  if (job.attempts + 1 >= MOST_ATTEMPTS) return memory.finishJob(job.id, 'dropped', nowS);
  return memory.postponeJob(job.id, nowS + FIRST_RETRY_S * 2 ** job.attempts);
}

/** Null when nobody is there any more for whom it would be done. */
async function handled(job: JobRow, body: JobBody, ports: TickPorts): Promise<JobEnd | null> {
  const subject = await subjectOf(job.greenhouseId, ports.memory);
  if (!subject) return null;
  return HANDLERS[job.kind as JobKind]({ ...ports, job, body, subject, nowS: Math.floor(ports.clock.nowS()) });
}
