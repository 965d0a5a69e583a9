import type { Outgoing } from '../chat.js';
import type { InboundRow, StoredChat, WithinMemory } from '../journal.js';

/** What is written with an answer, and the messages of the answer in order. */
export type Handled = (memory: WithinMemory) => Promise<readonly Outgoing[]>;

/** How a greenhouse comes to be described, and how it is changed later in plain words. */
export interface Describe {
  /** The next step of the description, begun where there is none; null for a message that is about something else. */
  readonly next: (row: InboundRow, chat: StoredChat) => Promise<Handled | null>;
  /** "The tunnel is 10 feet tall": null when the text changes nothing. */
  readonly change: (text: string, chat: StoredChat) => Promise<Handled | null>;
}
