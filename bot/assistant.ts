import cron from 'node-cron';
import type { Channel, ChannelName, Inbound } from './chat.js';
import type { Memory } from './journal.js';
import { handleOpen, type InboundPorts } from './post/handle-inbound.js';
import { sendDue, type SendPorts } from './post/send-outbound.js';
import type { Clock, Log } from './ports.js';
import { tick, type TickPorts } from './schedule/tick.js';

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
  const loops = [
    ...[...channels.values()].map((channel) => channel.listen(handOver, stopping.signal)),
    untilStopped(stopping.signal, nudge, () => handleOpen(ports)),
    untilStopped(stopping.signal, nudge, () => sendDue(ports)),
    minutes(ports, stopping.signal, nudge),
  ];
  try {
    await Promise.all(loops);
  } finally {
    stop();
    await Promise.allSettled(loops);
  }
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

/** Works as long as there is work; a piece of work that was begun is finished before the stop. */
async function untilStopped(signal: AbortSignal, { ring, wait }: Bell, work: () => Promise<number>): Promise<void> {
  while (!signal.aborted) {
    if ((await work()) > 0) ring();
    else await wait();
  }
}

/** One tick a minute in UTC; with a trial clock one for every minute of its own time. */
async function minutes(ports: AssistantPorts, signal: AbortSignal, { ring }: Bell): Promise<void> {
  let lastPurgeS = ports.clock.nowS();
  const everyMinute = async (): Promise<void> => {
    await tick(ports);
    ring();
    if (ports.clock.nowS() - lastPurgeS < DAY_S) return;
    lastPurgeS = ports.clock.nowS();
    await ports.memory.purge(lastPurgeS - PURGE_AFTER_S);
  };
  const safely = (): Promise<void> => everyMinute().catch((error: unknown) => ports.log.error('tick failed', { error }));
  await safely();
  if (ports.clockSpeed === 1) return cronMinutes(safely, signal);
  while (!signal.aborted) {
    await new Promise((resolve) => setTimeout(resolve, (MINUTE_S * 1000) / ports.clockSpeed));
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
