import { setImmediate as nextTurn } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Memory, WithinMemory } from '../../../bot/journal.js';
import { EVENING_S, inbound, job, keys, newChat, outbound, updates, type OpenMemory } from './rows.js';

const reading = { greenhouseId: 'hill', receivedAtS: EVENING_S, validAtS: EVENING_S, place: 'inside', statistic: 'low', tempC: -3, text: '-3' } as const;
const SHORT_LIMIT_MS = 50;
const MANY = ['a', 'b', 'c', 'd', 'e', 'f'];

export function atomicContract(open: OpenMemory): void {
  describe('a work done atomically', () => {
    let memory: Memory;
    let chatId: string;
    beforeEach(async () => {
      memory = await open();
      chatId = await newChat(memory);
    });
    afterEach(() => memory.close());
    const texts = async (): Promise<readonly string[]> => (await memory.readings('hill', 100)).map(({ text }) => text);

    it('is there whole, with what it gives back', async () => {
      await memory.keepInbound(inbound('1'));
      const [row] = await memory.openInbound(1);
      const id = await memory.atomically(async (within) => {
        const added = await within.addReading(reading);
        await within.addOutbound(outbound(chatId, 'reply:1'));
        await within.addJob(job('advisory:1'));
        await within.finishInbound(row!.id, 'done', EVENING_S);
        return added.id;
      });
      expect((await memory.readings('hill', 10)).map((stored) => stored.id)).toEqual([id]);
      expect(keys(await memory.dueOutbound(EVENING_S, 10))).toEqual(['reply:1']);
      expect(keys(await memory.dueJobs(EVENING_S, 10))).toEqual(['advisory:1']);
      expect(await memory.openInbound(10)).toEqual([]);
    });

    it('that throws leaves nothing, and its own error', async () => {
      await memory.keepInbound(inbound('1'));
      const [row] = await memory.openInbound(1);
      const undone = memory.atomically(async (within) => {
        await within.addReading(reading);
        await within.saveGreenhouse({ id: 'hill', body: '{}', savedAtS: EVENING_S });
        await within.addOutbound(outbound(chatId, 'reply:1'));
        await within.finishInbound(row!.id, 'done', EVENING_S);
        throw new RangeError('no such place');
      });
      await expect(undone).rejects.toThrow(RangeError);
      expect(await texts()).toEqual([]);
      expect(await memory.greenhouse('hill')).toBeNull();
      expect(await memory.dueOutbound(EVENING_S, 10)).toEqual([]);
      expect(updates(await memory.openInbound(10))).toEqual(['1']);
      expect(await memory.addOutbound(outbound(chatId, 'reply:1'))).toBe(true);
    });

    it('sees what it wrote itself; a call that fails in it leaves nothing of that call alone', async () => {
      const { id } = await memory.addReading(reading);
      await memory.atomically(async (within) => {
        await within.withdrawReading(id, EVENING_S);
        await expect(within.replaceReading(id, reading)).rejects.toMatchObject({ code: 'reading-not-standing' });
        await expect(within.addOutbound(outbound('nobody', 'k'))).rejects.toMatchObject({ code: 'no-such-chat' });
        await within.addReading({ ...reading, text: 'right' });
        expect((await within.readings('hill', 10)).map(({ text }) => text)).toEqual(['right']);
      });
      expect(await texts()).toEqual(['right']);
    });

    it('is never seen half: other calls wait for its end', async () => {
      const seen: number[] = [];
      let isOver = false;
      const work = memory.atomically(async (within) => {
        await within.addReading({ ...reading, text: 'one' });
        for (let n = 0; n < 20; n++) await nextTurn();
        await within.addReading({ ...reading, text: 'two' });
        isOver = true;
      });
      // Other readers and writers in the meantime, started outside the work.
      const others = Array.from({ length: 5 }, async (_, n) => {
        await nextTurn();
        seen.push((await texts()).filter((text) => text === 'one' || text === 'two').length);
        expect(isOver).toBe(true);
        await memory.addReading({ ...reading, text: `other ${n}` });
      });
      await Promise.all([work, ...others]);
      expect(seen).toEqual([2, 2, 2, 2, 2]);
      expect(await texts()).toHaveLength(7);
    });

    it('runs one after another: each sees the one before', async () => {
      await Promise.all(
        Array.from({ length: 20 }, () =>
          memory.atomically(async (within) => {
            const before = await within.greenhouse('hill');
            await nextTurn();
            await within.saveGreenhouse({ id: 'hill', body: `{"n":${Number(before?.version ?? 0) + 1}}`, savedAtS: EVENING_S });
          }),
        ),
      );
      expect(await memory.greenhouse('hill')).toMatchObject({ version: 20, body: '{"n":20}' });
    });

    it('may ask for several things at once: they take turns', async () => {
      const { id } = await memory.addReading(reading);
      await memory.atomically(async (within) => {
        const outcomes = await Promise.allSettled([
          within.replaceReading(id, { ...reading, text: 'first' }),
          within.replaceReading(id, { ...reading, text: 'second' }),
          within.addReading({ ...reading, text: 'third' }),
        ]);
        expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
      });
      expect([...(await texts())].sort()).toEqual(['first', 'third']);
    });

    it('refuses the outer memory inside, for it would wait for itself', async () => {
      const inside: readonly (() => Promise<unknown>)[] = [
        () => memory.atomically(() => Promise.resolve()),
        () => memory.addReading(reading),
        () => memory.openInbound(1),
        () => memory.backup('never-written'),
        () => memory.close(),
      ];
      for (const call of inside) {
        const work = memory.atomically(async (within) => {
          await within.addReading(reading);
          await nextTurn();
          await call();
        });
        await expect(work).rejects.toMatchObject({ code: 'nested', message: expect.stringContaining('Use the memory in the argument') as string });
      }
      expect(await texts()).toEqual([]);
      // Once a work is over, what it started may use the outer one.
      let later: Promise<unknown> = Promise.resolve();
      await memory.atomically(() => {
        later = nextTurn().then(() => nextTurn()).then(() => nextTurn()).then(() => memory.addReading(reading));
        return Promise.resolve();
      });
      await later;
      expect(await texts()).toEqual(['-3']);
    });

    it('takes its memory back at its end', async () => {
      let kept: WithinMemory | undefined;
      await memory.atomically((within) => {
        kept = within;
        return Promise.resolve();
      });
      await expect(kept!.addReading(reading)).rejects.toMatchObject({ code: 'over' });
      expect(await texts()).toEqual([]);
    });

    it('includes calls that it did not wait for', async () => {
      let unwaited: Promise<unknown> = Promise.resolve();
      await memory.atomically((within) => {
        unwaited = Promise.all(MANY.map((n) => within.addReading({ ...reading, text: n })));
        return Promise.resolve();
      });
      await unwaited;
      expect([...(await texts())].sort()).toEqual(MANY);
    });

    it('that throws while calls of it are under way takes those back too', async () => {
      let unwaited: Promise<unknown> = Promise.resolve();
      const undone = memory.atomically((within) => {
        unwaited = Promise.allSettled(MANY.map((n) => within.addReading({ ...reading, text: n })));
        return Promise.reject(new Error('no such place'));
      });
      await expect(undone).rejects.toThrow('no such place');
      await unwaited;
      expect(await texts()).toEqual([]);
    });

    it('that does not end is undone, and lets the others pass', async () => {
      const impatient = await open({ atomicLimitMs: SHORT_LIMIT_MS });
      let kept: WithinMemory | undefined;
      const hanging = impatient.atomically(async (within) => {
        kept = within;
        await within.addReading(reading);
        await new Promise(() => undefined);
      });
      const waiting = impatient.addReading({ ...reading, text: 'after' });
      await expect(hanging).rejects.toMatchObject({ code: 'too-long' });
      await waiting;
      expect((await impatient.readings('hill', 10)).map(({ text }) => text)).toEqual(['after']);
      await expect(kept!.addReading(reading)).rejects.toMatchObject({ code: 'over' });
      await impatient.close();
    });

    it('is ended before the memory closes', async () => {
      const other = await open();
      const work = other.atomically(async (within) => {
        await within.addReading(reading);
        for (let n = 0; n < 10; n++) await nextTurn();
        return (await within.readings('hill', 10)).length;
      });
      await other.close();
      expect(await work).toBe(1);
      await expect(other.atomically(() => Promise.resolve())).rejects.toMatchObject({ code: 'closed' });
    });
  });
}
