import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { NewReading, Store, StoredReading } from '../../bot/ports.js';
import { advisoriesContract } from './advisories.js';

const EVENING_S = 1_768_424_400; // 2026-01-14T21:00:00Z
const MORNING_S = EVENING_S + 10 * 3600;

const reading = (changes: Partial<NewReading> = {}): NewReading => ({
  greenhouseId: 'hill',
  receivedAtS: MORNING_S,
  validAtS: MORNING_S - 1800,
  place: 'inside',
  statistic: 'low',
  tempC: -3.5,
  text: 'low was -3.5',
  ...changes,
});
const action = (changes: Partial<Parameters<Store['addAction']>[0]> = {}): Parameters<Store['addAction']>[0] => ({
  greenhouseId: 'hill',
  receivedAtS: EVENING_S,
  night: '2026-01-14',
  body: '{"action":"cover","target":"bed-1"}',
  done: true,
  text: 'covered',
  ...changes,
});
const ids = (rows: readonly StoredReading[]): number[] => rows.map((row) => row.id);

/** What every implementation of Store must do. `open` gives an empty store each time. */
export function storeContract(name: string, open: () => Promise<Store>): void {
  describe(`the store contract: ${name}`, () => {
    let store: Store;
    beforeEach(async () => {
      store = await open();
    });
    afterEach(() => store.close());

    advisoriesContract(open);

    describe('greenhouses', () => {
      it('knows none at first', async () => {
        expect(await store.greenhouse('hill')).toBeNull();
      });

      it('adds a version only when the body differs from the latest', async () => {
        const first = { id: 'hill', version: 1, body: '{"a":1}', savedAtS: EVENING_S };
        expect(await store.saveGreenhouse({ id: 'hill', body: '{"a":1}', savedAtS: EVENING_S })).toEqual(first);
        expect(await store.saveGreenhouse({ id: 'hill', body: '{"a":1}', savedAtS: MORNING_S })).toEqual(first);
        expect(await store.saveGreenhouse({ id: 'hill', body: '{"a":2}', savedAtS: MORNING_S })).toMatchObject({ version: 2 });
        // Back to the first body is a third version: the order of changes is kept.
        const third = await store.saveGreenhouse({ id: 'hill', body: '{"a":1}', savedAtS: MORNING_S });
        expect(third).toMatchObject({ version: 3, savedAtS: MORNING_S });
        expect(await store.greenhouse('hill')).toEqual(third);
      });

      it('counts versions without a gap or a double when saved at once', async () => {
        const saved = await Promise.all(Array.from({ length: 20 }, (_, n) => store.saveGreenhouse({ id: 'hill', body: `{"n":${n}}`, savedAtS: EVENING_S + n })));
        expect(saved.map((row) => row.version).sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, n) => n + 1));
      });

      it('keeps growers apart', async () => {
        await store.saveGreenhouse({ id: 'hill', body: '{"a":1}', savedAtS: EVENING_S });
        await store.saveGreenhouse({ id: 'vale', body: '{"a":2}', savedAtS: EVENING_S });
        expect(await store.greenhouse('vale')).toMatchObject({ version: 1, body: '{"a":2}' });
      });
    });

    describe('readings', () => {
      it('gives back what was said, to the letter', async () => {
        const text = 'Tief −3,5 °C 🥶\nit\'s "cold"; drop table reading; --';
        const added = await store.addReading(reading({ text, tempC: -3.5000000000000004 }));
        expect(added).toEqual({ ...reading({ text, tempC: -3.5000000000000004 }), id: added.id, judged: 'good', thermometer: null, replacedBy: null, withdrawnAtS: null });
        expect(await store.readings('hill', 10)).toEqual([added]);
      });

      it('keeps how it was judged and of which thermometer it is, and lists what is open with the rest', async () => {
        const open = await store.addReading(reading({ judged: 'open', thermometer: 'shed' }));
        expect(open).toMatchObject({ judged: 'open', thermometer: 'shed' });
        expect(await store.readings('hill', 10)).toEqual([open]);
        expect(await store.replaceReading(open.id, reading({ judged: 'not-reset', thermometer: 'shed' }))).toMatchObject({ judged: 'not-reset', thermometer: 'shed' });
      });

      it('lists the newest received first, the later stored first among equals, up to the limit', async () => {
        const late = await store.addReading(reading({ receivedAtS: MORNING_S + 60 }));
        const early = await store.addReading(reading());
        const earlyToo = await store.addReading(reading());
        expect(ids(await store.readings('hill', 10))).toEqual([late.id, earlyToo.id, early.id]);
        expect(ids(await store.readings('hill', 2))).toEqual([late.id, earlyToo.id]);
        expect(await store.readings('hill', 0)).toEqual([]);
      });

      it('lists all from an instant on, oldest first, with what was replaced or withdrawn', async () => {
        const wrong = await store.addReading(reading({ tempC: 35 }));
        const right = await store.replaceReading(wrong.id, reading({ receivedAtS: MORNING_S + 60 }));
        const taken = await store.addReading(reading({ receivedAtS: MORNING_S + 30 }));
        await store.withdrawReading(taken.id, MORNING_S + 90);
        expect(await store.everyReading('hill', MORNING_S)).toEqual([{ ...wrong, replacedBy: right.id }, { ...taken, withdrawnAtS: MORNING_S + 90 }, right]);
        expect(ids(await store.everyReading('hill', MORNING_S + 31))).toEqual([right.id]);
      });

      it('shows a grower none of another', async () => {
        await store.addReading(reading({ greenhouseId: 'vale' }));
        expect(await store.everyReading('hill', 0)).toEqual([]);
        expect(await store.readings('hill', 10)).toEqual([]);
        expect(await store.readings('', 10)).toEqual([]);
      });

      it('replaces: only the replacement stands', async () => {
        const wrong = await store.addReading(reading({ tempC: 35 }));
        const right = await store.replaceReading(wrong.id, reading({ tempC: 3.5, receivedAtS: MORNING_S + 60 }));
        expect(right).toMatchObject({ tempC: 3.5, replacedBy: null, withdrawnAtS: null });
        expect(right.id).not.toBe(wrong.id);
        expect(await store.readings('hill', 10)).toEqual([right]);
        await expect(store.replaceReading(wrong.id, reading())).rejects.toMatchObject({ code: 'reading-not-standing' });
        // A correction can be corrected.
        const again = await store.replaceReading(right.id, reading({ tempC: 3 }));
        expect(await store.readings('hill', 10)).toEqual([again]);
      });

      it('withdraws: it stands no more, and is not withdrawn or replaced again', async () => {
        const { id } = await store.addReading(reading());
        await store.withdrawReading(id, MORNING_S + 60);
        expect(await store.readings('hill', 10)).toEqual([]);
        await expect(store.withdrawReading(id, MORNING_S + 90)).rejects.toMatchObject({ code: 'reading-not-standing' });
        await expect(store.replaceReading(id, reading())).rejects.toMatchObject({ code: 'reading-not-standing' });
        expect(await store.readings('hill', 10)).toEqual([]);
      });

      it('replaces a reading once when asked twice at once', async () => {
        const { id } = await store.addReading(reading());
        const outcomes = await Promise.allSettled([store.replaceReading(id, reading({ tempC: 1 })), store.replaceReading(id, reading({ tempC: 2 }))]);
        expect(outcomes.map((outcome) => outcome.status).sort()).toEqual(['fulfilled', 'rejected']);
        expect(await store.readings('hill', 10)).toHaveLength(1);
      });

      it('refuses to replace with a bad one, one of another greenhouse, or one that is not there, and leaves the old', async () => {
        const old = await store.addReading(reading());
        await expect(store.replaceReading(old.id, reading({ tempC: Number.NaN }))).rejects.toMatchObject({ code: 'bad-row' });
        await expect(store.replaceReading(old.id, reading({ greenhouseId: 'vale' }))).rejects.toMatchObject({ code: 'other-greenhouse' });
        await expect(store.replaceReading(old.id + 1, reading())).rejects.toMatchObject({ code: 'no-such-reading' });
        await expect(store.withdrawReading(old.id + 1, MORNING_S)).rejects.toMatchObject({ code: 'no-such-reading' });
        expect(await store.readings('hill', 10)).toEqual([old]);
        expect(await store.readings('vale', 10)).toEqual([]);
      });

      it('refuses rows in a wrong unit or with nothing in them', async () => {
        await expect(store.addReading(reading({ receivedAtS: MORNING_S * 1000 }))).rejects.toThrow(/receivedAtS: expected whole epoch seconds, got 1768460400000\. Milliseconds\?/);
        await expect(store.addReading(reading({ validAtS: MORNING_S + 0.5 }))).rejects.toMatchObject({ code: 'bad-row' });
        await expect(store.addReading(reading({ tempC: Number.POSITIVE_INFINITY }))).rejects.toMatchObject({ code: 'bad-row' });
        await expect(store.addReading(reading({ greenhouseId: '' }))).rejects.toMatchObject({ code: 'bad-row' });
        await expect(store.readings('hill', -1)).rejects.toMatchObject({ code: 'bad-row' });
        expect(await store.readings('hill', 10)).toEqual([]);
      });

      it('stores only the columns of a row, and never the id of another', async () => {
        const first = await store.addReading(reading());
        const second = await store.addReading({ ...first, tempC: 1 });
        expect(second.id).not.toBe(first.id);
        expect(await store.readings('hill', 10)).toEqual([second, first]);
      });
    });

    describe('actions', () => {
      it('lists them from an instant on, oldest first, each grower alone', async () => {
        const late = await store.addAction(action({ receivedAtS: EVENING_S + 60, done: false, text: 'no fan' }));
        const early = await store.addAction(action());
        await store.addAction(action({ greenhouseId: 'vale' }));
        expect(early).toEqual({ ...action(), id: early.id });
        expect(late.done).toBe(false);
        expect(await store.actions('hill', EVENING_S)).toEqual([early, late]);
        expect(await store.actions('hill', EVENING_S + 1)).toEqual([late]);
        expect(await store.actions('hill', EVENING_S + 61)).toEqual([]);
      });

      it('lists none that was taken back', async () => {
        const kept = await store.addAction(action());
        const { id } = await store.addAction(action());
        await store.withdrawTold({ of: 'action', id }, EVENING_S + 60);
        expect(await store.actions('hill', 0)).toEqual([kept]);
      });
    });

    describe('what became of crops and of the house', () => {
      const outcome = { greenhouseId: 'hill', receivedAtS: MORNING_S, night: '2026-01-14', crop: 'kale', bed: null, state: 'marked', text: 'kale has burnt tips' } as const;
      const mark = { greenhouseId: 'hill', receivedAtS: MORNING_S, changedAtS: EVENING_S, body: '{"items":["water"]}', counted: true, text: 'added 6 drums last night' } as const;

      it('is listed newest first, up to the limit, each grower alone', async () => {
        const first = await store.addOutcome(outcome);
        const second = await store.addOutcome({ ...outcome, receivedAtS: MORNING_S + 60, bed: 'the north bed', state: 'dead' });
        await store.addOutcome({ ...outcome, greenhouseId: 'vale' });
        expect(first).toEqual({ ...outcome, id: first.id });
        expect(await store.outcomes('hill', 10)).toEqual([second, first]);
        expect(await store.outcomes('hill', 1)).toEqual([second]);
        const put = await store.addMark(mark);
        const note = await store.addMark({ ...mark, receivedAtS: MORNING_S + 60, counted: false });
        await store.addMark({ ...mark, greenhouseId: 'vale' });
        expect(put).toEqual({ ...mark, id: put.id });
        expect(await store.marks('hill', 10)).toEqual([note, put]);
        expect(await store.marks('hill', 1)).toEqual([note]);
      });

      it('is not listed once it is taken back, which it may be twice', async () => {
        const outcomeId = (await store.addOutcome(outcome)).id;
        const markId = (await store.addMark(mark)).id;
        for (const atS of [MORNING_S, MORNING_S + 60]) {
          await store.withdrawTold({ of: 'outcome', id: outcomeId }, atS);
          await store.withdrawTold({ of: 'mark', id: markId }, atS);
        }
        expect(await store.outcomes('hill', 10)).toEqual([]);
        expect(await store.marks('hill', 10)).toEqual([]);
      });
    });

    describe('what was learned of a house', () => {
      const learned = (greenhouseId: string, body: string) => ({ greenhouseId, learnedAtS: EVENING_S, body });

      it('is kept as it was last written, each greenhouse alone', async () => {
        expect(await store.learning('hill')).toBeNull();
        await store.saveLearning(learned('hill', '{"first":true}'));
        await store.saveLearning(learned('vale', '{}'));
        await store.saveLearning({ ...learned('hill', '{"second":true}'), learnedAtS: MORNING_S });
        expect(await store.learning('hill')).toEqual({ ...learned('hill', '{"second":true}'), learnedAtS: MORNING_S });
        expect(await store.learning('vale')).toEqual(learned('vale', '{}'));
        expect((await store.learnedFrom('hill')).learning).toEqual({ readings: await store.readings('hill', 100), learned: '{"second":true}' });
        expect((await store.learnedFrom('nowhere'))).toEqual({ learning: { readings: [], learned: null }, outcomes: [] });
      });
    });

    describe('weather', () => {
      it('keeps what was saved last at a place, even when it says that it is older', async () => {
        expect(await store.lastWeather('45.1,-72.2,180m')).toBeNull();
        const fromTheFuture = { placeKey: '45.1,-72.2,180m', issuedAtS: EVENING_S + 86_400, body: '{"n":1}' };
        const now = { placeKey: '45.1,-72.2,180m', issuedAtS: EVENING_S, body: '{"n":2}' };
        await store.saveWeather(fromTheFuture);
        await store.saveWeather(now);
        expect(await store.lastWeather('45.1,-72.2,180m')).toEqual(now);
        expect(await store.lastWeather('45.1,-72.2,181m')).toBeNull();
      });

      it('holds a body of a megabyte', async () => {
        const row = { placeKey: 'p', issuedAtS: EVENING_S, body: JSON.stringify({ x: 'é'.repeat(500_000) }) };
        await store.saveWeather(row);
        expect(await store.lastWeather('p')).toEqual(row);
      });
    });

    describe('closing', () => {
      it('ends what is under way first, takes nothing after, and may be asked twice', async () => {
        const underWay = Promise.all(Array.from({ length: 10 }, (_, n) => store.saveGreenhouse({ id: 'hill', body: `{"n":${n}}`, savedAtS: EVENING_S })));
        await Promise.all([store.close(), store.close()]);
        expect(await underWay).toHaveLength(10);
        await expect(store.addReading(reading())).rejects.toMatchObject({ code: 'closed' });
        await expect(store.lastAdvisory('hill')).rejects.toMatchObject({ code: 'closed' });
      });
    });
  });
}
