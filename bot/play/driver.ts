import type { Inbound } from '../chat.js';
import { handleOpen, type InboundPorts } from '../post/handle-inbound.js';
import { postman, type SendPorts } from '../post/send-outbound.js';
import { tick, type TickPorts } from '../schedule/tick.js';
import type { MovingClock } from './moving-clock.js';

export interface DriverPorts extends InboundPorts, Omit<SendPorts, 'count'>, Omit<TickPorts, 'count'> {
  readonly clock: MovingClock;
  readonly count: (event: string) => void;
}

/** In the place of the assistant's loops: everything in its order, and nothing while nobody asks. */
export interface Driver {
  /** Takes in what was said, and returns when all is answered and sent. */
  hear(inbound: Inbound): Promise<void>;
  /** Moves the clock on; what becomes due on the way is done and sent at its own time. */
  moveTo(atS: number): Promise<void>;
}

export function driver(ports: DriverPorts): Driver {
  const { memory, clock } = ports;
  const post = postman(ports);
  const turn = async (): Promise<void> => {
    let stirred: number;
    do {
      stirred = (await handleOpen(ports)) + (await post.sendDue());
      await post.idle();
    } while (stirred > 0);
  };
  let last: Promise<void> = Promise.resolve();
  /** Who speaks while another is answered waits. */
  const inOrder = (work: () => Promise<void>): Promise<void> => (last = last.catch(() => undefined).then(work));
  return {
    hear: (inbound) =>
      inOrder(async () => {
        await memory.keepInbound(inbound);
        await turn();
      }),
    moveTo: (atS) =>
      inOrder(async () => {
        for (let [next] = await memory.dueJobs(atS, 1); next !== undefined; [next] = await memory.dueJobs(atS, 1)) {
          clock.moveTo(next.dueAtS);
          await tick(ports);
          await turn();
        }
        clock.moveTo(atS);
        await turn();
      }),
  };
}
