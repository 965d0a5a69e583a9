import { describe } from 'vitest';
import { atomicContract } from './journal/atomic.js';
import { chatsContract } from './journal/chats.js';
import { eraseContract } from './journal/erase.js';
import { inboxContract } from './journal/inbox.js';
import { jobsContract } from './journal/jobs.js';
import { outboxContract } from './journal/outbox.js';
import type { OpenMemory } from './journal/rows.js';

/** What every implementation of Memory must do beyond Store. `open` gives an empty memory each time. */
export function journalContract(name: string, open: OpenMemory): void {
  describe(`the journal contract: ${name}`, () => {
    for (const contract of [inboxContract, outboxContract, jobsContract, chatsContract, eraseContract, atomicContract]) contract(open);
  });
}
