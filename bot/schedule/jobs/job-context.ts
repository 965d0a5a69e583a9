import type { Outgoing } from '../../chat.js';
import type { EveningSubject } from '../../features/evening/issue-advisory.js';
import type { WorkOut } from '../../features/evening/work-out-evening.js';
import type { WorkOutWeek } from '../../features/outlook/work-out-week.js';
import type { JobRow, Memory, StoredChat, WithinMemory } from '../../journal.js';
import type { Clock, Log, WeatherSource } from '../../ports.js';
import { isQuiet } from '../day-times.js';
import type { JobBody } from '../day-jobs.js';

export interface JobPorts {
  readonly memory: Memory;
  readonly weather: WeatherSource;
  readonly workOut: WorkOut;
  readonly workOutWeek: WorkOutWeek;
  readonly clock: Clock;
  readonly log: Log;
}

/** One job with all it needs. */
export interface JobContext extends JobPorts {
  readonly job: JobRow;
  readonly body: JobBody;
  readonly subject: EveningSubject;
  readonly nowS: number;
}

/** What a job wants written, in one go with its own end. */
export type JobEnd = (memory: WithinMemory) => Promise<void>;

export const NOTHING_TO_WRITE: JobEnd = () => Promise.resolve();

/** Chats of the greenhouse that may be written to unasked. */
export const audienceOf = async ({ memory, subject }: Pick<JobContext, 'memory' | 'subject'>): Promise<readonly StoredChat[]> =>
  (await memory.chatsOf(subject.greenhouseId)).filter(({ paused, reachable }) => !paused && reachable);

/** One message to each chat of the audience, once for each key. */
export function tell(audience: readonly StoredChat[], what: { key: string; message: Outgoing; notBeforeS: number; uselessAfterS: number | null }): JobEnd {
  return async (memory) => {
    for (const { id } of audience) await memory.addOutbound({ chatId: id, key: `${what.key}:${id}`, message: what.message, notBeforeS: what.notBeforeS, uselessAfterS: what.uselessAfterS });
  };
}

export const together =
  (...ends: readonly JobEnd[]): JobEnd =>
  async (memory) => {
    for (const end of ends) await end(memory);
  };

export const isQuietNow = ({ subject, nowS }: Pick<JobContext, 'subject' | 'nowS'>): boolean => isQuiet(subject.greenhouse, subject.zone, nowS);
