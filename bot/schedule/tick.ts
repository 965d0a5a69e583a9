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
const AT_ONCE = Math.max(2, availableParallelism());
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

/** Does everything that is due, oldest first, several greenhouses at a time; what was missed while the machine slept is due too. Returns how many jobs ended. */
export async function tick(ports: TickPorts, { signal, ended }: TickOptions = {}): Promise<number> {
  let endedJobs = 0;
  for (;;) {
    const due = await ports.memory.dueJobs(ports.clock.nowS(), BATCH);
    const queues = byGreenhouse(due);
    let moved = 0;
    const worker = async (): Promise<void> => {
      for (let queue = queues.shift(); queue; queue = queues.shift()) {
        // One after the other: the reminder must know of the advisory.
        for (const job of queue) {
          if (signal?.aborted) return;
          if (await runJob(job, ports, signal)) moved += 1;
          ended?.();
        }
      }
    };
    await Promise.all(Array.from({ length: AT_ONCE }, worker));
    endedJobs += moved;
    // What could not even be put off is left for the next minute.
    if (moved === 0 || signal?.aborted) return endedJobs;
  }
}

function byGreenhouse(jobs: readonly JobRow[]): JobRow[][] {
  const queues = new Map<string, JobRow[]>();
  // The week ahead takes long and can wait: nobody's evening message waits for it.
  for (const job of jobs.toSorted((a, b) => Number(a.kind === 'week') - Number(b.kind === 'week'))) queues.set(job.greenhouseId, [...(queues.get(job.greenhouseId) ?? []), job]);
  return [...queues.values()];
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
