import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Memory } from '../../../bot/journal.js';
import { EVENING_S, inbound, job, keys, newChat, outbound, send, type OpenMemory } from './rows.js';

const at = (chat: string) => ({ channel: 'telegram', chat }) as const;

export function chatsContract(open: OpenMemory): void {
  describe('chats', () => {
    let memory: Memory;
    beforeEach(async () => {
      memory = await open();
    });
    afterEach(() => memory.close());

    it('are opened once for each address of a channel', async () => {
      expect(await memory.chat(at('1'))).toBeNull();
      const first = await memory.openChat(at('1'), { isGroup: true, atS: EVENING_S });
      expect(first).toEqual({ ...at('1'), id: first.id, greenhouseId: null, isGroup: true, since: EVENING_S, paused: false, reachable: true, dialogue: null });
      expect(await memory.openChat(at('1'), { isGroup: false, atS: EVENING_S + 60 })).toEqual(first);
      expect(await memory.chat(at('1'))).toEqual(first);
      expect(await memory.chatById(first.id)).toEqual(first);
      expect(await memory.chatById('nobody')).toBeNull();
      const sms = await memory.openChat({ channel: 'sms', chat: '1' }, { isGroup: false, atS: EVENING_S });
      expect(sms.id).not.toBe(first.id);
      const opened = await Promise.all(Array.from({ length: 10 }, () => newChat(memory, '2')));
      expect(new Set(opened).size).toBe(1);
    });

    it('change in what is given alone', async () => {
      const id = await newChat(memory);
      await memory.updateChat(id, { greenhouseId: 'hill', dialogue: '{"asks":"place"}' });
      await memory.updateChat(id, { paused: true });
      await memory.updateChat(id, { reachable: false });
      await memory.updateChat(id, {});
      expect(await memory.chatById(id)).toMatchObject({ greenhouseId: 'hill', dialogue: '{"asks":"place"}', paused: true, reachable: false });
      await memory.updateChat(id, { dialogue: null, greenhouseId: null, reachable: true });
      expect(await memory.chatById(id)).toMatchObject({ greenhouseId: null, dialogue: null, paused: true, reachable: true });
      await expect(memory.updateChat('nobody', { paused: true })).rejects.toMatchObject({ code: 'no-such-chat' });
    });

    it('of a greenhouse are listed oldest first; those with a greenhouse a page at a time', async () => {
      const late = (await memory.openChat(at('1'), { isGroup: false, atS: EVENING_S + 60 })).id;
      const early = (await memory.openChat(at('2'), { isGroup: false, atS: EVENING_S })).id;
      const other = (await memory.openChat(at('3'), { isGroup: false, atS: EVENING_S })).id;
      await memory.openChat(at('4'), { isGroup: false, atS: EVENING_S });
      for (const [id, greenhouseId] of [[late, 'hill'], [early, 'hill'], [other, 'vale']] as const) await memory.updateChat(id, { greenhouseId });
      expect((await memory.chatsOf('hill')).map(({ id }) => id)).toEqual([early, late]);
      expect(await memory.chatsOf('nowhere')).toEqual([]);
      const seen: string[] = [];
      for (let page = await memory.chatsAfter(null, 2); page.length > 0; page = await memory.chatsAfter(page.at(-1)!.id, 2)) seen.push(...page.map(({ id }) => id));
      expect(seen).toHaveLength(3);
      expect(new Set(seen)).toEqual(new Set([late, early, other]));
    });

    it('move with all they have, and with what they said at the old address and is not answered yet', async () => {
      const id = await newChat(memory, 'old');
      await memory.updateChat(id, { greenhouseId: 'hill' });
      await memory.keepInbound(inbound('1', { chat: 'old' }));
      await memory.keepInbound(inbound('2', { chat: 'new' }));
      await memory.moveChat(id, 'new');
      expect(await memory.chat(at('old'))).toBeNull();
      expect(await memory.chat(at('new'))).toMatchObject({ id, greenhouseId: 'hill' });
      // One chat now: its first message first.
      expect((await memory.openInbound(10)).map(({ update, chat }) => [update, chat])).toEqual([['1', 'new']]);
      await memory.moveChat(id, 'new');
      await expect(memory.moveChat('nobody', 'x')).rejects.toMatchObject({ code: 'no-such-chat' });
    });

    it('become one with a chat that was opened at the new address meanwhile', async () => {
      const id = await newChat(memory, 'old');
      await memory.updateChat(id, { greenhouseId: 'hill', reachable: false });
      await memory.addOutbound(outbound(id, 'first'));
      const there = await newChat(memory, 'new');
      await memory.updateChat(there, { dialogue: '{"asks":"place"}', paused: true });
      await memory.addOutbound(outbound(there, 'sent-there'));
      await send(memory, 'sent-there', '9');
      await memory.addOutbound(outbound(there, 'second'));
      await memory.moveChat(id, 'new');
      expect(await memory.chatById(there)).toBeNull();
      // Where the greenhouse is known there is nothing to set up; nothing comes unasked where either said so.
      expect(await memory.chat(at('new'))).toMatchObject({ id, greenhouseId: 'hill', dialogue: null, paused: true, reachable: true });
      expect(keys(await memory.dueOutbound(EVENING_S, 10))).toEqual(['first']);
      await send(memory, 'first', '10');
      expect(keys(await memory.dueOutbound(EVENING_S, 10))).toEqual(['second']);
      expect(await memory.outboundSentAs(id, '9')).toMatchObject({ key: 'sent-there' });
      expect(await memory.addOutbound(outbound(id, 'sent-there'))).toBe(false);
    });

    it('that have no greenhouse take over the one found at the new address, and what is being said there', async () => {
      const id = await newChat(memory, 'old');
      const there = await newChat(memory, 'new');
      await memory.updateChat(there, { greenhouseId: 'hill', dialogue: '{"asks":"erase"}' });
      await memory.moveChat(id, 'new');
      expect(await memory.chatById(id)).toMatchObject({ chat: 'new', greenhouseId: 'hill', dialogue: '{"asks":"erase"}' });
      expect(await memory.chatsOf('hill')).toHaveLength(1);
    });

    it('that are describing a greenhouse leave that for the one found at the new address', async () => {
      const id = await newChat(memory, 'old');
      await memory.updateChat(id, { dialogue: '{"asks":"size"}' });
      await memory.updateChat(await newChat(memory, 'new'), { greenhouseId: 'hill' });
      await memory.moveChat(id, 'new');
      expect(await memory.chatById(id)).toMatchObject({ greenhouseId: 'hill', dialogue: null });
    });

    it('that become one with a chat of another greenhouse keep their own; the other one has no more evenings, unless somebody else hears of them', async () => {
      const move = async (n: number): Promise<void> => {
        const id = await newChat(memory, `old ${n}`);
        await memory.updateChat(id, { greenhouseId: 'hill' });
        await memory.updateChat(await newChat(memory, `new ${n}`), { greenhouseId: 'vale' });
        await memory.moveChat(id, `new ${n}`);
        expect(await memory.chat(at(`new ${n}`))).toMatchObject({ id, greenhouseId: 'hill' });
      };
      const evenings = async (): Promise<readonly string[]> => keys(await memory.dueJobs(EVENING_S, 10));
      await memory.saveGreenhouse({ id: 'vale', body: '{}', savedAtS: EVENING_S });
      await memory.addJob(job('advisory:hill', { greenhouseId: 'hill' }));
      await memory.addJob(job('advisory:vale', { greenhouseId: 'vale' }));
      const guest = await newChat(memory, 'guest');
      await memory.updateChat(guest, { greenhouseId: 'vale' });
      await move(1);
      expect(await evenings()).toEqual(['advisory:hill', 'advisory:vale']);
      await memory.eraseChat(guest);
      await move(2);
      expect(await evenings()).toEqual(['advisory:hill']);
      // What was kept of it stays, for whoever is let in by an invitation that still stands.
      expect(await memory.greenhouse('vale')).not.toBeNull();
      expect(await memory.addJob(job('advisory:vale', { greenhouseId: 'vale' }))).toBe(true);
    });
  });

  describe('invites', () => {
    let memory: Memory;
    beforeEach(async () => {
      memory = await open();
      await memory.addInvite({ code: 'k7m2', greenhouseId: 'hill', validUntilS: EVENING_S });
    });
    afterEach(() => memory.close());

    it('let one chat in, once', async () => {
      expect(await memory.takeInvite('x', EVENING_S)).toBeNull();
      const taken = await Promise.all([memory.takeInvite('k7m2', EVENING_S), memory.takeInvite('k7m2', EVENING_S)]);
      expect(taken.sort()).toEqual(['hill', null]);
      expect(await memory.takeInvite('k7m2', EVENING_S)).toBeNull();
    });

    it('end with their time, and with the purge', async () => {
      expect(await memory.takeInvite('k7m2', EVENING_S + 1)).toBeNull();
      expect(await memory.takeInvite('k7m2', EVENING_S)).toBe('hill');
      await memory.addInvite({ code: 'q3p9', greenhouseId: 'hill', validUntilS: EVENING_S });
      await memory.purge(EVENING_S + 1);
      expect(await memory.takeInvite('q3p9', EVENING_S)).toBeNull();
    });

    it('never lead to another greenhouse than they were made for', async () => {
      await expect(memory.addInvite({ code: 'k7m2', greenhouseId: 'vale', validUntilS: EVENING_S })).rejects.toMatchObject({ code: 'known-code' });
      expect(await memory.takeInvite('k7m2', EVENING_S)).toBe('hill');
    });

    it('are not spent by a work that is undone', async () => {
      const undone = memory.atomically(async (within) => {
        expect(await within.takeInvite('k7m2', EVENING_S)).toBe('hill');
        throw new Error('the plan changed');
      });
      await expect(undone).rejects.toThrow('the plan changed');
      expect(await memory.takeInvite('k7m2', EVENING_S)).toBe('hill');
    });
  });
}
