import type { Api } from 'grammy';
import type { Update } from 'grammy/types';
import { asStopSignal } from './bot-api.js';
import { received, type Receiver } from './hand-over.js';
import { WANTED_UPDATES } from './inbound.js';
import type { RealTime } from './real-time.js';
import { pauseMs, untilAnswered } from './until-answered.js';

/** The most that the service gives at once. */
const MOST_UPDATES = 100;

export interface Polling extends Receiver {
  readonly polls: Api;
  readonly pollS: number;
  readonly time: RealTime;
  /** Told of each poll that was answered. */
  readonly answered: () => void;
}

/** Asks for updates until stopped. Asking from a number on confirms all below it, so the number goes up only after an update was taken. */
export async function poll(polling: Polling, signal: AbortSignal): Promise<void> {
  const { polls, pollS, log, time, answered } = polling;
  let offset = 0;
  let failures = 0;
  while (!signal.aborted) {
    const ask = (): Promise<Update[]> => polls.getUpdates({ offset, limit: MOST_UPDATES, timeout: pollS, allowed_updates: WANTED_UPDATES }, asStopSignal(signal));
    const updates = await untilAnswered('getUpdates', ask, { log, time, signal });
    if (updates === null) return;
    answered();
    const next = await firstNotTaken(updates, polling, signal);
    // By the order of the service, not by size: after a quiet week it starts again at a number of its choice.
    const last = updates.at(-1);
    if (next === null && last !== undefined) [offset, failures] = [last.update_id + 1, 0];
    if (next !== null) {
      failures = next === updates[0] ? failures + 1 : 1;
      offset = next.update_id;
      await time.sleepMs(pauseMs(failures, null), signal);
    }
  }
}

/** The first update of a batch that was not taken, or was not reached before the stop; null when all were. */
async function firstNotTaken(updates: readonly Update[], receiver: Receiver, signal: AbortSignal): Promise<Update | null> {
  for (const update of updates) {
    if (signal.aborted || !(await received(update, receiver))) return update;
  }
  return null;
}
