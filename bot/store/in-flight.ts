import { StoreError } from './store-error.js';

/** Counts the calls under way, so that closing waits for them instead of cutting a write in half. */
export class InFlight {
  readonly #underWay = new Set<Promise<unknown>>();
  #closed = false;

  async run<T>(call: () => Promise<T>): Promise<T> {
    if (this.#closed) throw new StoreError('closed', 'The store is closed: expected no more calls after close(), got one. Open the store again.');
    const running = call();
    this.#underWay.add(running);
    try {
      return await running;
    } finally {
      this.#underWay.delete(running);
    }
  }

  /** Takes no more calls; resolves when the last one under way has ended, well or badly. */
  async finish(): Promise<void> {
    this.#closed = true;
    await Promise.allSettled(this.#underWay);
  }
}
