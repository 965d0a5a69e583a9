import type { JobRow } from '../journal.js';
import { subjectOf } from '../post/subject.js';
import type { JobBody, JobKind } from './day-jobs.js';
import { advisoryJob, recheckJob, reminderJob } from './jobs/evening-jobs.js';
import { NOTHING_TO_WRITE, type JobContext, type JobEnd, type JobPorts } from './jobs/job-context.js';
import { dayJob, morningJob, outcomeJob, weekJob } from './jobs/other-jobs.js';

const HANDLERS = { day: dayJob, week: weekJob, advisory: advisoryJob, reminder: reminderJob, recheck: recheckJob, morning: morningJob, outcome: outcomeJob } as const satisfies Record<JobKind, (context: JobContext) => Promise<JobEnd>>;

const BATCH = 20;
/** A job that fails is tried again after this, doubled each time, and given up when it is of no use any more. */
const FIRST_RETRY_S = 60;
const MOST_ATTEMPTS = 8;

export interface TickPorts extends JobPorts {
  readonly count: (event: 'job-done' | 'job-failed' | 'job-dropped') => void;
}

/** Does everything that is due, oldest first; what was missed while the machine slept is due too. Returns how many jobs ended. */
export async function tick(ports: TickPorts): Promise<number> {
  let ended = 0;
  for (;;) {
    const due = await ports.memory.dueJobs(ports.clock.nowS(), BATCH);
    if (due.length === 0) return ended;
    for (const job of due) {
      await runJob(job, ports);
      ended += 1;
    }
  }
}

async function runJob(job: JobRow, ports: TickPorts): Promise<void> {
  const { memory, clock, log, count } = ports;
  const nowS = clock.nowS();
  const body = JSON.parse(job.body) as JobBody;
  try {
    const end = body.uselessAfterS < nowS ? null : await handled(job, body, ports);
    await memory.atomically(async (within) => {
      await (end ?? NOTHING_TO_WRITE)(within);
      await within.finishJob(job.id, end === null ? 'dropped' : 'done', clock.nowS());
    });
    count(end === null ? 'job-dropped' : 'job-done');
  } catch (error) {
    log.error('job failed', { kind: job.kind, attempts: job.attempts + 1, error });
    count('job-failed');
    if (job.attempts + 1 >= MOST_ATTEMPTS) await memory.finishJob(job.id, 'dropped', nowS);
    else await memory.postponeJob(job.id, nowS + FIRST_RETRY_S * 2 ** job.attempts);
  }
}

/** Null when nobody is there any more for whom it would be done. */
async function handled(job: JobRow, body: JobBody, ports: TickPorts): Promise<JobEnd | null> {
  const subject = await subjectOf(job.greenhouseId, ports.memory);
  if (!subject) return null;
  return HANDLERS[job.kind as JobKind]({ ...ports, job, body, subject, nowS: Math.floor(ports.clock.nowS()) });
}
