import type Database from 'better-sqlite3';
import type { Kysely } from 'kysely';
import { AsyncLocalStorage } from 'node:async_hooks';
import type { WithinMemory } from '../journal.js';
import type { StoreTables } from './schema.js';
import { StoreError } from './store-error.js';
import { Turns } from './turns.js';

export interface AtomicWorkOptions {
  readonly db: Kysely<StoreTables>;
  readonly database: Database.Database;
  /** After this the work is undone, so that one that hangs cannot keep all others waiting. */
  readonly limitMs: number;
  /** The memory of one transaction; every call of it goes through `run`. */
  readonly memoryOn: (db: Kysely<StoreTables>, run: <T>(call: () => Promise<T>) => Promise<T>) => WithinMemory;
}

/** Runs works one at a time, each in one transaction on the one connection. */
export class AtomicWork {
  readonly #options: AtomicWorkOptions;
  // Goes with every call that a work makes, however deep: it tells a call from inside, which would wait for its own end, from one that came by chance at the same time.
  readonly #inside = new AsyncLocalStorage<{ isOver: boolean }>();

  constructor(options: AtomicWorkOptions) {
    this.#options = options;
  }

  refuseFromInside(): void {
    if (this.#inside.getStore()?.isOver !== false) return;
    throw new StoreError('nested', 'The store was called from inside an atomic work: expected the memory that the work was given, got the outer one, which would wait for the end of the work for ever. Use the memory in the argument.');
  }

  run<T>(work: (memory: WithinMemory) => Promise<T>): Promise<T> {
    const { db, database, limitMs, memoryOn } = this.#options;
    return db.transaction().execute(async (transaction) => {
      const session = { isOver: false };
      const turns = new Turns();
      const memory = memoryOn(transaction, (call) =>
        turns.take(() => {
          if (database.inTransaction) return call();
          throw new StoreError('undone', 'The atomic work has been undone by the database after an error in it: expected no more calls, got one. Let the first error end the work.');
        }),
      );
      const limit = timeLimit(limitMs);
      try {
        return await Promise.race([this.#inside.run(session, () => work(memory)), limit.passed]);
      } finally {
        limit.cancel();
        session.isOver = true;
        // Before the commit or the rollback: a call that was not awaited must not end up behind it, on its own.
        await turns.end();
      }
    });
  }
}

function timeLimit(limitMs: number): { readonly passed: Promise<never>; cancel(): void } {
  let timer: NodeJS.Timeout | undefined;
  const passed = new Promise<never>((_, reject) => {
    timer = setTimeout(
      () => reject(new StoreError('too-long', `An atomic work was undone: expected it to end within ${limitMs / 1000} s, got no end. All others wait for it: do network and physics before it, and only write in it.`)),
      limitMs,
    );
  });
  return { passed, cancel: () => clearTimeout(timer) };
}
