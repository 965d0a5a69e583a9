import { StoreError } from './store-error.js';

/** Calls on one transaction, one after the other: two at once would undo each other's steps. */
export class Turns {
  #last: Promise<unknown> = Promise.resolve();
  #over = false;

  take<T>(call: () => Promise<T>): Promise<T> {
    if (this.#over) {
      return Promise.reject(
        new StoreError('over', 'The atomic work is over: expected its memory to be used only until it ended, got a call after that. Await every call inside the work.'),
      );
    }
    const mine = this.#last.then(call);
    this.#last = mine.catch(() => undefined);
    return mine;
  }

  /** Gives no more turns; resolves when the last one has ended, well or badly. */
  async end(): Promise<void> {
    this.#over = true;
    await this.#last;
  }
}
