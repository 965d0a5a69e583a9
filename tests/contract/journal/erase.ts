import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Memory } from '../../../bot/journal.js';
import { DAY_S, dueRow, EVENING_S, inbound, job, keys, newChat, outbound, send, updates, type OpenMemory } from './rows.js';

const reading = { greenhouseId: 'hill', receivedAtS: EVENING_S, validAtS: EVENING_S, place: 'inside', statistic: 'low', tempC: -3, text: '-3' } as const;

/** A greenhouse with everything that can hang on one. */
async function furnish(memory: Memory, id: string, place: string): Promise<string> {
  await memory.saveGreenhouse({ id, body: JSON.stringify({ place }), savedAtS: EVENING_S });
  const chatId = await newChat(memory, `chat of ${id}`);
  await memory.updateChat(chatId, { greenhouseId: id });
  const first = await memory.addReading({ ...reading, greenhouseId: id });
  const second = await memory.replaceReading(first.id, { ...reading, greenhouseId: id, tempC: -2 });
  await memory.replaceReading(second.id, { ...reading, greenhouseId: id, tempC: -1 });
  await memory.addAction({ greenhouseId: id, receivedAtS: EVENING_S, night: '2026-01-14', body: '{}', done: true, text: 'covered' });
  await memory.addAdvisory({ greenhouseId: id, night: '2026-01-14', issuedAtS: EVENING_S, body: '{}' });
  await memory.addJob(job(`advisory:${id}`, { greenhouseId: id }));
  await memory.addInvite({ code: `invite-${id}`, greenhouseId: id, validUntilS: EVENING_S });
  await memory.addOutbound(outbound(chatId, `sent:${id}`));
  await send(memory, `sent:${id}`, '1');
  await memory.addOutbound(outbound(chatId, `night:${id}`));
  return chatId;
}

async function whatIsThere(memory: Memory, id: string, chatId: string) {
  return {
    greenhouse: (await memory.greenhouse(id)) !== null,
    readings: (await memory.readings(id, 10)).length,
    actions: (await memory.actions(id, 0)).length,
    advisory: (await memory.lastAdvisory(id)) !== null,
    chats: (await memory.chatsOf(id)).length + ((await memory.chatById(chatId)) === null ? 0 : 1),
    jobs: (await memory.dueJobs(EVENING_S, 10)).filter(({ greenhouseId }) => greenhouseId === id).length,
    due: (await memory.dueOutbound(EVENING_S, 10)).filter((row) => row.chatId === chatId).length,
    sent: (await memory.outboundSentAs(chatId, '1')) !== null,
    invite: (await memory.takeInvite(`invite-${id}`, EVENING_S)) !== null,
  };
}
const NOTHING = { greenhouse: false, readings: 0, actions: 0, advisory: false, chats: 0, jobs: 0, due: 0, sent: false, invite: false };
const ALL = { greenhouse: true, readings: 1, actions: 1, advisory: true, chats: 2, jobs: 1, due: 1, sent: true, invite: true };

