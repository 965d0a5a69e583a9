import cron from 'node-cron';
import { setTimeout as sleepMs } from 'node:timers/promises';
import type { Channel, ChannelName, Inbound } from './chat.js';
import type { Memory } from './journal.js';
import { reception, type InboundPorts } from './post/handle-inbound.js';
import { postman, type SendPorts } from './post/send-outbound.js';
import type { Clock, Log } from './ports.js';
import { foreman, type Foreman, type TickPorts } from './schedule/tick.js';

/** Everything the running assistant needs; it owns no state of its own. */
export interface AssistantPorts extends InboundPorts, Omit<SendPorts, 'count'>, Omit<TickPorts, 'count'> {
  readonly memory: Memory;
  readonly channels: ReadonlyMap<ChannelName, Channel>;
  readonly clock: Clock;
  readonly log: Log;
  readonly count: (event: string) => void;
  /** How fast the trial clock runs; 1 in earnest. */
  readonly clockSpeed: number;
}

/** Real milliseconds between two looks into the trays when nothing stirs. */
const IDLE_MS = 500;
/** After a round that failed (a full disk, a database that somebody holds) the next one waits so long. Project estimate. */
const AFTER_FAILURE_MS = 1_000;
/** What is under way at the stop may take so long to end; what then still runs is left, and done anew after the next start. Project estimate. */
const LONGEST_ENDING_MS = 7_000;
const PURGE_AFTER_S = 30 * 86_400;
const MINUTE_S = 60;
const DAY_S = 86_400;

/** Runs until the signal: listens on every channel, answers, sends, and does what is due each minute. Rejects when a channel cannot go on. */
export async function runAssistant(ports: AssistantPorts, signal: AbortSignal): Promise<void> {
  const { memory, channels, log } = ports;
  const recovered = await memory.recoverSends();
  if (recovered > 0) log.warn('messages whose send had no answer before the stop are sent again', { recovered });
  const stopping = new AbortController();
  const stop = (): void => stopping.abort();
  signal.addEventListener('abort', stop, { once: true });
  if (signal.aborted) stop();
  const nudge = bell(stopping.signal);
  const handOver = async (inbound: Inbound): Promise<void> => {
    await memory.keepInbound(inbound);
    nudge.ring();
  };
  const left = new AbortController();
  const working: AssistantPorts = { ...ports, memory: until(left.signal, memory) };
  const post = postman(ports, { signal: stopping.signal, ended: nudge.ring });
  const desk = reception(working, { signal: stopping.signal, ended: nudge.ring });
  const jobs = foreman(working, { signal: stopping.signal, ended: nudge.ring });
  const round = { signal: stopping.signal, nudge, log };
  const loops = [
    ...[...channels.values()].map((channel) => channel.listen(handOver, stopping.signal)),
    untilStopped(round, () => desk.handleOpen()),
    untilStopped(round, () => post.sendDue()),
    minutes(working, jobs, round),
  ];
  const running = Promise.all(loops);
  try {
    await Promise.race([running, aborted(stopping.signal)]);
  } finally {
    stop();
    await within(LONGEST_ENDING_MS, Promise.allSettled([...loops, jobs.idle(), desk.idle(), post.idle()]));
    left.abort();
  }
}

/** What is left unfinished keeps nothing any more: with its weather and threads taken away it could only say that they failed. */
const until = (left: AbortSignal, memory: Memory): Memory => ({
  ...memory,
  atomically: (work) => (left.aborted ? Promise.reject(new Error('left unfinished at the stop')) : memory.atomically(work)),
});

const aborted = (signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    if (signal.aborted) resolve();
    else signal.addEventListener('abort', () => resolve(), { once: true });
  });

/** Waits for the end, but no longer than this. */
async function within(longestMs: number, end: Promise<unknown>): Promise<void> {
  const ended = new AbortController();
  await Promise.race([end, sleepMs(longestMs, undefined, { signal: ended.signal }).catch(() => undefined)]);
  ended.abort();
}

/** Lets idle loops sleep until something happens. */
interface Bell {
  readonly ring: () => void;
  readonly wait: () => Promise<void>;
}

function bell(signal: AbortSignal): Bell {
  let waiting: (() => void)[] = [];
  const ring = (): void => {
    const woken = waiting;
    waiting = [];
    for (const wake of woken) wake();
  };
  signal.addEventListener('abort', ring, { once: true });
  return {
    ring,
    wait: () =>
      new Promise((resolve) => {
        const timer = setTimeout(resolve, IDLE_MS);
        waiting.push(() => {
          clearTimeout(timer);
          resolve();
        });
        if (signal.aborted) ring();
      }),
  };
}

interface Rounds {
  readonly signal: AbortSignal;
  readonly nudge: Bell;
  readonly log: Log;
}

/** Works as long as there is work; a piece of work that was begun is finished before the stop. A round that fails ends nothing: what it meant to do is still there. */
async function untilStopped({ signal, nudge, log }: Rounds, work: () => Promise<number>): Promise<void> {
  while (!signal.aborted) {
    try {
      if ((await work()) > 0) nudge.ring();
      else await nudge.wait();
    } catch (error) {
      if (signal.aborted) return;
      log.error('a round of work failed, the next one follows', { error });
      await sleepMs(AFTER_FAILURE_MS, undefined, { signal }).catch(() => undefined);
    }
  }
}

/** One tick a minute in UTC; with a trial clock one for every minute of its own time. */
async function minutes(ports: AssistantPorts, jobs: Foreman, { signal, log }: Rounds): Promise<void> {
  let lastPurgeS = ports.clock.nowS();
  const everyMinute = async (): Promise<void> => {
    await jobs.beginDue();
    if (signal.aborted || ports.clock.nowS() - lastPurgeS < DAY_S) return;
    const nowS = ports.clock.nowS();
    await ports.memory.purge(nowS - PURGE_AFTER_S);
    lastPurgeS = nowS;
  };
  const safely = (): Promise<void> => everyMinute().catch((error: unknown) => log.error('tick failed', { error }));
  await safely();
  if (ports.clockSpeed === 1) return cronMinutes(safely, signal);
  while (!signal.aborted) {
    await sleepMs((MINUTE_S * 1000) / ports.clockSpeed, undefined, { signal }).catch(() => undefined);
    if (!signal.aborted) await safely();
  }
}

/** In UTC, because a cron in a zone skips or repeats hours when the clocks change. */
function cronMinutes(everyMinute: () => Promise<void>, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    let running: Promise<void> = Promise.resolve();
    const task = cron.schedule('* * * * *', () => (running = everyMinute()), { timezone: 'UTC', noOverlap: true });
    const stop = (): void => void Promise.resolve(task.destroy()).then(() => running).then(() => resolve());
    signal.addEventListener('abort', stop, { once: true });
    if (signal.aborted) stop();
  });
}
