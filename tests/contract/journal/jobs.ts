import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Memory } from '../../../bot/journal.js';
import { DAY_S, EVENING_S, job, keys, type OpenMemory } from './rows.js';

export function jobsContract(open: OpenMemory): void {
  describe('what has to be done', () => {
    let memory: Memory;
    beforeEach(async () => {
      memory = await open();
    });
    afterEach(() => memory.close());
    const due = async (nowS = EVENING_S): Promise<readonly string[]> => keys(await memory.dueJobs(nowS, 100));
    const idOf = async (key: string): Promise<number> => (await memory.dueJobs(EVENING_S + DAY_S, 100)).find((row) => row.key === key)!.id;

    it('comes due in order of time, then of adding, and is given back to the letter', async () => {
      await memory.addJob(job('late', { dueAtS: EVENING_S + 60 }));
      await memory.addJob(job('now', { kind: 'recheck', body: '{"x":"é"}' }));
      await memory.addJob(job('now-too'));
      await memory.addJob(job('early', { dueAtS: EVENING_S - 60 }));
      expect(await due(EVENING_S - 61)).toEqual([]);
      expect(await due()).toEqual(['early', 'now', 'now-too']);
      expect(await due(EVENING_S + 60)).toEqual(['early', 'now', 'now-too', 'late']);
      expect(keys(await memory.dueJobs(EVENING_S, 1))).toEqual(['early']);
      const now = (await memory.dueJobs(EVENING_S, 10))[1]!;
      expect(now).toEqual({ ...job('now', { kind: 'recheck', body: '{"x":"é"}' }), id: now.id, attempts: 0 });
    });

    it('is added once for each key, also when it is done, dropped or purged', async () => {
      expect(await memory.addJob(job('a'))).toBe(true);
      expect(await memory.addJob(job('a', { greenhouseId: 'vale', dueAtS: EVENING_S + 60 }))).toBe(false);
      await memory.addJob(job('b'));
      await memory.finishJob(await idOf('a'), 'done', EVENING_S);
      await memory.finishJob(await idOf('b'), 'dropped', EVENING_S);
      expect(await due(EVENING_S + DAY_S)).toEqual([]);
      await memory.purge(EVENING_S + 1000 * DAY_S);
      expect(await memory.addJob(job('a'))).toBe(false);
      expect(await memory.addJob(job('b'))).toBe(false);
    });

    it('is done once: a second end, or the end of a cancelled one, undoes what was written with it', async () => {
      await memory.addJob(job('a'));
      await memory.addJob(job('b'));
      const [a, b] = [await idOf('a'), await idOf('b')];
      await memory.finishJob(a, 'done', EVENING_S);
      await expect(memory.finishJob(a, 'done', EVENING_S)).rejects.toMatchObject({ code: 'not-open' });
      await memory.cancelJobs('hill');
      await expect(memory.finishJob(b, 'done', EVENING_S)).rejects.toMatchObject({ code: 'not-open' });
      // To drop or postpone what is not there any more is no fault: the failure came after the cancelling.
      await memory.finishJob(b, 'dropped', EVENING_S);
      await memory.postponeJob(b, EVENING_S);
      await memory.postponeJob(a, EVENING_S);
      expect(await due(EVENING_S + DAY_S)).toEqual([]);
    });

    it('is tried again later, and the tries are counted', async () => {
      await memory.addJob(job('a'));
      await memory.postponeJob(await idOf('a'), EVENING_S + 60.5);
      expect(await due(EVENING_S + 60)).toEqual([]);
      expect(await memory.dueJobs(EVENING_S + 61, 10)).toMatchObject([{ key: 'a', attempts: 1 }]);
    });

    it('can be moved while it is not done', async () => {
      await memory.addJob(job('a'));
      await memory.addJob(job('b'));
      await memory.finishJob(await idOf('b'), 'done', EVENING_S);
      await memory.moveJob('a', EVENING_S + 60);
      await memory.moveJob('b', EVENING_S + 60);
      await memory.moveJob('unknown', EVENING_S);
      expect(await due()).toEqual([]);
      expect(await memory.dueJobs(EVENING_S + 60, 10)).toMatchObject([{ key: 'a', body: job('a').body, attempts: 0 }]);
      await memory.moveJob('a', EVENING_S, 'another');
      expect(await memory.dueJobs(EVENING_S, 10)).toMatchObject([{ key: 'a', body: 'another' }]);
    });

    it('can be cancelled, of one kind or all, and then be added anew; what is done stays done', async () => {
      await memory.addJob(job('a', { kind: 'morning' }));
      await memory.addJob(job('b'));
      await memory.addJob(job('done'));
      await memory.addJob(job('other', { greenhouseId: 'vale' }));
      await memory.finishJob(await idOf('done'), 'done', EVENING_S);
      await memory.cancelJobs('hill', 'morning');
      expect(await due()).toEqual(['b', 'other']);
      await memory.cancelJobs('hill');
      expect(await due()).toEqual(['other']);
      expect(await memory.addJob(job('b'))).toBe(true);
      expect(await memory.addJob(job('done'))).toBe(false);
    });
  });
}