export function eraseContract(open: OpenMemory): void {
  describe('erasing', () => {
    let memory: Memory;
    beforeEach(async () => {
      memory = await open({ placeKeyOf: (body) => (JSON.parse(body) as { place: string }).place });
    });
    afterEach(() => memory.close());

    it('forgets a greenhouse with all that hangs on it, and nothing of another', async () => {
      const hill = await furnish(memory, 'hill', 'p');
      const vale = await furnish(memory, 'vale', 'q');
      await memory.eraseGreenhouse('hill');
      expect(await whatIsThere(memory, 'hill', hill)).toEqual(NOTHING);
      expect(await whatIsThere(memory, 'vale', vale)).toEqual(ALL);
      await memory.eraseGreenhouse('hill');
      await memory.eraseGreenhouse('never seen');
    });

    it('does it whole or not at all', async () => {
      const hill = await furnish(memory, 'hill', 'p');
      const undone = memory.atomically(async (within) => {
        await within.eraseGreenhouse('hill');
        throw new Error('pulled plug');
      });
      await expect(undone).rejects.toThrow('pulled plug');
      expect(await whatIsThere(memory, 'hill', hill)).toEqual(ALL);
    });

    it('does so also inside a work that goes on when it fails', async () => {
      const hill = await furnish(memory, 'hill', 'p');
      await memory.saveGreenhouse({ id: 'vale', body: 'no file of a greenhouse', savedAtS: EVENING_S });
      await memory.atomically(async (within) => {
        // The place of the other one cannot be read: the erasing fails after the first chat is gone.
        await expect(within.eraseGreenhouse('hill')).rejects.toThrow(SyntaxError);
        await within.addAction({ greenhouseId: 'vale', receivedAtS: EVENING_S, night: '2026-01-14', body: '{}', done: true, text: 'covered' });
      });
      expect(await whatIsThere(memory, 'hill', hill)).toEqual(ALL);
      expect(await memory.actions('vale', 0)).toHaveLength(1);
    });

    it('takes the weather of its places with it, of every service, unless another greenhouse is there now', async () => {
      const weather = (placeKey: string) => memory.saveWeather({ placeKey, issuedAtS: EVENING_S, body: '{}' });
      for (const key of ['p', 'second p', 'shared', 'second shared', 'old p', 'moved-from', 'pp', 'p p2']) await weather(key);
      await memory.saveGreenhouse({ id: 'hill', body: '{"place":"moved-from"}', savedAtS: EVENING_S });
      await memory.saveGreenhouse({ id: 'hill', body: '{"place":"shared"}', savedAtS: EVENING_S });
      await memory.saveGreenhouse({ id: 'hill', body: '{"place":"p"}', savedAtS: EVENING_S });
      await memory.saveGreenhouse({ id: 'vale', body: '{"place":"p"}', savedAtS: EVENING_S });
      await memory.saveGreenhouse({ id: 'vale', body: '{"place":"shared"}', savedAtS: EVENING_S });
      await memory.eraseGreenhouse('hill');
      const left = await Promise.all(['p', 'second p', 'old p', 'moved-from', 'shared', 'second shared', 'pp', 'p p2'].map(async (key) => [key, (await memory.lastWeather(key)) !== null]));
      // The neighbour once was at p too, and has moved to the shared place.
      expect(Object.fromEntries(left)).toEqual({ p: false, 'second p': false, 'old p': false, 'moved-from': false, shared: true, 'second shared': true, pp: true, 'p p2': true });
    });

    it('leaves room for the last word: the chat is opened again in the same work', async () => {
      const hill = await furnish(memory, 'hill', 'p');
      await memory.keepInbound(inbound('7', { chat: 'chat of hill' }));
      await memory.keepInbound(inbound('8', { chat: 'chat of hill' }));
      const [row] = await memory.openInbound(10);
      await memory.atomically(async (within) => {
        await within.eraseGreenhouse('hill');
        const chat = await within.openChat(row!, { isGroup: row!.isGroup, atS: EVENING_S });
        await within.addOutbound(outbound(chat.id, 'reply:7'));
        await within.finishInbound(row!.id, 'done', EVENING_S);
      });
      const due = await memory.dueOutbound(EVENING_S, 10);
      expect(keys(due)).toEqual(['reply:7']);
      expect(due[0]!.chatId).not.toBe(hill);
      // The update is still known, and what was said after it waits for its answer.
      expect(await memory.keepInbound(inbound('7'))).toBe(false);
      expect(updates(await memory.openInbound(10))).toEqual(['8']);
    });

    it('of a message on its way is no fault of its sender', async () => {
      await furnish(memory, 'hill', 'p');
      const { id } = await dueRow(memory, 'night:hill');
      await memory.beginSend(id, EVENING_S);
      await memory.eraseGreenhouse('hill');
      await memory.endSend(id, { state: 'sent', sentAs: '5' }, EVENING_S);
      await expect(memory.beginSend(id, EVENING_S)).rejects.toMatchObject({ code: 'not-waiting' });
    });

    it('forgets one chat of a shared greenhouse, and one that never had any', async () => {
      const hill = await furnish(memory, 'hill', 'p');
      const guest = await newChat(memory, 'guest');
      await memory.updateChat(guest, { greenhouseId: 'hill' });
      await memory.addOutbound(outbound(guest, 'night:guest'));
      await memory.eraseChat(guest);
      expect(await memory.chatById(guest)).toBeNull();
      const stranger = await newChat(memory, 'stranger');
      await memory.eraseChat(stranger);
      await memory.eraseChat(stranger);
      expect(await memory.chatById(stranger)).toBeNull();
      expect(await whatIsThere(memory, 'hill', hill)).toEqual(ALL);
    });
  });

  describe('the purge', () => {
    let memory: Memory;
    beforeEach(async () => {
      memory = await open();
    });
    afterEach(() => memory.close());

    it('leaves what is not finished, and what is not for it, however old', async () => {
      const hill = await furnish(memory, 'hill', 'p');
      await memory.keepInbound(inbound('1'));
      await memory.saveWeather({ placeKey: 'p', issuedAtS: EVENING_S, body: '{}' });
      await memory.purge(EVENING_S);
      expect(updates(await memory.openInbound(10))).toEqual(['1']);
      expect(await memory.lastWeather('p')).not.toBeNull();
      expect(await whatIsThere(memory, 'hill', hill)).toEqual(ALL);
      await memory.purge(EVENING_S + 1000 * DAY_S);
      expect(await whatIsThere(memory, 'hill', hill)).toEqual({ ...ALL, sent: false, invite: false });
      expect(updates(await memory.openInbound(10))).toEqual(['1']);
    });

    it('forgets the weather of a place that nobody asked for in fifteen days: a newer one is asked for in whole', async () => {
      await memory.saveWeather({ placeKey: 'p', issuedAtS: EVENING_S, body: '{}' });
      await memory.purge(EVENING_S + 15 * DAY_S);
      expect(await memory.lastWeather('p')).not.toBeNull();
      await memory.purge(EVENING_S + 15 * DAY_S + 1);
      expect(await memory.lastWeather('p')).toBeNull();
    });
  });
}
