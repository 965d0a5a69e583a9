import { availableParallelism } from 'node:os';
import type { WorkedOutEvening, WorkOut } from '../features/evening/work-out-evening.js';
import type { Week } from '../features/outlook/week.js';
import type { WorkOutWeek } from '../features/outlook/work-out-week.js';
import type { DrawNights } from '../features/record/nights-picture.js';
import type { NightAnswer, NightQuestion } from './night-thread.js';
import { threadPool } from './thread-pool.js';

const MODULE = new URL(import.meta.url.endsWith('.ts') ? './night-thread.ts' : './night-thread.js', import.meta.url);

export interface NightThreads {
  readonly workOut: WorkOut;
  readonly workOutWeek: WorkOutWeek;
  readonly drawNights: DrawNights;
  close(): Promise<void>;
}

/** Evenings with their pictures and weeks, worked out in threads, one for each core: the thread that talks needs little. */
export function nightThreads(size = availableParallelism()): NightThreads {
  const pool = threadPool<NightQuestion, NightAnswer>(MODULE, size);
  return {
    workOut: async (evening) => (await pool.ask({ about: 'evening', evening })) as WorkedOutEvening,
    workOutWeek: async (week) => (await pool.ask({ about: 'week', week })) as Week,
    drawNights: async (nights) => (await pool.ask({ about: 'nights', nights })) as string | null,
    close: () => pool.close(),
  };
}
