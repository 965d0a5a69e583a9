import { createHash, timingSafeEqual } from 'node:crypto';
import type { Update } from 'grammy/types';
import type { Door, Knock } from '../../http/door.js';
import { received, type Receiver } from './hand-over.js';

const SECRET_HEADER = 'x-telegram-bot-api-secret-token';
const TAKEN = 200;
const NO_UPDATE = 400;
const NOT_THE_SERVICE = 403;
/** The service tries again. */
const COME_AGAIN = 503;

/** Where the service brings updates when it does not wait for polls. */
export class WebhookDoor implements Door {
  private receiver: Receiver | null = null;
  private readonly underWay = new Set<Promise<boolean>>();

  constructor(
    readonly path: string,
    private readonly secret: string,
  ) {}

  open(receiver: Receiver): void {
    this.receiver = receiver;
  }

  /** From now on the service is asked to come again; resolves when all that was being taken is taken. */
  async close(): Promise<void> {
    this.receiver = null;
    await Promise.all(this.underWay);
  }

  async knock({ header, body }: Knock): Promise<number> {
    if (!isSameSecret(header(SECRET_HEADER) ?? '', this.secret)) return NOT_THE_SERVICE;
    if (this.receiver === null) return COME_AGAIN;
    const update = updateIn(body);
    if (update === null) return NO_UPDATE;
    const taking = received(update, this.receiver);
    this.underWay.add(taking);
    const taken = await taking;
    this.underWay.delete(taking);
    return taken ? TAKEN : COME_AGAIN;
  }
}

/** Compares digests, so that neither length nor content shows in the time it takes. */
const isSameSecret = (given: string, ours: string): boolean => timingSafeEqual(digest(given), digest(ours));
const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

function updateIn(body: string): Update | null {
  try {
    const update: unknown = JSON.parse(body);
    return typeof update === 'object' && update !== null && 'update_id' in update && Number.isSafeInteger(update.update_id) ? (update as Update) : null;
  } catch {
    return null;
  }
}
