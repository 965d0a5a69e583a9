import type { Update } from 'grammy/types';
import type { Inbound } from '../../chat.js';
import type { Clock, Log } from '../../ports.js';
import type { Me } from './begin.js';
import { inboundOf } from './inbound.js';

export type HandOver = (inbound: Inbound) => Promise<void>;

export interface Receiver {
  readonly me: Me;
  readonly clock: Clock;
  readonly log: Log;
  readonly handOver: HandOver;
  /** Told of each hand-over: null when it was taken, else why not. */
  readonly handedOver: (trouble: string | null) => void;
}

/** Hands an update over; true when the service may forget it. What cannot even be read is logged and given up, or it would come again for ever. */
export async function received(update: Update, { me, clock, log, handOver, handedOver }: Receiver): Promise<boolean> {
  let inbound: Inbound | null;
  try {
    inbound = inboundOf(update, me, clock.nowS());
  } catch (error) {
    log.error('telegram update cannot be read', { update: update.update_id, error });
    return true;
  }
  if (inbound === null) return true;
  try {
    await handOver(inbound);
    handedOver(null);
    return true;
  } catch (error) {
    handedOver(error instanceof Error ? error.message : String(error));
    log.error('telegram update was not taken; it comes again', { update: inbound.update, error });
    return false;
  }
}
