import type { ChannelName, ChatAddress, Inbound, Outgoing } from './chat.js';
import type { Records, Store } from './ports.js';

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
  /** Keeps an update; false when it was known already. Known it stays for a week at least after it is finished. */
  keepInbound(inbound: Inbound): Promise<boolean>;
  /** Oldest unfinished update of each chat (order within a chat is kept), oldest first. */
  openInbound(limit: number): Promise<readonly InboundRow[]>;
  /** Once only: rejects for one that is finished, so that what was written with it atomically is undone. Of a done one only its id is kept, of a parked one all until the purge. */
  finishInbound(id: number, outcome: 'done' | 'parked', atS: number): Promise<void>;
  /** Counts an attempt that failed; returns how many there were. */
  failInbound(id: number, cause: string): Promise<number>;

  /** Adds a message; with a key that was ever used nothing happens and false comes back. Rejects for a chat that is not there (any more). */
  addOutbound(row: { chatId: string; key: string; message: Outgoing; notBeforeS: number; uselessAfterS: number | null }): Promise<boolean>;
  /**
   * Next message of each chat that may go now, least `notBeforeS` first (0 goes before all others); none for chats that cannot be reached.
   * In a chat: in the order added. One that is being sent, or waits to be tried again, holds back those after it; one that was never tried and whose time is yet to come holds back none.
   * Drops what is of no use any more first. `held`: channels to which nothing goes just now.
   */
  dueOutbound(nowS: number, limit: number, held?: readonly ChannelName[]): Promise<readonly OutboundRow[]>;
  /** Marks before the send, so that after a crash it is known that the message may have gone. Rejects when it does not wait (any more): then it must not be sent. */
  beginSend(id: number, atS: number): Promise<void>;
  /** Ends a send that was begun; a waiting message may be dropped without one. Nothing happens when the message was erased meanwhile. */
  endSend(id: number, outcome: { state: 'sent'; sentAs: string } | { state: 'waiting'; notBeforeS: number } | { state: 'dropped'; cause: string }, atS: number): Promise<void>;
  /** After a restart: messages that were being sent when the plug was pulled go back to waiting; returns how many. */
  recoverSends(): Promise<number>;
  /** The message that our sent message with this channel id was; null when it is not ours, or was purged. */
  outboundSentAs(chatId: string, sentAs: string): Promise<OutboundRow | null>;

  /** Adds a job once for each key; false when the key is known, done or not. */
  addJob(row: { key: string; kind: string; greenhouseId: string; dueAtS: number; body: string }): Promise<boolean>;
  dueJobs(nowS: number, limit: number): Promise<readonly JobRow[]>;
  /** Once only: as done, rejects for one that is finished or cancelled, so that what was written with it atomically is undone. */
  finishJob(id: number, outcome: 'done' | 'dropped', atS: number): Promise<void>;
  /** Counts an attempt and tries again later; nothing happens when it was cancelled meanwhile. */
  postponeJob(id: number, dueAtS: number): Promise<void>;
  /** Moves what is not done yet, with another body where one is given. */
  moveJob(key: string, dueAtS: number, body?: string): Promise<void>;
  /** Removes what is not done yet, of one kind or all; their keys are free again. */
  cancelJobs(greenhouseId: string, kind?: string): Promise<void>;

  chat(address: ChatAddress): Promise<StoredChat | null>;
  chatById(id: string): Promise<StoredChat | null>;
  /** Makes the chat when it is new. */
  openChat(address: ChatAddress, more: { isGroup: boolean; atS: number }): Promise<StoredChat>;
  /** Rejects for a chat that is not there (any more). */
  updateChat(id: string, change: Partial<Pick<StoredChat, 'greenhouseId' | 'paused' | 'reachable' | 'dialogue'>>): Promise<void>;
  /** Another address, also for what it said and is not answered yet. A chat that is there already becomes one with it: the id, greenhouse and dialogue of the moved one stand, and a greenhouse that no chat has any more is kept without open jobs. */
  moveChat(id: string, to: string): Promise<void>;
  /** Oldest first. */
  chatsOf(greenhouseId: string): Promise<readonly StoredChat[]>;
  /** Chats with a greenhouse, in order of id, a page at a time: for the tick. */
  chatsAfter(id: string | null, limit: number): Promise<readonly StoredChat[]>;

  /** Channels that any chat is on. */
  channelsInUse(): Promise<readonly ChannelName[]>;
  /** Whether the chat has said something that is not answered yet, or a message to it is on its way or may go now. */
  isUnsettled(address: ChatAddress, nowS: number): Promise<boolean>;

  /** A one-time code that lets another chat share a greenhouse. */
  addInvite(row: { code: string; greenhouseId: string; validUntilS: number }): Promise<void>;
  /** The greenhouse of a code that is still valid, and the code is spent; null otherwise. */
  takeInvite(code: string, nowS: number): Promise<string | null>;

  /**
   * Forgets a greenhouse and all that hangs on it: chats, readings, actions, outcomes, marks, advisories, messages, jobs, invites, and the weather of its place unless another greenhouse is there.
   * Updates that are not finished stay, to be answered as from a new chat: to say farewell, open the chat again in the same work.
   */
  eraseGreenhouse(greenhouseId: string): Promise<void>;
  /** Forgets one chat and its messages: one that never set up a greenhouse, or leaves a shared one. */
  eraseChat(id: string): Promise<void>;
  /** Empties what was finished before this instant: updates, messages, jobs, invites, weather of places nobody asks for. Keys of messages and jobs stay known for ever, ids of updates a week longer. */
  purge(olderThanS: number): Promise<void>;
}

/** What a work may use inside `atomically`. */
export type WithinMemory = Records & Journal;

/** Store and journal over one database: what is done inside one `atomically` is on disk whole or not at all. */
export interface Memory extends Store, Journal {
  /**
   * Runs the work in one transaction while all other calls wait; when it throws, all of it is undone.
   * The work uses only the memory it is given (the outer one is refused inside) and only reads and writes: network and physics come before. One that does not end in time is undone and rejected.
   */
  atomically<T>(work: (memory: WithinMemory) => Promise<T>): Promise<T>;
  /** A copy of the whole database to a new file, consistent while everything runs. */
  backup(path: string): Promise<void>;
}
