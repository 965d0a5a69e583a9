import type { RealTime } from './real-time.js';

/** Limits that the service advises (platform reference 1.1: one a second in a chat, about 30 a second in all, 20 a minute in a group); in all we stay below. */
const CHAT_SPACING_MS = 1_000;
const OVERALL_SPACING_MS = 1_000 / 25;
const GROUP_MESSAGES = 20;
const GROUP_WINDOW_MS = 60_000;
/** Longer waits are handed back to whoever keeps the outbox. Project estimate. */
const LONGEST_WAIT_MS = 5_000;
/** Chats that we keep in mind before those that are free again are forgotten. */
const MANY_CHATS = 5_000;

export type Scope = 'channel' | 'chat';
export interface NotNow {
  readonly afterS: number;
  readonly scope: Scope;
}

/** When the next message may go: in a chat, in all, and after the service said that it was too much. */
export class Pace {
  /** Instants of the last messages of a chat, oldest first. */
  private readonly chats = new Map<string, number[]>();
  /** Chats in which somebody waits for a turn. */
  private readonly waiting = new Set<string>();
  private readonly heldUntilMs = new Map<string, number>();
  private channelHeldUntilMs = -Infinity;
  private lastOverallMs = -Infinity;
  private lineEnd: Promise<void> = Promise.resolve();
  private inLine = 0;

  constructor(private readonly time: RealTime) {}

  /** Waits for a turn. Not null: not now, for the wait would be long, somebody else waits in that chat, or the service asked for a rest. */
  async turn(chat: string, isGroup: boolean): Promise<NotNow | null> {
    const nowMs = this.time.nowMs();
    const chatMs = Math.max(nowMs, this.nextInChatMs(chat, isGroup));
    const held = this.held(chat);
    if (held) return held;
    if (this.waiting.has(chat)) return notNow(CHAT_SPACING_MS, 'chat');
    if (chatMs - nowMs > LONGEST_WAIT_MS) return notNow(chatMs - nowMs, 'chat');
    const lineMs = this.inLine * OVERALL_SPACING_MS;
    if (lineMs > LONGEST_WAIT_MS) return notNow(lineMs, 'channel');
    this.waiting.add(chat);
    if (chatMs > nowMs) await this.time.sleepMs(chatMs - nowMs);
    await this.overallTurn();
    this.waiting.delete(chat);
    // The service may have spoken while we waited.
    const heldNow = this.held(chat);
    if (heldNow === null) this.keep(chat, this.time.nowMs());
    return heldNow;
  }

  /** One after the other, each so long after the one before really went: a machine that was held up does not catch up in a burst. */
  private overallTurn(): Promise<void> {
    this.inLine += 1;
    this.lineEnd = this.lineEnd.then(async () => {
      const waitMs = this.lastOverallMs + OVERALL_SPACING_MS - this.time.nowMs();
      if (waitMs > 0) await this.time.sleepMs(waitMs);
      this.lastOverallMs = this.time.nowMs();
      this.inLine -= 1;
    });
    return this.lineEnd;
  }

  private held(chat: string): NotNow | null {
    const nowMs = this.time.nowMs();
    if (this.channelHeldUntilMs > nowMs) return notNow(this.channelHeldUntilMs - nowMs, 'channel');
    const untilMs = this.heldUntilMs.get(chat) ?? -Infinity;
    return untilMs > nowMs ? notNow(untilMs - nowMs, 'chat') : null;
  }

  /**
   * The service said that it was too much. It does not say whether it means the chat or all of us: the first time we take it for the chat,
   * and for all of us when a second chat is told the same before the first is free.
   */
  tooMuch(chat: string, retryAfterS: number): NotNow {
    const nowMs = this.time.nowMs();
    const untilMs = nowMs + retryAfterS * 1000;
    const others = [...this.heldUntilMs].filter(([held, endMs]) => held !== chat && endMs > nowMs);
    this.heldUntilMs.set(chat, untilMs);
    if (others.length === 0) return { afterS: retryAfterS, scope: 'chat' };
    this.channelHeldUntilMs = Math.max(this.channelHeldUntilMs, untilMs);
    return { afterS: retryAfterS, scope: 'channel' };
  }

  private nextInChatMs(chat: string, isGroup: boolean): number {
    const past = this.chats.get(chat) ?? [];
    const last = past.at(-1);
    const spacedMs = last === undefined ? -Infinity : last + CHAT_SPACING_MS;
    const windowStart = isGroup ? past.at(-GROUP_MESSAGES) : undefined;
    return windowStart === undefined ? spacedMs : Math.max(spacedMs, windowStart + GROUP_WINDOW_MS);
  }

  private keep(chat: string, atMs: number): void {
    this.chats.set(chat, [...(this.chats.get(chat) ?? []), atMs].slice(-GROUP_MESSAGES));
    if (this.chats.size <= MANY_CHATS) return;
    const nowMs = this.time.nowMs();
    for (const [known, past] of this.chats) if (past.at(-1)! + GROUP_WINDOW_MS < nowMs) this.chats.delete(known);
    for (const [held, endMs] of this.heldUntilMs) if (endMs < nowMs) this.heldUntilMs.delete(held);
  }
}

const notNow = (waitMs: number, scope: Scope): NotNow => ({ afterS: Math.ceil(waitMs / 1000), scope });
