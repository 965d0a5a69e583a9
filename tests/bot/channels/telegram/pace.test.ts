import { describe, expect, it } from 'vitest';
import { Pace } from '../../../../bot/channels/telegram/pace.js';
import type { RealTime } from '../../../../bot/channels/telegram/real-time.js';

/** Time that passes only when somebody waits: sleepers wake in order. */
function handTime(): RealTime & { advance(toMs: number): Promise<void> } {
  let nowMs = 0;
  let sleepers: { readonly atMs: number; readonly wake: () => void }[] = [];
  const settle = async (): Promise<void> => {
    for (let i = 0; i < 20; i++) await Promise.resolve();
  };
  return {
    nowMs: () => nowMs,
    sleepMs: (ms) => new Promise((wake) => sleepers.push({ atMs: nowMs + ms, wake })),
    advance: async (toMs) => {
      await settle();
      for (;;) {
        const next = [...sleepers].sort((a, b) => a.atMs - b.atMs)[0];
        if (!next || next.atMs > toMs) break;
        nowMs = Math.max(nowMs, next.atMs);
        sleepers = sleepers.filter((sleeper) => sleeper !== next);
        next.wake();
        await settle();
      }
      nowMs = toMs;
    },
  };
}

interface Sent {
  readonly chat: string;
  readonly atMs: number;
}

/** Asks for turns as an outbox does: again when it was told "not now". */
async function sendAll(chats: readonly string[], untilMs: number): Promise<readonly Sent[]> {
  const time = handTime();
  const pace = new Pace(time);
  const sent: Sent[] = [];
  const one = async (chat: string): Promise<void> => {
    for (;;) {
      const notNow = await pace.turn(chat, chat.startsWith('-'));
      if (notNow === null) return void sent.push({ chat, atMs: time.nowMs() });
      await time.sleepMs(notNow.afterS * 1000);
    }
  };
  chats.forEach((chat) => void one(chat));
  await time.advance(untilMs);
  return sent;
}

/** The most messages in any time of this length (its end left out; sums of fortieths of a second are not exact). */
const mostWithin = (sent: readonly Sent[], ms: number): number => Math.max(...sent.map(({ atMs }) => sent.filter((other) => other.atMs >= atMs && other.atMs < atMs + ms - 0.001).length));

describe('the pace', () => {
  it('is at most one message a second in a chat, the first at once', async () => {
    const sent = await sendAll(Array.from({ length: 12 }, () => '7'), 100_000);
    expect(sent).toHaveLength(12);
    expect(sent[0]!.atMs).toBe(0);
    expect(mostWithin(sent, 1000)).toBe(1);
    expect(sent.at(-1)!.atMs).toBeGreaterThanOrEqual(11_000);
  });

  it('is at most 25 messages a second in all, and not much less', async () => {
    const sent = await sendAll(Array.from({ length: 500 }, (_, i) => String(i + 1)), 300_000);
    expect(sent).toHaveLength(500);
    expect(mostWithin(sent, 1000)).toBe(25);
  });

  it('is at most 20 messages a minute in a group', async () => {
    const sent = await sendAll(Array.from({ length: 50 }, () => '-7'), 400_000);
    expect(sent).toHaveLength(50);
    expect(mostWithin(sent, 60_000)).toBe(20);
    expect(mostWithin(sent, 1000)).toBe(1);
  });

  it('of one chat does not hold another back', async () => {
    const sent = await sendAll(['7', '7', '7', '7', '8'], 60_000);
    expect(sent.find(({ chat }) => chat === '8')!.atMs).toBeLessThan(1000);
  });

  it('with many chats, many messages each, keeps all limits', async () => {
    const sent = await sendAll(Array.from({ length: 300 }, (_, i) => String(i % 2 === 0 ? (i % 60) + 1 : -((i % 10) + 1))), 3_000_000);
    expect(sent).toHaveLength(300);
    expect(mostWithin(sent, 1000)).toBeLessThanOrEqual(25);
    for (const chat of new Set(sent.map((one) => one.chat))) {
      const here = sent.filter((one) => one.chat === chat);
      expect(mostWithin(here, 1000)).toBe(1);
      if (chat.startsWith('-')) expect(mostWithin(here, 60_000)).toBeLessThanOrEqual(20);
    }
  });
});

describe('a wish of the service for a rest', () => {
  it('holds its chat for so long, then lets it go', async () => {
    const time = handTime();
    const pace = new Pace(time);
    expect(pace.tooMuch('7', 30)).toEqual({ afterS: 30, scope: 'chat' });
    expect(await pace.turn('7', false)).toEqual({ afterS: 30, scope: 'chat' });
    expect(await pace.turn('8', false)).toBeNull();
    await time.advance(29_001);
    expect(await pace.turn('7', false)).toEqual({ afterS: 1, scope: 'chat' });
    await time.advance(30_000);
    expect(await pace.turn('7', false)).toBeNull();
  });

  it('told to a second chat meanwhile holds all; told again to the same chat does not', async () => {
    const time = handTime();
    const pace = new Pace(time);
    pace.tooMuch('7', 30);
    expect(pace.tooMuch('7', 30)).toEqual({ afterS: 30, scope: 'chat' });
    expect(pace.tooMuch('8', 40)).toEqual({ afterS: 40, scope: 'channel' });
    expect(await pace.turn('9', false)).toEqual({ afterS: 40, scope: 'channel' });
    await time.advance(40_000);
    expect(await pace.turn('9', false)).toBeNull();
  });

  it('told to a second chat after the first was free holds that chat alone', async () => {
    const time = handTime();
    const pace = new Pace(time);
    pace.tooMuch('7', 30);
    await time.advance(30_000);
    expect(pace.tooMuch('8', 40)).toEqual({ afterS: 40, scope: 'chat' });
  });

  it('that comes while somebody waits for a turn is heard by them', async () => {
    const time = handTime();
    const pace = new Pace(time);
    await pace.turn('7', false);
    const waiting = pace.turn('7', false);
    await time.advance(500);
    pace.tooMuch('7', 30);
    await time.advance(1500);
    expect(await waiting).toMatchObject({ scope: 'chat' });
  });
});
