import type { Log } from '../../ports.js';
import { callFailure, type CallFailure } from './call-failure.js';
import type { RealTime } from './real-time.js';
import { stoppedBy } from './stopped.js';

/** First pause after a failure, and the longest. Project estimate: a short break is bridged quickly, a long one not hammered. */
export const FIRST_PAUSE_MS = 1_000;
export const LONGEST_PAUSE_MS = 30_000;

/** How long to wait after so many failures in a row (1 for the first); what the service asks for goes first. */
export function pauseMs(failures: number, failure: CallFailure | null): number {
  if (failure?.kind === 'answered' && failure.retryAfterS !== null) return failure.retryAfterS * 1000;
  return Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** (failures - 1));
}

export interface Patience {
  readonly log: Log;
  readonly time: RealTime;
  readonly signal: AbortSignal;
}

/** Calls until there is an answer. Null when stopped meanwhile; throws TelegramStoppedError when asking again is of no use. */
export async function untilAnswered<T>(method: string, call: () => Promise<T>, { log, time, signal }: Patience): Promise<T | null> {
  for (let failures = 1; !signal.aborted; failures++) {
    try {
      return await call();
    } catch (error) {
      if (signal.aborted) return null;
      const failure = callFailure(error);
      const stopped = stoppedBy(failure, method);
      if (stopped) throw stopped;
      const waitMs = pauseMs(failures, failure);
      log.warn('telegram does not answer', { method, cause: failure.cause, waitMs });
      await time.sleepMs(waitMs, signal);
    }
  }
  return null;
}
