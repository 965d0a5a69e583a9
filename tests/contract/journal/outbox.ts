import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Outgoing } from '../../../bot/chat.js';
import type { Memory } from '../../../bot/journal.js';
import { DAY_S, dueRow, EVENING_S, keys, newChat, outbound, send, type OpenMemory } from './rows.js';

export function outboxContract(open: OpenMemory): void {
  describe('what has to go out', () => {
    let memory: Memory;
    let a: string;
    let b: string;
    beforeEach(async () => {
      memory = await open();
      a = await newChat(memory, 'a');
      b = await newChat(memory, 'b');
    });
    afterEach(() => memory.close());
    const due = async (nowS = EVENING_S): Promise<readonly string[]> => keys(await memory.dueOutbound(nowS, 100));
    const begin = async (key: string, nowS = EVENING_S): Promise<number> => {
      const { id } = await dueRow(memory, key, nowS);
      await memory.beginSend(id, nowS);
      return id;
    };

    it('is given back to the letter', async () => {
      const message: Outgoing = { text: 'Cover the kale\n-3C "x"', html: '<b>Cover</b>', buttons: [[{ id: 'did', label: 'Done' }]], picturePng: 'iVBORw0KGgo=', documents: [{ name: 'readings.csv', text: 'night,"low, C"\r\n2026-01-14,-3\r\n' }], asksForLocation: true };
      expect(await memory.addOutbound(outbound(a, 'night:1', { message, uselessAfterS: EVENING_S + 60 }))).toBe(true);
      const [row] = await memory.dueOutbound(EVENING_S, 10);
      expect(row).toEqual({ id: row!.id, chatId: a, key: 'night:1', message, state: 'waiting', attempts: 0, notBeforeS: EVENING_S, uselessAfterS: EVENING_S + 60, sentAs: null });
    });

    it('counts once for each key, for ever: also sent, dropped and purged', async () => {
      expect(await memory.addOutbound(outbound(a, 'night:1'))).toBe(true);
      expect(await memory.addOutbound(outbound(b, 'night:1'))).toBe(false);
      await send(memory, 'night:1', '50');
      await memory.addOutbound(outbound(a, 'night:2', { uselessAfterS: EVENING_S }));
      expect(await due(EVENING_S + 1)).toEqual([]);
      await memory.purge(EVENING_S + 1000 * DAY_S);
      expect(await memory.addOutbound(outbound(a, 'night:1'))).toBe(false);
      expect(await memory.addOutbound(outbound(a, 'night:2'))).toBe(false);
      expect(await due(EVENING_S + 2000 * DAY_S)).toEqual([]);
      const outcomes = await Promise.all(Array.from({ length: 10 }, () => memory.addOutbound(outbound(a, 'night:3'))));
      expect(outcomes.filter(Boolean)).toHaveLength(1);
    });

    it('waits for its time, the longest waiting first, one for each chat, in the order added there', async () => {
      await memory.addOutbound(outbound(a, 'a-tomorrow', { notBeforeS: EVENING_S + DAY_S }));
      await memory.addOutbound(outbound(a, 'a-1'));
      await memory.addOutbound(outbound(a, 'a-2', { notBeforeS: EVENING_S - 60 }));
      await memory.addOutbound(outbound(b, 'b-1', { notBeforeS: EVENING_S - 30 }));
      expect(await due(EVENING_S - 31)).toEqual(['a-2']);
      expect(await due()).toEqual(['b-1', 'a-1']);
      expect(keys(await memory.dueOutbound(EVENING_S, 1))).toEqual(['b-1']);
      await send(memory, 'a-1', '1');
      expect(await due()).toEqual(['a-2', 'b-1']);
      await send(memory, 'a-2', '2');
      expect(await due(EVENING_S + DAY_S)).toEqual(['b-1', 'a-tomorrow']);
    });

    it('holds back what comes after it in its chat while it is sent, and while it waits to be tried again', async () => {
      await memory.addOutbound(outbound(a, 'a-1'));
      await memory.addOutbound(outbound(a, 'a-2'));
      await memory.addOutbound(outbound(b, 'b-1'));
      const id = await begin('a-1');
      expect(await due()).toEqual(['b-1']);
      await memory.endSend(id, { state: 'waiting', notBeforeS: EVENING_S + 30 }, EVENING_S);
      expect(await due(EVENING_S + 29)).toEqual(['b-1']);
      const again = (await memory.dueOutbound(EVENING_S + 30, 10)).find(({ key }) => key === 'a-1');
      expect(again).toMatchObject({ attempts: 1, state: 'waiting' });
      expect(await due(EVENING_S + 30)).not.toContain('a-2');
      await memory.beginSend(id, EVENING_S + 30);
      await memory.endSend(id, { state: 'dropped', cause: 'refused' }, EVENING_S + 30);
      expect(await due(EVENING_S + 30)).toEqual(['a-2', 'b-1']);
    });

    it('is held back by one that is being sent also when it was added before', async () => {
      await memory.addOutbound(outbound(a, 'later-due', { notBeforeS: EVENING_S + 60 }));
      await memory.addOutbound(outbound(a, 'due'));
      const id = await begin('due');
      expect(await due(EVENING_S + 60)).toEqual([]);
      await memory.endSend(id, { state: 'sent', sentAs: '1' }, EVENING_S + 60);
      expect(await due(EVENING_S + 60)).toEqual(['later-due']);
    });

    it('is tried again no earlier than a service asks for, also in parts of a second', async () => {
      await memory.addOutbound(outbound(a, 'a-1'));
      await memory.endSend(await begin('a-1'), { state: 'waiting', notBeforeS: EVENING_S + 2.4 }, EVENING_S);
      expect(await due(EVENING_S + 2)).toEqual([]);
      expect(await due(EVENING_S + 3)).toEqual(['a-1']);
    });

    it('goes to no chat that cannot be reached, and goes when it can again', async () => {
      await memory.addOutbound(outbound(a, 'a-1'));
      await memory.updateChat(a, { reachable: false });
      expect(await due()).toEqual([]);
      await memory.updateChat(a, { reachable: true, paused: true });
      expect(await due()).toEqual(['a-1']);
    });

    it('is dropped when it is of no use any more, also in a chat that cannot be reached, and lets others pass', async () => {
      await memory.addOutbound(outbound(a, 'tonight', { uselessAfterS: EVENING_S + 60 }));
      await memory.addOutbound(outbound(b, 'tonight-b', { uselessAfterS: EVENING_S + 60 }));
      await memory.endSend(await begin('tonight'), { state: 'waiting', notBeforeS: EVENING_S + 900 }, EVENING_S);
      await memory.addOutbound(outbound(a, 'answer'));
      await memory.updateChat(b, { reachable: false });
      expect(await due(EVENING_S + 60)).toEqual([]);
      expect(await due(EVENING_S + 61)).toEqual(['answer']);
      await memory.updateChat(b, { reachable: true });
      expect(await due(EVENING_S)).toEqual(['answer']);
    });

    it('is begun by one sender alone, and ended once', async () => {
      await memory.addOutbound(outbound(a, 'a-1'));
      const { id } = await dueRow(memory, 'a-1');
      await expect(memory.endSend(id, { state: 'sent', sentAs: '1' }, EVENING_S)).rejects.toMatchObject({ code: 'not-sending' });
      const begun = await Promise.allSettled([memory.beginSend(id, EVENING_S), memory.beginSend(id, EVENING_S)]);
      expect(begun.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
      await memory.endSend(id, { state: 'sent', sentAs: '1' }, EVENING_S);
      await expect(memory.beginSend(id, EVENING_S)).rejects.toMatchObject({ code: 'not-waiting' });
      await expect(memory.endSend(id, { state: 'waiting', notBeforeS: EVENING_S }, EVENING_S)).rejects.toMatchObject({ code: 'not-sending' });
      await expect(memory.endSend(id, { state: 'dropped', cause: 'late' }, EVENING_S)).rejects.toMatchObject({ code: 'not-sending' });
      expect(await memory.recoverSends()).toBe(0);
      expect(await due(EVENING_S + DAY_S)).toEqual([]);
    });

    it('may be dropped without a try', async () => {
      await memory.addOutbound(outbound(a, 'a-1'));
      const { id } = await dueRow(memory, 'a-1');
      await memory.endSend(id, { state: 'dropped', cause: 'no such channel' }, EVENING_S);
      expect(await due()).toEqual([]);
    });

    it('goes back to waiting when the plug was pulled during the send, and counts the try', async () => {
      await memory.addOutbound(outbound(a, 'a-1'));
      await memory.addOutbound(outbound(a, 'a-2'));
      await memory.addOutbound(outbound(b, 'b-1'));
      await begin('a-1');
      await begin('b-1');
      expect(await due()).toEqual([]);
      expect(await memory.recoverSends()).toBe(2);
      expect((await memory.dueOutbound(EVENING_S, 10)).map(({ key, attempts }) => [key, attempts])).toEqual([['a-1', 1], ['b-1', 1]]);
      expect(await memory.recoverSends()).toBe(0);
    });

    it('is known again by the id that the channel gave it, in its chat alone, until the purge', async () => {
      await memory.addOutbound(outbound(a, 'a-1'));
      const id = await send(memory, 'a-1', '50');
      expect(await memory.outboundSentAs(a, '50')).toMatchObject({ id, key: 'a-1', state: 'sent', sentAs: '50', message: { text: 'text of a-1' } });
      expect(await memory.outboundSentAs(b, '50')).toBeNull();
      expect(await memory.outboundSentAs(a, '51')).toBeNull();
      await memory.purge(EVENING_S);
      expect(await memory.outboundSentAs(a, '50')).not.toBeNull();
      await memory.purge(EVENING_S + 1);
      expect(await memory.outboundSentAs(a, '50')).toBeNull();
    });

    it('is refused for a chat that is not there, without a key, or with a time in milliseconds', async () => {
      await expect(memory.addOutbound(outbound('nobody', 'k'))).rejects.toMatchObject({ code: 'no-such-chat' });
      await expect(memory.addOutbound(outbound(a, ''))).rejects.toMatchObject({ code: 'bad-row' });
      await expect(memory.addOutbound(outbound(a, 'k', { notBeforeS: EVENING_S * 1000 }))).rejects.toMatchObject({ code: 'bad-row' });
      await expect(memory.dueOutbound(EVENING_S, -1)).rejects.toMatchObject({ code: 'bad-row' });
      expect(await memory.addOutbound(outbound(a, 'k'))).toBe(true);
    });
  });
}
