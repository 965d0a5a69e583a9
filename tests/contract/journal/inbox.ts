import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Content } from '../../../bot/chat.js';
import type { Memory } from '../../../bot/journal.js';
import { DAY_S, EVENING_S, inbound, updates, type OpenMemory } from './rows.js';

export function inboxContract(open: OpenMemory): void {
  describe('what came in', () => {
    let memory: Memory;
    beforeEach(async () => {
      memory = await open();
    });
    afterEach(() => memory.close());

    it.each<Content>([
      { kind: 'text', text: 'Tief −3,5 °C 🥶\n"x"; drop table inbound; --', forwarded: true, answers: '77' },
      { kind: 'edited', text: '28F', message: '12' },
      { kind: 'press', button: 'did:2026-01-14', message: '13', token: 'abc' },
      { kind: 'location', latitude: 45.123, longitude: -72.456 },
      { kind: 'photo', caption: null },
      { kind: 'moved', to: '-1009' },
      { kind: 'blocked' },
      { kind: 'other', what: 'sticker' },
    ])('is given back to the letter: $kind', async (content) => {
      const update = inbound('1', { channel: 'sms', chat: '+15550100', sender: '+15550100', isGroup: true, content, ...(content.kind === 'text' ? { topic: '7' } : {}) });
      expect(await memory.keepInbound(update)).toBe(true);
      const [row] = await memory.openInbound(10);
      expect(row).toEqual({ ...update, id: row!.id, attempts: 0 });
    });

    it('counts once for each update of a channel', async () => {
      expect(await memory.keepInbound(inbound('1'))).toBe(true);
      expect(await memory.keepInbound(inbound('1', { content: { kind: 'blocked' }, chat: '200' }))).toBe(false);
      expect(await memory.keepInbound(inbound('1', { channel: 'sms', chat: '200' }))).toBe(true);
      expect((await memory.openInbound(10)).map(({ channel }) => channel)).toEqual(['telegram', 'sms']);
      const outcomes = await Promise.all(Array.from({ length: 10 }, () => memory.keepInbound(inbound('2'))));
      expect(outcomes.filter(Boolean)).toHaveLength(1);
    });

    it('is worked off in order in each chat: one at a time, the oldest chat first', async () => {
      await memory.keepInbound(inbound('1', { chat: 'a' }));
      await memory.keepInbound(inbound('2', { chat: 'a' }));
      await memory.keepInbound(inbound('3', { chat: 'b' }));
      // A lower update id that comes later was said later: update ids may jump.
      await memory.keepInbound(inbound('0', { chat: 'b' }));
      const [first] = await memory.openInbound(10);
      expect(updates(await memory.openInbound(10))).toEqual(['1', '3']);
      expect(updates(await memory.openInbound(1))).toEqual(['1']);
      expect(await memory.openInbound(0)).toEqual([]);
      await memory.finishInbound(first!.id, 'done', EVENING_S);
      expect(updates(await memory.openInbound(10))).toEqual(['2', '3']);
      // The same id on another channel is another chat.
      await memory.keepInbound(inbound('4', { channel: 'sms', chat: 'a' }));
      expect(updates(await memory.openInbound(10))).toEqual(['2', '3', '4']);
    });

    it('that fails is counted, holds its chat back, and lets go once it is parked', async () => {
      await memory.keepInbound(inbound('1'));
      await memory.keepInbound(inbound('2'));
      const [row] = await memory.openInbound(10);
      expect(await memory.failInbound(row!.id, 'no weather')).toBe(1);
      expect(await memory.failInbound(row!.id, 'no weather')).toBe(2);
      expect(await memory.openInbound(10)).toEqual([{ ...row, attempts: 2 }]);
      await memory.finishInbound(row!.id, 'parked', EVENING_S);
      expect(updates(await memory.openInbound(10))).toEqual(['2']);
      expect(await memory.keepInbound(inbound('1'))).toBe(false);
    });

    it('is finished once, so that its effect cannot be written twice', async () => {
      await memory.keepInbound(inbound('1'));
      const [row] = await memory.openInbound(10);
      await memory.finishInbound(row!.id, 'done', EVENING_S);
      await expect(memory.finishInbound(row!.id, 'done', EVENING_S)).rejects.toMatchObject({ code: 'not-open' });
      await expect(memory.finishInbound(row!.id, 'parked', EVENING_S)).rejects.toMatchObject({ code: 'not-open' });
      await expect(memory.failInbound(row!.id, 'late')).rejects.toMatchObject({ code: 'not-open' });
      await expect(memory.finishInbound(row!.id + 1, 'done', EVENING_S)).rejects.toMatchObject({ code: 'not-open' });
    });

    it('stays known for a week after it is finished, and no longer than the purge', async () => {
      await memory.keepInbound(inbound('1'));
      await memory.keepInbound(inbound('2', { chat: '200' }));
      const [first] = await memory.openInbound(10);
      await memory.finishInbound(first!.id, 'done', EVENING_S);
      await memory.purge(EVENING_S + 7 * DAY_S);
      expect(await memory.keepInbound(inbound('1'))).toBe(false);
      await memory.purge(EVENING_S + 7 * DAY_S + 1);
      // What is not finished is never purged, however old.
      expect(updates(await memory.openInbound(10))).toEqual(['2']);
      expect(await memory.keepInbound(inbound('1'))).toBe(true);
      expect(await memory.keepInbound(inbound('2'))).toBe(false);
    });

    it('is refused without an id or a chat, or with a time in milliseconds', async () => {
      await expect(memory.keepInbound(inbound(''))).rejects.toMatchObject({ code: 'bad-row' });
      await expect(memory.keepInbound(inbound('1', { chat: '' }))).rejects.toMatchObject({ code: 'bad-row' });
      await expect(memory.keepInbound(inbound('1', { receivedAtS: EVENING_S * 1000 }))).rejects.toMatchObject({ code: 'bad-row' });
      expect(await memory.openInbound(10)).toEqual([]);
    });
  });
}
