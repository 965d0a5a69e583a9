import { describe, expect, it } from 'vitest';
import { answerMessage, type ConversationPorts } from '../../../bot/conversation.js';
import type { Advisory } from '../../../bot/features/evening/advisory.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import { pastControls } from '../../../bot/features/evening/past-controls.js';
import type { EveningSubject } from '../../../bot/features/evening/issue-advisory.js';
import type { Store } from '../../../bot/ports.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { DEMO_PLACE, demoSource } from '../../../bot/weather/demo.js';
import { workOutWeekHere } from '../../../bot/threads/week-work.js';
import { checkGreenhouse } from '../../../engine/index.js';

const NOW_S = Date.parse('2026-11-25T20:00:00Z') / 1000;
const clock = { nowS: (): number => NOW_S };
const check = checkGreenhouse({
  place: { latitude: DEMO_PLACE.latitude, longitude: DEMO_PLACE.longitude, elevation: 180 },
  size: { width: 4, length: 8, height: 2.4 },
  layers: [{ film: 'standard' }],
  beds: [
    { name: 'the near bed', area: 8, crops: ['pak choi'], cover: { kind: 'fabric', weight: 50 } },
    { name: 'the far bed', area: 8, crops: ['lettuce'], cover: { kind: 'fabric', weight: 50 } },
  ],
});
if (!check.ok) throw new Error(JSON.stringify(check.faults));
const subject: EveningSubject = { greenhouseId: 'deeds', greenhouse: check.greenhouse, zone: 'America/Toronto' };

async function withStore(work: (store: Store, say: (text: string) => Promise<string>, last: () => Promise<Advisory>) => Promise<void>): Promise<void> {
  const store = await openSqliteStore({ path: ':memory:' });
  const ports: ConversationPorts = { clock, weather: demoSource(clock), store, log: { info: () => undefined, warn: () => undefined, error: () => undefined }, workOut: workOutHere, workOutWeek: workOutWeekHere };
  try {
    await work(store, async (text) => (await answerMessage({ greenhouseId: 'deeds', text, receivedAtS: NOW_S }, subject, ports)).text, async () => JSON.parse((await store.lastAdvisory('deeds'))!.body) as Advisory);
  } finally {
    await store.close();
  }
}

describe('what the grower did', () => {
  it('is counted on bed by bed: only the bed that was named is covered', () =>
    withStore(async (_, say, last) => {
      await say('covered the near bed');
      await say('what should I do');
      const advisory = await last();
      expect(advisory.places.filter(({ place }) => place === 'cover').map(({ bed }) => bed)).toContain('the near bed');
      expect(advisory.reasons).toContainEqual({ code: 'counts-on', coveredBeds: ['the near bed'], heaterOn: false, heaterSetC: null, curtainDrawn: false, fans: [] });
      expect(advisory.plan.actions).not.toContainEqual(expect.objectContaining({ action: 'cover', target: 'the near bed' }));
    }));

  it('stands for the whole plan when it is just done, and the same work is not asked again', () =>
    withStore(async (_, say, last) => {
      await say('what should I do');
      expect((await last()).plan.actions.length).toBeGreaterThan(0);
      await say('done');
      const text = await say('what should I do');
      expect((await last()).plan.actions.filter(({ action }) => action === 'cover')).toEqual([]);
      expect(text).toContain('This counts on what is in place: covers on');
    }));

  it('counts for what is asked in one breath with it, and only for the bed that it names', () =>
    withStore(async (store, say, last) => {
      const text = await say('30F inside now, covered the near bed, is the lettuce in the far bed ok tonight?');
      expect(text).toContain('Noted: -1.1C inside at 15:00.');
      expect(text).toContain('Noted for tonight (the near bed): done: cover');
      expect(text).toContain('Lettuce');
      expect((await store.readings('deeds', 5)).map(({ tempC, place }) => ({ tempC, place }))).toEqual([{ tempC: -1.11, place: 'inside' }]);
      expect((await last()).reasons).toContainEqual({ code: 'counts-on', coveredBeds: ['the near bed'], heaterOn: false, heaterSetC: null, curtainDrawn: false, fans: [] });
    }));

  it('enters the past of the house for the nights that follow', () =>
    withStore(async (store, say) => {
      await say('covered the beds');
      const past = pastControls(await store.actions('deeds', 0), check.greenhouse);
      expect(past(NOW_S + 6 * 3600).coverOn.slice(0, 2)).toEqual([true, true]);
      expect(past(NOW_S + 22 * 3600).coverOn.slice(0, 2)).toEqual([false, false]);
      expect(past(NOW_S - 3600).coverOn.slice(0, 2)).toEqual([false, false]);
    }));

  it('keeps a reading, its correction and its withdrawal', () =>
    withStore(async (store, say) => {
      expect(await say('28F inside')).toContain('Noted: -2.2C inside at 15:00.');
      expect(await say('no, -3C')).toContain('Corrected: -3C inside');
      expect((await store.readings('deeds', 5)).map(({ tempC }) => tempC)).toEqual([-3]);
      await say('scrap that');
      expect(await store.readings('deeds', 5)).toEqual([]);
    }));
});
