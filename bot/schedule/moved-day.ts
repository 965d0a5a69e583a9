import { checkGreenhouse, type Greenhouse } from '../../engine/index.js';
import type { Journal } from '../journal.js';
import type { Store } from '../ports.js';
import { zoneOf } from '../time-zone.js';
import { jobsOfDay } from './day-jobs.js';
import { dateOf } from './day-times.js';

type Planned = Pick<Store, 'greenhouse' | 'saveGreenhouse'> & Pick<Journal, 'addJob' | 'moveJob'>;

/** A memory in which whatever changes a greenhouse moves what is planned for its day: another place, time or house has other hours. */
export function movingTheDay<T extends Planned>(memory: T, nowS: number): T {
  return {
    ...memory,
    saveGreenhouse: async (row: Parameters<Planned['saveGreenhouse']>[0]) => {
      const before = await memory.greenhouse(row.id);
      const stored = await memory.saveGreenhouse(row);
      if (before !== null && before.version !== stored.version) await moveDay(row.id, { before: before.body, after: stored.body, nowS }, memory);
      return stored;
    },
  };
}

/** What was done stays done; what is still to come has its new time, and comes at once where that is over. */
async function moveDay(greenhouseId: string, { before, after, nowS }: { readonly before: string; readonly after: string; readonly nowS: number }, memory: Planned): Promise<void> {
  const greenhouse = greenhouseIn(after);
  if (greenhouse === null) return;
  const zone = zoneOf(greenhouse);
  const earlier = greenhouseIn(before);
  const today = dateOf(nowS, zone);
  // In another zone it may be another day, and what was planned is of the day that it was before.
  const planned = earlier === null ? today : dateOf(nowS, zoneOf(earlier));
  for (const date of new Set([today, planned])) {
    for (const job of jobsOfDay(greenhouseId, greenhouse, zone, date)) {
      // Its time may have been over when the day was planned, and is now to come.
      const isNew = date === today && job.dueAtS > nowS && (await memory.addJob(job));
      if (!isNew) await memory.moveJob(job.key, job.dueAtS, job.body);
    }
  }
}

function greenhouseIn(body: string): Greenhouse | null {
  const check = checkGreenhouse(JSON.parse(body));
  return check.ok ? check.greenhouse : null;
}
