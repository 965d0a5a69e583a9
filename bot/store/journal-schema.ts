import type { ColumnType, Generated } from 'kysely';
import type { ChannelName } from '../chat.js';
import type { OutboundState } from '../journal.js';

/** The journal's tables as the queries see them; the rules are those of schema.ts. */
export interface JournalTables {
  readonly chat: ChatTable;
  readonly invite: InviteTable;
  readonly inbound: InboundTable;
  readonly outbound: OutboundTable;
  readonly job: JobTable;
  readonly erasing: ErasingTable;
}

export interface ChatTable {
  readonly id: string;
  readonly channel: ChannelName;
  readonly chat: string;
  readonly greenhouseId: string | null;
  readonly isGroup: 0 | 1;
  readonly since: number;
  readonly paused: 0 | 1;
  readonly reachable: 0 | 1;
  readonly dialogue: string | null;
}

/** A row is gone once its code is spent. */
export interface InviteTable {
  readonly code: string;
  readonly greenhouseId: string;
  readonly validUntilS: number;
}

/** Once done, only what makes an update known again is left: channel, update id and when. */
export interface InboundTable {
  readonly id: Generated<number>;
  readonly channel: ColumnType<ChannelName, ChannelName, never>;
  readonly updateId: ColumnType<string, string, never>;
  readonly chat: string;
  readonly isGroup: 0 | 1;
  readonly sender: string;
  readonly topic: string | null;
  readonly receivedAtS: number;
  readonly content: string | null;
  readonly state: 'open' | 'done' | 'parked';
  readonly attempts: Generated<number>;
  readonly cause: string | null;
  readonly finishedAtS: number | null;
}

/** The row stays for ever, so that its key stays known; the message is emptied by the purge. */
export interface OutboundTable {
  readonly id: Generated<number>;
  readonly chatId: string;
  readonly key: ColumnType<string, string, never>;
  readonly message: string | null;
  readonly state: OutboundState;
  readonly attempts: Generated<number>;
  readonly notBeforeS: number;
  readonly uselessAfterS: number | null;
  readonly triedAtS: number | null;
  readonly sentAs: string | null;
  readonly cause: string | null;
  readonly finishedAtS: number | null;
}

export interface JobTable {
  readonly id: Generated<number>;
  readonly key: ColumnType<string, string, never>;
  readonly kind: string;
  readonly greenhouseId: string;
  readonly dueAtS: number;
  readonly body: string;
  readonly state: 'open' | 'done' | 'dropped';
  readonly attempts: Generated<number>;
  readonly finishedAtS: number | null;
}

/** Ids of the greenhouses and chats that are being erased; empty outside the transaction that erases. */
export interface ErasingTable {
  readonly id: string;
}
