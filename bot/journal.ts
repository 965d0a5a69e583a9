import type { ChatAddress, Inbound, Outgoing } from './chat.js';
import type { Store } from './ports.js';

/** A chat that the product knows: one grower, or a group that shares a greenhouse. */
export interface StoredChat extends ChatAddress {
  readonly id: string;
  /** Null while the greenhouse is being set up. */
  readonly greenhouseId: string | null;
  readonly isGroup: boolean;
  readonly since: number;
  /** Nothing is sent unasked. */
  readonly paused: boolean;
  /** Blocked or gone: nothing is sent at all until something comes in. */
  readonly reachable: boolean;
  /** JSON text of what the conversation is in the middle of; null when it is not. */
  readonly dialogue: string | null;
}

export interface InboundRow extends Inbound {
  readonly id: number;
  readonly attempts: number;
}

export type OutboundState = 'waiting' | 'sending' | 'sent' | 'dropped';

export interface OutboundRow {
  readonly id: number;
  readonly chatId: string;
  /** Two messages with the same key are one: a night's advisory, the answer to an update. */
  readonly key: string;
  readonly message: Outgoing;
  readonly state: OutboundState;
  readonly attempts: number;
  readonly notBeforeS: number;
  /** After this it is of no use any more and is dropped. */
  readonly uselessAfterS: number | null;
  /** The channel's id of the message once sent. */
  readonly sentAs: string | null;
}

/** Something to be done for a greenhouse at a time, once for each key. */
export interface JobRow {
  readonly id: number;
  readonly key: string;
  readonly kind: string;
  readonly greenhouseId: string;
  readonly dueAtS: number;
  readonly body: string;
  readonly attempts: number;
}

/** What must survive a pulled plug: what came in, what has to go out, what has to be done. Every promise resolves after the row is safe on disk. */
export interface Journal {
  /** Keeps an update; false when it was known already. */
  keepInbound(inbound: Inbound): Promise<boolean>;
  /** Oldest unfinished update of each chat (order within a chat is kept), oldest first. */
  openInbound(limit: number): Promise<readonly InboundRow[]>;
  finishInbound(id: number, outcome: 'done' | 'parked', atS: number): Promise<void>;
  /** Counts an attempt that failed; returns how many there were. */
  failInbound(id: number, cause: string): Promise<number>;

  /** Adds a message; with a key that is known nothing happens and false comes back. */
  addOutbound(row: { chatId: string; key: string; message: Outgoing; notBeforeS: number; uselessAfterS: number | null }): Promise<boolean>;
  /** Next message of each chat that may go now, in order; none for chats that cannot be reached. */
  dueOutbound(nowS: number, limit: number): Promise<readonly OutboundRow[]>;
  /** Marks before the send, so that after a crash it is known that the message may have gone. */
  beginSend(id: number, atS: number): Promise<void>;
  endSend(id: number, outcome: { state: 'sent'; sentAs: string } | { state: 'waiting'; notBeforeS: number } | { state: 'dropped'; cause: string }, atS: number): Promise<void>;
  /** After a restart: messages that were being sent when the plug was pulled go back to waiting; returns how many. */
  recoverSends(): Promise<number>;
  /** The message that our sent message with this channel id was; null when it is not ours. */
  outboundSentAs(chatId: string, sentAs: string): Promise<OutboundRow | null>;

  /** Adds a job once for each key; false when the key is known, done or not. */
  addJob(row: { key: string; kind: string; greenhouseId: string; dueAtS: number; body: string }): Promise<boolean>;
  dueJobs(nowS: number, limit: number): Promise<readonly JobRow[]>;
  finishJob(id: number, outcome: 'done' | 'dropped', atS: number): Promise<void>;
  postponeJob(id: number, dueAtS: number): Promise<void>;
  /** Moves or cancels what is not done yet. */
  moveJob(key: string, dueAtS: number): Promise<void>;
  cancelJobs(greenhouseId: string, kind?: string): Promise<void>;

  chat(address: ChatAddress): Promise<StoredChat | null>;
  chatById(id: string): Promise<StoredChat | null>;
  /** Makes the chat when it is new. */
  openChat(address: ChatAddress, more: { isGroup: boolean; atS: number }): Promise<StoredChat>;
  updateChat(id: string, change: Partial<Pick<StoredChat, 'greenhouseId' | 'paused' | 'reachable' | 'dialogue'>>): Promise<void>;
  moveChat(id: string, to: string): Promise<void>;
  chatsOf(greenhouseId: string): Promise<readonly StoredChat[]>;
  /** Chats with a greenhouse, in order of id, a page at a time: for the tick. */
  chatsAfter(id: string | null, limit: number): Promise<readonly StoredChat[]>;

  /** A one-time code that lets another chat share a greenhouse. */
  addInvite(row: { code: string; greenhouseId: string; validUntilS: number }): Promise<void>;
  /** The greenhouse of a code that is still valid, and the code is spent; null otherwise. */
  takeInvite(code: string, nowS: number): Promise<string | null>;

  /** Forgets a greenhouse and all that hangs on it: chats, readings, actions, advisories, messages, jobs. */
  eraseGreenhouse(greenhouseId: string): Promise<void>;
  /** Removes finished updates and messages that are older than this, in whole; ids of the last week stay known. */
  purge(olderThanS: number): Promise<void>;
}

/** Store and journal over one database: what is done inside one `atomically` is on disk whole or not at all. */
export interface Memory extends Store, Journal {
  atomically<T>(work: (memory: Omit<Memory, 'atomically' | 'close'>) => Promise<T>): Promise<T>;
  /** A copy of the whole database, consistent while everything runs. */
  backup(path: string): Promise<void>;
}
