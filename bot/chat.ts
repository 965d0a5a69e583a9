/** A message in and a message out, in one shape for every channel. No logic here. */

export type ChannelName = 'telegram' | 'sms' | 'console';

/** Where a conversation takes place: one person's chat, or a group's. */
export interface ChatAddress {
  readonly channel: ChannelName;
  /** The channel's own id of the chat, as text. */
  readonly chat: string;
}

/** What came in. Whatever the product cannot use still has a kind, so that it can be answered kindly. */
export type Content =
  | { readonly kind: 'text'; readonly text: string; readonly forwarded: boolean; /** Id of our message that this answers. */ readonly answers?: string; /** The channel's id of it, where it can be edited later. */ readonly message?: string }
  | { readonly kind: 'edited'; readonly text: string; /** The channel's id of the message that was edited. */ readonly message: string }
  | { readonly kind: 'press'; readonly button: string; /** Our message that the button stood under. */ readonly message: string; /** What the channel wants back to stop its waiting sign. */ readonly token: string }
  | { readonly kind: 'location'; readonly latitude: number; readonly longitude: number }
  | { readonly kind: 'photo'; readonly caption: string | null }
  | { readonly kind: 'blocked' }
  | { readonly kind: 'unblocked' }
  /** The chat goes on under another id. */
  | { readonly kind: 'moved'; readonly to: string }
  /** A sticker, a voice message, a poll: what it is called. */
  | { readonly kind: 'other'; readonly what: string };

export interface Inbound extends ChatAddress {
  /** The channel's own id of the update: the same update never counts twice. */
  readonly update: string;
  readonly isGroup: boolean;
  /** The channel's id of the person; in a group several people write in one chat. */
  readonly sender: string;
  /** The part of a group in which it was said, by the channel's id, where the group has parts: an answer goes there. */
  readonly topic?: string;
  /** When it was written, as the channel knows it: after an outage earlier than now. */
  readonly receivedAtS: number;
  readonly content: Content;
}

export interface Button {
  /** At most 64 bytes: comes back in a press. */
  readonly id: string;
  readonly label: string;
}

/** A file for the grower to keep. */
export interface OutgoingDocument {
  readonly name: string;
  /** All that is in it, UTF-8. */
  readonly text: string;
}

/** What goes out: plain text with `*bold*` nowhere; the channel renders the structure. */
export interface Outgoing {
  readonly text: string;
  /** The same words, line for line, for a channel that shows simple markup (Telegram HTML); plain text where left out. */
  readonly html?: string;
  /** All that matters in one plain text message, where shortening the text from its end would lose it. */
  readonly short?: string;
  /** Rows of buttons; a channel without buttons leaves them out. */
  readonly buttons?: readonly (readonly Button[])[];
  /** A PNG that goes with the text, base64; a channel without pictures leaves it out. */
  readonly picturePng?: string;
  /** Files that go with the text; a channel without files leaves them out. */
  readonly documents?: readonly OutgoingDocument[];
  /** The part of a group where it belongs; left out for the group as a whole. */
  readonly topic?: string;
  /** Ask for the place with the channel's own button, where it has one. */
  readonly asksForLocation?: boolean;
}

/** How a send ended. */
export type SendResult =
  /** `message`: the channel's id of it; where it took several, of the last, under which the buttons stand. */
  | { readonly kind: 'sent'; readonly message: string }
  /** Not sent; may be tried again after so many seconds. `scope`: the whole channel has to wait, or this chat. */
  | { readonly kind: 'later'; readonly afterS: number; readonly scope: 'channel' | 'chat'; readonly cause: string }
  /** The grower blocked us or the chat is gone: nothing more goes there until they write again. */
  | { readonly kind: 'gone'; readonly cause: string }
  | { readonly kind: 'moved'; readonly to: string }
  /** This message can never be sent. */
  | { readonly kind: 'refused'; readonly cause: string }
  /** No answer: it may or may not have arrived. */
  | { readonly kind: 'unknown'; readonly cause: string };

/** A way to reach growers. */
export interface Channel {
  readonly name: ChannelName;
  /** Hands every inbound update that is meant for us over (in a group not the talk of others), and confirms it to the service only after the hand-over has resolved. Resolves when stopped; rejects when it cannot go on (another poller, a revoked token). */
  listen(handOver: (inbound: Inbound) => Promise<void>, signal: AbortSignal): Promise<void>;
  send(to: ChatAddress, message: Outgoing): Promise<SendResult>;
  /** Stops the waiting sign of a pressed button; failing is no matter. */
  acknowledge(token: string): Promise<void>;
}
