import { availableParallelism } from 'node:os';
import type { EveningQuestion, WorkedOutEvening, WorkOut } from '../features/evening/work-out-evening.js';
import { threadPool } from './thread-pool.js';

const MODULE = new URL(import.meta.url.endsWith('.ts') ? './evening-thread.ts' : './evening-thread.js', import.meta.url);

/** Evenings worked out in threads, with their pictures: one for each core but the one that talks, at least one. */
export function eveningThreads(size = Math.max(1, availableParallelism() - 1)): { readonly workOut: WorkOut; close(): Promise<void> } {
  const pool = threadPool<EveningQuestion, WorkedOutEvening>(MODULE, size);
  return { workOut: pool.ask, close: () => pool.close() };
}
